/**
 * The design that each row names, looked up in designs.csv.
 *
 * @module
 */
import { didYouMean } from "../base/did-you-mean.ts";
import { type Finding, finding } from "../base/finding.ts";
import { printable } from "../base/printable.ts";
import { type Design } from "../base/session.ts";

/**
 * Keeps out rows that name a design of which nothing is known, and says which was probably meant.
 *
 * Upper and lower case and doubled spaces are put right with a note.
 */
export function linkDesigns<T extends { readonly design: string; readonly row: number }>(
  rows: readonly T[],
  input: {
    readonly file: string;
    readonly known: readonly Design[];
    /** Every name in designs.csv, those of faulty rows too. */
    readonly named: readonly string[];
    /** Names that are no design but may stand there. */
    readonly also: readonly string[];
    readonly findings: Finding[];
  },
): T[] {
  const names = [...input.known.map((one) => one.design), ...input.also];
  const plain = (text: string) => text.toLowerCase().replace(/\s+/g, " ");
  const report = (
    severity: "error" | "note",
    code: string,
    row: number,
    what: string,
    wanted: string | null,
  ) =>
    input.findings.push(
      finding({ severity, code, file: input.file, row, column: "design", what, wanted }),
    );
  return rows.flatMap((row) => {
    if (names.includes(row.design)) return [row];
    const shown = printable(row.design);
    const same = names.filter((one) => plain(one) === plain(row.design));
    if (same.length === 1) {
      const what = `"${shown}" is read as ${printable(same[0]!)}.`;
      report("note", "design-spelling", row.row, what, "The name as it stands in designs.csv.");
      return [{ ...row, design: same[0]! }];
    }
    if (input.named.some((one) => plain(one) === plain(row.design))) {
      const what = `The design "${shown}" has a fault in designs.csv, so this row was not used.`;
      report("error", "faulty-design", row.row, what, "The design's row in designs.csv put right.");
      return [];
    }
    const meant = didYouMean(row.design, [...input.named, ...input.also]);
    report(
      "error",
      "unknown-design",
      row.row,
      `There is no design "${shown}" in designs.csv; the row was not used.`,
      meant === null
        ? "A design of designs.csv, or a row for this one there."
        : `Did you mean ${printable(meant)}?`,
    );
    return [];
  });
}
