/**
 * Long series of like findings told in short: the first two, then how many more and in which rows.
 *
 * @module
 */
import { type Finding, finding } from "../base/finding.ts";

/** So many alike in one column are told in full; of more, the first two stand for all. */
const MOST_ALIKE = 5;

/** Told in full before the rest is counted. */
const TOLD = 2;

/** Rows as a person would list them: 2, 5 to 9, 12. */
function rowList(rows: readonly number[]): string {
  const runs: [number, number][] = [];
  for (const row of [...new Set(rows)].sort((a, b) => a - b)) {
    const last = runs.at(-1);
    if (last !== undefined && last[1] === row - 1) last[1] = row;
    else runs.push([row, row]);
  }
  return runs.map(([from, to]) =>
    from === to ? `${from}` : to === from + 1 ? `${from}, ${to}` : `${from} to ${to}`
  ).join(", ");
}

/**
 * Rows with their noun: "row 4", "rows 2, 5 to 9".
 *
 * @param rows numbers of rows, in any order
 * @returns the text
 */
export function rowsInWords(rows: readonly number[]): string {
  return `${new Set(rows).size === 1 ? "row" : "rows"} ${rowList(rows)}`;
}

/**
 * Findings one by one, but of a long series of one kind in one column only the first two and one that lists the rows of
 * the others.
 *
 * @param findings in the order in which they are told
 * @returns the findings to tell
 */
export function shortened(findings: readonly Finding[]): Finding[] {
  const kinds = new Map<string, Finding[]>();
  const kindOf = (one: Finding) => JSON.stringify([one.severity, one.code, one.file, one.column]);
  for (const one of findings) kinds.set(kindOf(one), [...kinds.get(kindOf(one)) ?? [], one]);
  return findings.flatMap((one) => {
    const alike = kinds.get(kindOf(one))!;
    const nth = alike.indexOf(one);
    if (alike.length <= MOST_ALIKE || nth < TOLD) return [one];
    if (nth > TOLD) return [];
    const rest = alike.slice(TOLD);
    const rows = rest.flatMap((two) => two.row ?? []);
    const where = rows.length === 0 ? "" : `: ${rowsInWords(rows)}`;
    const { severity, code, file } = one;
    return [
      finding({ severity, code, file, what: `and ${rest.length} more like these${where}.` }),
    ];
  });
}
