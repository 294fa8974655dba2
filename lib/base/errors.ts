/**
 * The two ways in which a request can be refused, kept apart because they end in different exit codes.
 *
 * @module
 */
import type { Finding } from "./finding.ts";

/** The user's data or notebook has a fault, or the answer is refused (exit code 1). Carries every finding at once. */
export class DataError extends Error {
  readonly findings: readonly Finding[];

  constructor(message: string, findings: readonly Finding[] = []) {
    super(message);
    this.name = "DataError";
    this.findings = findings;
  }
}

/** The command or function was called wrongly (exit code 2). */
export class UsageError extends Error {
  constructor(message: string) {
    super(message);
    this.name = "UsageError";
  }
}
