/**
 * Checks a published folder against its own list of checksums, and its parts against what they say of each other.
 *
 * @module
 */
import { sha256 } from "../checksum.ts";
import { CHECKSUMS, SITE_ZIP } from "../site.ts";
import type { CheckFinding } from "./finding-of-check.ts";
import { textIn } from "./published-folder.ts";

/** The lines of a list of checksums; `null` for a line that is none. */
function listed(text: string): Map<string, string> | null {
  const lines = text.split("\n").filter((line) => line !== "");
  const found = new Map<string, string>();
  for (const line of lines) {
    const match = /^([0-9a-f]{64}) {2}(.+)$/.exec(line);
    if (match === null) return null;
    found.set(match[2]!, match[1]!);
  }
  return found;
}

/**
 * Every file that the list of checksums does not hold, or holds with another checksum.
 *
 * @param files of the published folder
 * @returns findings, and how many checksums were right
 */
export function checkChecksums(
  files: ReadonlyMap<string, Uint8Array>,
): { readonly findings: readonly CheckFinding[]; readonly right: number } {
  const text = textIn(files, CHECKSUMS);
  const list = text === null ? null : listed(text);
  const tell = (file: string, what: string): CheckFinding => ({ kind: "checksum", file, what });
  if (list === null) {
    const what = text === null
      ? "the list of checksums is missing"
      : "the list of checksums can't be read: each line is a checksum, two spaces and a path";
    return { findings: [tell(CHECKSUMS, what)], right: 0 };
  }
  const findings: CheckFinding[] = [];
  let right = 0;
  for (const [file, wanted] of list) {
    const bytes = files.get(file);
    if (bytes === undefined) {
      findings.push(tell(file, "is in the list of checksums, but not there"));
    } else if (sha256(bytes) !== wanted) {
      findings.push(tell(file, "does not have the checksum that the list gives"));
    } else right++;
  }
  for (const file of files.keys()) {
    if (file !== CHECKSUMS && file !== SITE_ZIP && !list.has(file)) {
      findings.push(tell(file, "is there, but not in the list of checksums"));
    }
  }
  return { findings, right };
}
