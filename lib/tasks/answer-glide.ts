/**
 * The glide question at the command line: opens the sessions, compares, and makes the text to print.
 *
 * @module
 */
import { CONTRACT, type GlideAnswer } from "../base/answers.ts";
import { DataError, UsageError } from "../base/errors.ts";
import { type Finding, finding, hasErrors } from "../base/finding.ts";
import { LIMITS, standing } from "../base/limits.ts";
import { excerpt } from "../base/printable.ts";
import { type Dimension, GLIDES } from "../base/tables.ts";
import type { Session } from "../base/session.ts";
import { checkSession } from "../check/check-session.ts";
import { compareGlides, type GlideOptions } from "../decide/compare-glides.ts";
import { versionsOf } from "../publish/stamp.ts";
import { openSession, sessionFolder } from "../read/open-session.ts";
import { isTrace } from "../read/read-traces.ts";
import { answerText, glideAnswerObject } from "../show/answer-json.ts";
import { glideText } from "../show/glide-text.ts";
import { verdictRecord } from "../show/verdict-record.ts";
import { EXIT } from "./exit-codes.ts";
import { quantityArgument } from "./quantity-argument.ts";

/** Options as typed. */
export interface GlideFlags {
  readonly baseline?: string;
  readonly candidate?: readonly string[];
  readonly launchSpeed?: string;
  readonly drop?: string;
  readonly mass?: string;
  /** Of a tow. */
  readonly robust?: boolean;
  /** Of a tow. */
  readonly draws?: string;
  readonly json?: boolean;
}

/** What to print on standard output, and the exit code. */
export interface TaskResult {
  readonly text: string;
  readonly code: number;
}

/**
 * Deno, and the packages that the numbers of an answer go through.
 *
 * @returns versions by name
 */
export function versionsOfAnswer(): Record<string, string> {
  const config = Deno.readTextFileSync(new URL("../../deno.json", import.meta.url));
  const { imports } = JSON.parse(config) as { imports: Record<string, string> };
  const packages = Object.keys(imports).filter((name) =>
    name.startsWith("@stdlib/") || name === "csv-parse"
  );
  return versionsOf(imports, new Set(packages));
}

/** A value that such a craft can have; a slip of unit is asked about. */
function possible(value: number, column: string, option: string, typed: string): number {
  if (standing(column, value) !== "impossible") return value;
  throw new UsageError(
    `Cannot compare at ${option} ${excerpt(typed)}: ${
      LIMITS[column]!.why
    }. A unit may follow the number, as --launch-speed 15km/h, --drop 20cm or --mass 180lb.`,
  );
}

function optionsOf(flags: GlideFlags): GlideOptions {
  const { baseline, candidate } = flags;
  const number = (text: string | undefined, dimension: Dimension, option: string, column: string) =>
    text === undefined
      ? undefined
      : possible(quantityArgument(text, dimension, option), column, option, text);
  const launchSpeed = number(
    flags.launchSpeed,
    "speed",
    "--launch-speed",
    "reference_launch_speed",
  );
  const drop = number(flags.drop, "length", "--drop", "reference_drop");
  const mass = number(flags.mass, "mass", "--mass", "reference_mass");
  return {
    ...(baseline === undefined ? {} : { baseline }),
    ...(candidate === undefined || candidate.length === 0 ? {} : { candidates: candidate }),
    ...(launchSpeed === undefined ? {} : { launchSpeed }),
    ...(drop === undefined ? {} : { drop }),
    ...(mass === undefined ? {} : { mass }),
  };
}

/** What reading and checking found; with several sessions each file is named with its own. */
function dataFindings(session: Session, several: boolean): Finding[] {
  // Glides are compared by their energy, traces or not.
  const found = [...session.findings, ...checkSession(session)]
    .filter((one) => one.file === null || !isTrace(one.file));
  return found.map((one) =>
    several && one.file !== null ? { ...one, file: `${session.name}/${one.file}` } : one
  );
}

/** Each finding once: two comparisons may find the same thing about their baseline. */
function once(findings: readonly Finding[]): Finding[] {
  const seen = new Set<string>();
  return findings.filter((one) => {
    const key = JSON.stringify(one);
    return !seen.has(key) && seen.add(key);
  });
}

/**
 * Refuses two folders that hold the same table: a copy would count each row twice.
 *
 * @param sessions as read
 * @param file the table
 * @param rows how many of its rows a session has, and what one is called
 * @throws UsageError where two are the same
 */
export function refuseCopies(
  sessions: readonly Session[],
  file: string,
  rows: { readonly count: (session: Session) => number; readonly word: string },
): void {
  const seen = new Map<string, string>();
  for (const session of sessions) {
    const { name, checksums } = session;
    const sha256 = checksums.find((one) => one.file === file)?.sha256;
    if (sha256 === undefined || rows.count(session) === 0) continue;
    const twin = seen.get(sha256);
    if (twin !== undefined) {
      throw new UsageError(
        `Cannot answer from ${excerpt(twin)} and ${excerpt(name)} together as both hold the ` +
          `same ${file}: each ${rows.word} would count twice.`,
      );
    }
    seen.set(sha256, name);
  }
}

/** The answer where a session could not even be opened. */
function unopened(names: readonly string[], error: DataError): GlideAnswer {
  const what = finding({ severity: "error", code: "no-session", what: error.message });
  return {
    contract: CONTRACT,
    question: "glide",
    sessions: names,
    findings: [...error.findings, what],
    versions: {},
    dataChecksums: [],
    launch: null,
    designs: [],
    comparisons: [],
    runs: [],
  };
}

/**
 * Which design glides further from the same launch?
 *
 * @param names sessions under `data/`, or paths
 * @param flags as typed
 * @returns text for standard output and exit code 0 (also "cannot tell yet") or 1 (refused, or the data have a fault)
 * @throws UsageError for options that make no sense
 * @throws DataError for a session that is not there, unless JSON was asked for
 */
export async function answerGlide(
  names: readonly string[],
  flags: GlideFlags,
): Promise<TaskResult> {
  const versions = versionsOfAnswer();
  const options = optionsOf(flags);
  let sessions: Session[];
  try {
    if (new Set(names.map(sessionFolder)).size < names.length) {
      throw new UsageError(
        "Cannot answer as one session is named twice: its runs would count twice.",
      );
    }
    sessions = await Promise.all(names.map(openSession));
  } catch (error) {
    if (!(error instanceof DataError) || !flags.json) throw error;
    const answer = glideAnswerObject(unopened(names, error), versions);
    return { text: answerText(answer), code: EXIT.fault };
  }
  refuseCopies(sessions, GLIDES.file, { count: (one) => one.glides.length, word: "run" });
  const compared = compareGlides(sessions, options);
  const findings = once([
    ...sessions.flatMap((one) => dataFindings(one, sessions.length > 1)),
    ...compared.answer.findings,
  ]);
  const evidence = { ...compared, answer: { ...compared.answer, findings } };
  const record = verdictRecord(evidence, { versions });
  const text = flags.json
    ? answerText(glideAnswerObject(evidence.answer, versions))
    : glideText(evidence, record, sessions.some((one) => one.invented));
  const refused = record.verdict === "refused" || hasErrors(findings);
  return { text, code: refused ? EXIT.fault : EXIT.done };
}
