/**
 * What an answer says of itself, and the answer that has nothing more to say.
 *
 * @module
 */
import { type AnswerBase, CONTRACT } from "../base/answers.ts";
import type { Finding } from "../base/finding.ts";
import type { Session } from "../base/session.ts";
import type { GlideEvidence } from "./glide-evidence.ts";
import type { PreparedRun, PreparedSession } from "./glide-runs.ts";
import { sessionAssumptions } from "./session-findings.ts";

/**
 * Contract, question, sessions and findings of an answer about glides.
 *
 * @param sessions that were asked, in order
 * @param findings on them
 * @returns the part of the answer that every answer has; with several sessions, files carry their session's name
 */
export function answerHead(sessions: readonly Session[], findings: readonly Finding[]) {
  return {
    contract: CONTRACT,
    question: "glide",
    sessions: sessions.map((one) => one.name),
    findings,
    versions: {},
    dataChecksums: sessions.flatMap((session) =>
      session.checksums.map((one) =>
        sessions.length > 1 ? { file: `${session.name}/${one.file}`, sha256: one.sha256 } : one
      )
    ),
  } as const satisfies AnswerBase;
}

/**
 * The answer where no run tells anything.
 *
 * @param sessions that were asked, in order
 * @param prepared the same, made ready
 * @param runs all that were asked about, each with the reason why it tells nothing
 * @param findings that say so
 * @returns an answer without launch, designs and comparisons
 */
export function answerWithoutLaunch(
  sessions: readonly Session[],
  prepared: readonly PreparedSession[],
  runs: readonly PreparedRun[],
  findings: readonly Finding[],
): GlideEvidence {
  return {
    answer: {
      ...answerHead(sessions, findings),
      launch: null,
      designs: [],
      comparisons: [],
      runs: runs.map((one) => ({
        run: one.glide.run,
        design: one.glide.design,
        used: false,
        reason: one.reason,
        glideRatio: null,
      })),
    },
    designs: [],
    naive: [],
    assumptions: sessionAssumptions(prepared),
    reports: [],
  };
}
