/**
 * The tow question at the command line: opens the session, fits, compares, and makes the text to print.
 *
 * @module
 */
import { CONTRACT } from "../base/answers.ts";
import { DataError, UsageError } from "../base/errors.ts";
import { type Finding, finding, hasErrors } from "../base/finding.ts";
import type { Session } from "../base/session.ts";
import { excerpt } from "../base/printable.ts";
import type { TowAnswer } from "../base/tow-answer.ts";
import { checkSession } from "../check/check-session.ts";
import { WINDOW_CODES } from "../check/check-windows.ts";
import { compareTows, type TowEvidence } from "../decide/compare-tows.ts";
import { openSession, sessionFolder } from "../read/open-session.ts";
import { answerText } from "../show/answer-json.ts";
import { towAnswerObject } from "../show/tow-json.ts";
import { towText } from "../show/tow-text.ts";
import {
  type GlideFlags,
  refuseCopies,
  type TaskResult,
  versionsOfAnswer,
} from "./answer-glide.ts";
import { EXIT } from "./exit-codes.ts";

/** Findings about this table are told only where its glides stand beside a tow. */
const GLIDES = "glides.csv";

/** The answer where nothing could be read. */
function unopened(names: readonly string[], error: DataError): TowAnswer {
  const what = finding({ severity: "error", code: "no-session", what: error.message });
  return {
    contract: CONTRACT,
    question: "tow",
    sessions: [...names],
    findings: [...error.findings, what],
    versions: {},
    dataChecksums: [],
    designs: [],
    comparisons: [],
    current: [],
    agreement: [],
  };
}

/**
 * How much drag does each design have, at which speed?
 *
 * @param names sessions under `data/`, or their paths
 * @param flags as typed
 * @returns text for standard output and exit code 0, or 1 where the data have a fault or carry no law
 * @throws UsageError for one session named twice, or options that make no sense here
 * @throws DataError for a session that is not there, unless JSON was asked for
 */
export async function answerTow(
  names: readonly string[],
  flags: GlideFlags,
): Promise<TaskResult> {
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
    if (new Set(names.map(sessionFolder)).size < names.length) {
      throw new UsageError(
        "Cannot answer as one session is named twice: its readings would count twice.",
      );
    }
    const sessions = await Promise.all(names.map(openSession));
    refuseCopies(sessions, "tow.csv", { count: (one) => one.tow.length, word: "reading" });
    const { baseline, candidate, robust, draws } = flags;
    evidence = compareTows(sessions, {
      ...(baseline === undefined ? {} : { baseline }),
      ...(candidate === undefined || candidate.length === 0 ? {} : { candidates: candidate }),
      ...(robust === undefined ? {} : { robust }),
      ...(draws === undefined ? {} : { draws: drawsOf(draws) }),
    });
    const data = sessions.flatMap((session) =>
      dataFindings(session, {
        several: sessions.length > 1,
        glided: evidence.answer.agreement.some((one) => one.glideSession === session.name),
      })
    );
    const findings = once([...data, ...evidence.answer.findings]);
    evidence = { ...evidence, answer: { ...evidence.answer, findings } };
    invented = sessions.some((one) => one.invented);
  } catch (error) {
    if (!(error instanceof DataError) || !flags.json) throw error;
    return {
      text: answerText(towAnswerObject(unopened(names, error), versions)),
      code: EXIT.fault,
    };
  }
  const text = flags.json
    ? answerText(towAnswerObject(evidence.answer, versions))
    : towText(evidence, invented);
  return { text, code: hasErrors(evidence.answer.findings) ? EXIT.fault : EXIT.done };
}

/** A whole number as typed; what makes no sense is refused where it is used. */
function drawsOf(typed: string): number {
  if (!/^\d+$/.test(typed)) {
    throw new UsageError(
      `Cannot draw ${excerpt(typed)} times: a whole number of 100 or more is needed`,
    );
  }
  return Number(typed);
}

function once(findings: readonly Finding[]): Finding[] {
  return [...new Map(findings.map((one) => [JSON.stringify(one), one])).values()];
}

/** What reading and checking found; with several sessions each file is named with its own. */
function dataFindings(
  session: Session,
  { several, glided }: { readonly several: boolean; readonly glided: boolean },
): Finding[] {
  return [...session.findings, ...checkSession(session)]
    .filter((one) => one.file !== GLIDES || session.traces.length > 0 || glided)
    .filter((one) => !WINDOW_CODES.includes(one.code))
    .map((one) =>
      several && one.file !== null ? { ...one, file: `${session.name}/${one.file}` } : one
    );
}
