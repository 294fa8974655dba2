/**
 * What every answer carries, whatever was asked: part of the contract that other programs read as JSON.
 *
 * @module
 */
import type { Finding } from "./finding.ts";
import type { FileChecksum } from "./session.ts";

/** Version of the session folder and answer contracts. */
export const CONTRACT = 1;

/** What every answer carries. */
export interface AnswerBase {
  readonly contract: number;
  readonly question: string;
  readonly sessions: readonly string[];
  readonly findings: readonly Finding[];
  /** Software that made the answer, by name. */
  readonly versions: Readonly<Record<string, string>>;
  readonly dataChecksums: readonly FileChecksum[];
}
