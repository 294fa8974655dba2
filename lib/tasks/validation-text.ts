/**
 * What `task validate` prints for one session: problems by file, then what can be answered.
 *
 * @module
 */
import { type Finding, type Severity } from "../base/finding.ts";
import { excerpt } from "../base/printable.ts";
import type { Row, Session } from "../base/session.ts";
import { TABLES } from "../base/tables.ts";
import type { Answerable } from "../check/answerable.ts";
import { rowsInWords, shortened } from "../show/alike-findings.ts";
import { inOrder } from "../show/findings-text.ts";
import { wrapped } from "../show/text-table.ts";

const WORDS: Readonly<Record<Severity, string>> = { error: "ERROR", warning: "look", note: "note" };

const count = (n: number, word: string) => `${n} ${word}${n === 1 ? "" : "s"}`;

/** Findings by file: those with errors first, else in the order of the tables. */
function byFile(findings: readonly Finding[]): [string, Finding[]][] {
  const files = new Map<string, Finding[]>();
  for (const one of findings) {
    const file = one.file ?? "the folder";
    files.set(file, [...files.get(file) ?? [], one]);
  }
  const place = (file: string) => {
    const index = TABLES.findIndex((one) => one.file === file);
    return index < 0 ? TABLES.length : index;
  };
  const faulty = (all: readonly Finding[]) => all.some((one) => one.severity === "error") ? 0 : 1;
  return [...files].sort(([a, one], [b, two]) => faulty(one) - faulty(two) || place(a) - place(b));
}

function findingLines(one: Finding): string {
  const where = [
    one.row === null ? null : `row ${one.row}`,
    one.column === null ? null : excerpt(one.column),
  ].filter((part) => part !== null).join(", ");
  const times = one.count > 1 ? ` (${one.count} times)` : "";
  const head = where === "" ? "" : `${where}${times}: `;
  const body = wrapped(
    `${head}${excerpt(one.what, 400)}`,
    "         ",
    `  ${WORDS[one.severity]}`.padEnd(9),
  );
  if (one.wanted === null) return body;
  return `${body}\n${wrapped(`Wanted: ${excerpt(one.wanted, 400)}`, "         ", "         ")}`;
}

/** Findings one by one; the line that stands for a long series has no place of its own. */
function groupLines(findings: readonly Finding[]): string[] {
  return shortened(findings).map((one) =>
    findings.includes(one) ? findingLines(one) : wrapped(one.what, "         ", "         ")
  );
}

/** What a session holds, in one line. */
function contents(session: Session): string {
  const parts = [
    count(session.designs.length, "design"),
    count(session.glides.length, "glide"),
    ...(session.tow.length > 0
      ? [count(new Set(session.tow.map((one) => one.point)).size, "towed reading")]
      : []),
  ];
  return `${excerpt(session.name)}: ${parts.join(", ")}${
    session.invented ? " (invented data)" : ""
  }`;
}

/** The rows of a file that have an error and stand in no table. */
function notUsed(session: Session, file: string, findings: readonly Finding[]): string[] {
  const tables: Readonly<Record<string, readonly Row[]>> = {
    "designs.csv": session.designs,
    "glides.csv": session.glides,
    "tow.csv": session.tow,
    "calibrations.csv": session.calibrations,
    "conditions.csv": session.conditions,
    "instruments.csv": session.instruments,
  };
  const used = new Set(tables[file]?.map((one) => one.row));
  const faulty = findings.filter((one) => one.severity === "error" && (one.row ?? 1) > 1);
  const rows = [...new Set(faulty.map((one) => one.row!))].filter((row) => !used.has(row));
  if (rows.length === 0) return [];
  return [
    wrapped(
      `Not used: ${rowsInWords(rows)}.`,
      "         ",
      "         ",
    ),
  ];
}

/**
 * The whole text for one session.
 *
 * @param session as read
 * @param findings of reading and checking together
 * @param questions what can be answered
 * @returns lines ended by a line feed
 */
export function validationText(
  session: Session,
  findings: readonly Finding[],
  questions: readonly Answerable[],
): string {
  const lines = [contents(session), ""];
  for (const [file, ones] of byFile(findings)) {
    const sorted = inOrder([...ones].sort((a, b) => (a.row ?? 0) - (b.row ?? 0)));
    lines.push(excerpt(file), ...groupLines(sorted), ...notUsed(session, file, ones), "");
  }
  const sum = (severity: Severity) =>
    findings.filter((one) => one.severity === severity).reduce((n, one) => n + one.count, 0);
  const errors = sum("error");
  lines.push(
    errors + sum("warning") + sum("note") === 0
      ? "Nothing to complain about."
      : `${count(errors, "error")}, ${count(sum("warning"), "thing")} to look at, ${
        count(sum("note"), "note")
      }.${errors > 0 ? " Errors must be put right before an answer can rest on the table." : ""}`,
    "",
    "What can be answered with what is there:",
  );
  for (const one of questions) {
    const head = `${one.question.padEnd(8)}${one.can ? "yes" : "not yet"}: ${one.asks} ${one.has}`;
    lines.push(wrapped(head, "          ", "  "));
    for (const need of one.needs) {
      lines.push(wrapped(`needs ${need}.`, "            ", "          "));
    }
  }
  return lines.join("\n") + "\n";
}
