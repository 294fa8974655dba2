/**
 * Files of a session folder that are not ours to read.
 *
 * @module
 */
import { didYouMean } from "../base/did-you-mean.ts";
import { type Finding, finding } from "../base/finding.ts";
import { excerpt } from "../base/printable.ts";
import { TABLES } from "../base/tables.ts";

const WORKBOOK = /\.(?:xlsx|xls|xlsm|ods|numbers)$/i;

/**
 * Findings about workbooks (how to save their sheets) and tables of other names.
 *
 * @param names of all files in a session folder
 * @returns warnings and notes, one a file
 */
export function otherFiles(names: readonly string[]): Finding[] {
  return names.flatMap((name) => {
    if (WORKBOOK.test(name)) {
      return [finding({
        severity: "warning",
        code: "workbook",
        file: excerpt(name),
        what: `${excerpt(name)} is a workbook; nothing was read from it.`,
        wanted:
          "Each sheet saved as CSV: open it, choose the sheet, Save as, type CSV (UTF-8), under the table's name, as glides.csv.",
      })];
    }
    if (!/\.csv$/i.test(name)) return [];
    const meant = didYouMean(name, TABLES.map((one) => one.file));
    return [finding({
      severity: meant === null ? "note" : "warning",
      code: "unknown-table",
      file: excerpt(name),
      what: `${excerpt(name)} is no table that we know; it was not read.`,
      wanted: meant === null ? null : `Did you mean ${meant}?`,
    })];
  });
}
