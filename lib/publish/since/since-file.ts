/**
 * The earlier state that a site is compared with, kept among its sources so that the comparison can be made again.
 *
 * @module
 */
import { join } from "node:path";
import { DataError } from "../../base/errors.ts";
import { writeAtomically } from "../write-atomically.ts";
import type { SiteState } from "./site-state.ts";

/** Name of the file, in `notebooks/`. */
export const SINCE_FILE = "since.json";

/** Form of the record. */
const FORM = 1;

/**
 * The file that keeps the earlier state.
 *
 * @param root absolute path of the project's folder
 * @returns absolute path
 */
export function sincePath(root: string): string {
  return join(root, "notebooks", SINCE_FILE);
}

/**
 * Keeps an earlier state. Equal states give equal bytes.
 *
 * @param root absolute path of the project's folder
 * @param state to compare with from now on
 */
export function writeSince(root: string, state: SiteState): void {
  writeAtomically(sincePath(root), `${JSON.stringify({ form: FORM, ...state }, null, 1)}\n`);
}

/**
 * The earlier state that a project keeps; `null` when it keeps none.
 *
 * @param root the project's folder
 * @returns the earlier state; `null` where none is kept
 * @throws DataError when the file can't be read
 */
export function readSince(root: string): SiteState | null {
  let text: string;
  try {
    text = Deno.readTextFileSync(sincePath(root));
  } catch (error) {
    if (error instanceof Deno.errors.NotFound) return null;
    throw error;
  }
  try {
    const { form, ...state } = JSON.parse(text);
    const whole = form === FORM && typeof state.from === "string" &&
      [state.results, state.verdicts, state.code, state.files, state.versions]
        .every((part) => typeof part === "object" && part !== null);
    if (whole) return state;
  } catch {
    // Told below.
  }
  throw new DataError(
    `Cannot compare with the state in notebooks/${SINCE_FILE}: it was not written by this program. ` +
      "Delete it, or write it anew with `task report --since`.",
  );
}
