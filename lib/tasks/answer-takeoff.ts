/**
 * The takeoff question at the command line: opens the session, estimates, and makes the text to print.
 *
 * @module
 */
import { CONTRACT } from "../base/answers.ts";
import { DataError, UsageError } from "../base/errors.ts";
import { type Finding, finding, hasErrors } from "../base/finding.ts";
import { LIMITS, standing } from "../base/limits.ts";
import { excerpt } from "../base/printable.ts";
import type { Dimension } from "../base/tables.ts";
import type { TakeoffAnswer } from "../base/takeoff-answer.ts";
import { checkSession } from "../check/check-session.ts";
import { estimateTakeoff, type TakeoffEvidence } from "../decide/estimate-takeoff.ts";
import type { TakeoffOptions } from "../decide/takeoff-setting.ts";
import { openSession, sessionFolder } from "../read/open-session.ts";
import { answerText } from "../show/answer-json.ts";
import { takeoffAnswerObject } from "../show/takeoff-json.ts";
import { takeoffText } from "../show/takeoff-text.ts";
import { type TaskResult, versionsOfAnswer } from "./answer-glide.ts";
import { EXIT } from "./exit-codes.ts";
import { quantityArgument } from "./quantity-argument.ts";

/** Options as typed. */
export interface TakeoffFlags {
  readonly design?: readonly string[];
  readonly mass?: string;
  readonly depth?: string;
  readonly altitude?: string;
  readonly lineAngle?: string;
  readonly pull?: string;
  readonly power?: string;
  readonly json?: boolean;
}

/** Findings about tables that a takeoff does not rest on are not told here. */
const OTHER: readonly (string | null)[] = [
  "glides.csv",
  "tow.csv",
  "calibrations.csv",
  "instruments.csv",
];

/** The answer where nothing could be read. */
function unopened(names: readonly string[], error: DataError): TakeoffAnswer {
  const what = finding({ severity: "error", code: "no-session", what: error.message });
  return {
    contract: CONTRACT,
    question: "takeoff",
    sessions: names,
    findings: [...error.findings, what],
    versions: {},
    dataChecksums: [],
    setting: null,
    designs: [],
    comparisons: [],
    inputs: [],
  };
}

/** An option in SI that such a craft can have; a slip of unit is asked about. */
function option(
  text: string | undefined,
  name: string,
  { dimension, column }: { readonly dimension: Dimension; readonly column: string },
): number | undefined {
  if (text === undefined) return undefined;
  // An angle alone is meant in degrees, as in the tables.
  const bare = dimension === "angle" && /^[-+]?[\d.,]+$/.test(text.trim());
  const value = quantityArgument(bare ? `${text}deg` : text, dimension, name);
  if (standing(column, value) !== "impossible") return value;
  throw new UsageError(
    `Cannot answer at ${name} ${excerpt(text)}: ${
      LIMITS[column]!.why
    }. A unit may follow the number, as --mass 180lb or --depth 40cm.`,
  );
}

/** W: more than any boat that tows such a craft gives, so a slip of unit. Common practice, no source. */
const MOST_POWER = 50_000;

function powerOption(text: string | undefined): number | undefined {
  if (text === undefined) return undefined;
  const value = quantityArgument(text, "power", "--power");
  if (value >= 0 && value <= MOST_POWER) return value;
  throw new UsageError(
    `Cannot answer at --power ${excerpt(text)}: a tow gives 0 to ${MOST_POWER} W.`,
  );
}

function optionsOf(flags: TakeoffFlags): TakeoffOptions {
  const depth = option(flags.depth, "--depth", { dimension: "length", column: "running_depth" });
  if (depth !== undefined && !(depth > 0)) {
    throw new UsageError("Cannot answer at --depth 0: the wing must run below the surface.");
  }
  const own = {
    mass: option(flags.mass, "--mass", { dimension: "mass", column: "carried_mass" }),
    depth,
    altitude: option(flags.altitude, "--altitude", { dimension: "length", column: "altitude" }),
    lineAngle: option(flags.lineAngle, "--line-angle", {
      dimension: "angle",
      column: "line_angle",
    }),
    pull: option(flags.pull, "--pull", { dimension: "force", column: "line_tension" }),
    power: powerOption(flags.power),
  };
  if (own.pull !== undefined && own.power !== undefined) {
    throw new UsageError("Cannot answer for both --pull and --power: ask for one at a time.");
  }
  const known = Object.entries(own).filter(([, value]) => value !== undefined);
  return {
    ...Object.fromEntries(known),
    ...(flags.design === undefined || flags.design.length === 0 ? {} : { designs: flags.design }),
  };
}

/**
 * From which speed does each design carry me, and what does it take to get there?
 *
 * @param names sessions under `data/`, or paths: the first names designs, load and water; tows and glides of all stand beside
 * @param flags as typed
 * @returns text for standard output and exit code 0, or 1 where the data have a fault or nothing lifts the load
 * @throws UsageError for a session named twice, or options that make no sense here
 * @throws DataError for a session that is not there, unless JSON was asked for
 */
export async function answerTakeoff(
  names: readonly string[],
  flags: TakeoffFlags,
): Promise<TaskResult> {
  const options = optionsOf(flags);
  const versions = versionsOfAnswer();
  let evidence: TakeoffEvidence, invented: boolean;
  try {
    if (new Set(names.map(sessionFolder)).size < names.length) {
      throw new UsageError("Cannot answer as one session is named twice.");
    }
    const [session, ...others] = await Promise.all(names.map(openSession));
    evidence = estimateTakeoff(session!, options, others);
    const data = [...session!.findings, ...checkSession(session!)].filter((one) =>
      !OTHER.includes(one.file)
    );
    const findings = once([...data, ...evidence.answer.findings]);
    evidence = { ...evidence, answer: { ...evidence.answer, findings } };
    invented = [session!, ...others].some((one) => one.invented);
  } catch (error) {
    if (!(error instanceof DataError) || !flags.json) throw error;
    const answer = takeoffAnswerObject(unopened(names, error), versions);
    return { text: answerText(answer), code: EXIT.fault };
  }
  const text = flags.json
    ? answerText(takeoffAnswerObject(evidence.answer, versions))
    : takeoffText(evidence, { invented, pull: options.pull, power: options.power });
  return { text, code: hasErrors(evidence.answer.findings) ? EXIT.fault : EXIT.done };
}

function once(findings: readonly Finding[]): Finding[] {
  return [...new Map(findings.map((one) => [JSON.stringify(one), one])).values()];
}
