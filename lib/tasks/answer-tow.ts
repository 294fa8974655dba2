/**
 * The tow question at the command line: opens the session, fits, compares, and makes the text to print.
 *
 * @module
 */
import { CONTRACT } from "../base/answers.ts";
import { DataError, UsageError } from "../base/errors.ts";
import { type Finding, finding, hasErrors } from "../base/finding.ts";
import type { TowAnswer } from "../base/tow-answer.ts";
import { checkSession } from "../check/check-session.ts";
import { compareTows, type TowEvidence } from "../decide/compare-tows.ts";
import { openSession } from "../read/open-session.ts";
import { answerText } from "../show/answer-json.ts";
import { towAnswerObject } from "../show/tow-json.ts";
import { towText } from "../show/tow-text.ts";
import { type GlideFlags, type TaskResult, versionsOfAnswer } from "./answer-glide.ts";
import { EXIT } from "./exit-codes.ts";

/** Findings about tables that a tow does not rest on are not told here. */
const OTHER = "glides.csv";

/** The answer where nothing could be read. */
function unopened(name: string, error: DataError): TowAnswer {
  const what = finding({ severity: "error", code: "no-session", what: error.message });
  return {
    contract: CONTRACT,
    question: "tow",
    sessions: [name],
    findings: [...error.findings, what],
    versions: {},
    dataChecksums: [],
    designs: [],
    comparisons: [],
  };
}

/**
 * How much drag does each design have, at which speed?
 *
 * @param names one session under `data/`, or its path
 * @param flags as typed
 * @returns text for standard output and exit code 0, or 1 where the data have a fault or carry no law
 * @throws UsageError for several sessions, or options that make no sense here
 * @throws DataError for a session that is not there, unless JSON was asked for
 */
export async function answerTow(
  names: readonly string[],
  flags: GlideFlags,
): Promise<TaskResult> {
  const [name, ...more] = names;
  if (name === undefined || more.length > 0) {
    throw new UsageError("Cannot answer on tows of several sessions together: name one session.");
  }
  for (
    const [option, value] of Object.entries({
      "--launch-speed": flags.launchSpeed,
      "--drop": flags.drop,
      "--mass": flags.mass,
    })
  ) {
    if (value !== undefined) {
      throw new UsageError(`Cannot use ${option} with tow: it belongs to glide.`);
    }
  }
  const versions = versionsOfAnswer();
  let evidence: TowEvidence, invented: boolean;
  try {
    const session = await openSession(name);
    const { baseline, candidate } = flags;
    evidence = compareTows(session, {
      ...(baseline === undefined ? {} : { baseline }),
      ...(candidate === undefined || candidate.length === 0 ? {} : { candidates: candidate }),
    });
    const data = [...session.findings, ...checkSession(session)].filter((one) =>
      one.file !== OTHER
    );
    const findings = once([...data, ...evidence.answer.findings]);
    evidence = { ...evidence, answer: { ...evidence.answer, findings } };
    invented = session.invented;
  } catch (error) {
    if (!(error instanceof DataError) || !flags.json) throw error;
    return { text: answerText(towAnswerObject(unopened(name, error), versions)), code: EXIT.fault };
  }
  const text = flags.json
    ? answerText(towAnswerObject(evidence.answer, versions))
    : towText(evidence, invented);
  return { text, code: hasErrors(evidence.answer.findings) ? EXIT.fault : EXIT.done };
}

function once(findings: readonly Finding[]): Finding[] {
  return [...new Map(findings.map((one) => [JSON.stringify(one), one])).values()];
}
