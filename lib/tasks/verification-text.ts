/**
 * A check of a published folder in words: a table of results, then everything that differs.
 *
 * @module
 */
import { excerpt } from "../base/printable.ts";
import type { TableCell, TableRecord } from "../base/records.ts";
import type { CheckedResult, CheckFinding } from "../publish/verify/finding-of-check.ts";
import type { Verification } from "../publish/verify/verify-site.ts";
import { textTable } from "../show/text-table.ts";

/** Findings told of each kind; `--all` tells every one. */
const MOST = 12;

const KINDS: Readonly<Record<CheckFinding["kind"], string>> = {
  checksum: "Checksums",
  run: "Notebooks that do not run to their end",
  library: "Library",
  result: "Results",
  prose: "Prose",
  stamp: "Stamps",
  notebook: "Notebooks",
  page: "Pages",
  figure: "Figures",
  table: "Tables",
  file: "Other files",
};

const COLUMNS = [
  "results",
  "same",
  "within rounding",
  "different",
  "furthest apart, in own uncertainties",
];

const cell = (text: string): TableCell => ({ text, number: null, mark: null });

/** One line an answer: how many results are the same, and how far apart the worst is. */
function resultTable(results: readonly CheckedResult[]): TableRecord {
  const files = [...new Set(results.map((one) => one.file))];
  const rows = files.map((file) => {
    const of = results.filter((one) => one.file === file);
    const count = (sameness: CheckedResult["sameness"]) =>
      String(of.filter((one) => one.sameness === sameness).length);
    const apart = Math.max(...of.map((one) => Math.abs(one.apart ?? 0)));
    return [
      file.replace(/^answers\//, "").replace(/\.json$/, ""),
      String(of.length),
      count("same"),
      count("within rounding"),
      count("different"),
      apart === 0 ? "0" : apart.toPrecision(2),
    ].map(cell);
  });
  return {
    name: "check",
    caption: "Published results beside those of a fresh run.",
    columns: [
      { label: "answer", unit: "", align: "left" },
      ...COLUMNS.map((label) => ({ label, unit: "", align: "right" as const })),
    ],
    rows,
  };
}

/** Every number of every answer, published and fresh. */
function everyResult(results: readonly CheckedResult[]): TableRecord {
  const digits = (value: number | null) => value === null ? "" : String(value);
  return {
    name: "results",
    caption: "Every number, published and from a fresh run (SI units).",
    columns: [
      { label: "result", unit: "", align: "left" },
      ...["published", "fresh", "apart / u"].map((label) => ({
        label,
        unit: "",
        align: "right" as const,
      })),
      { label: "", unit: "", align: "left" },
    ],
    rows: results.filter((one) => one.published !== null || one.fresh !== null).map((one) =>
      [
        `${one.file.replace(/^answers\//, "").replace(/\.json$/, "")}: ${one.path}`,
        digits(one.published),
        digits(one.fresh),
        one.apart === null ? "" : one.apart === 0 ? "0" : one.apart.toPrecision(2),
        one.sameness,
      ].map(cell)
    ),
  };
}

/**
 * What to print of a check.
 *
 * @param check what came of it
 * @param all every result, and every finding instead of the first few of each kind
 * @returns lines of text
 */
export function verificationText(check: Verification, all: boolean): string {
  const { counts, findings, results, notes } = check;
  const lines: string[] = [];
  if (results.length > 0) {
    if (all) lines.push(textTable(everyResult(results)));
    lines.push(textTable(resultTable(results)));
  }
  lines.push(
    `${counts.files} files, ${counts.checksums} with the right checksum; ${
      counts.notebooks === 1 ? "1 notebook" : `${counts.notebooks} notebooks`
    } run again; ` +
      `${counts.figures} files of figures and ${counts.tables} of tables compared.`,
  );
  lines.push(...notes);
  for (const [kind, title] of Object.entries(KINDS)) {
    const found = findings.filter((one) => one.kind === kind);
    if (found.length === 0) continue;
    lines.push("", `${title}:`);
    const told = all ? found : found.slice(0, MOST);
    for (const { file, what } of told) {
      lines.push(...`${file}: ${what}`.split("\n").map((line) => `    ${excerpt(line, 1000)}`));
    }
    if (told.length < found.length) {
      lines.push(`    and ${found.length - told.length} more (--all tells every one)`);
    }
  }
  lines.push("", `Fingerprint of this folder: ${check.fingerprint}`);
  lines.push(verdict(check));
  return lines.join("\n");
}

/** The last line. */
function verdict({ findings, results }: Verification): string {
  if (findings.length === 0) return "Same: everything in this folder is what its own source gives.";
  const rounding = results.filter((one) => one.sameness === "within rounding").length;
  const more = rounding === 0 ? "" : `, ${rounding} of them within rounding`;
  return findings.length === 1
    ? "DIFFERENT: one thing is not what the folder's own source gives."
    : `DIFFERENT: ${findings.length} things are not what the folder's own source gives${more}.`;
}
