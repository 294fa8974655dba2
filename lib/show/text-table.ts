/**
 * Tables and paragraphs as plain text: columns that line up whatever script the names are written in.
 *
 * @module
 */
import stringWidth from "string-width";
import type { TableRecord } from "../base/records.ts";
import { printable } from "../base/printable.ts";

/** Columns of a terminal that text is broken to. */
const LINE = 88;

function padded(text: string, width: number, right: boolean): string {
  const space = " ".repeat(Math.max(0, width - stringWidth(text)));
  return right ? space + text : text + space;
}

/**
 * A table as plain text, caption first.
 *
 * @param table any table
 * @returns lines without trailing spaces, ended by a line feed
 */
export function textTable(table: TableRecord): string {
  const head = table.columns.map((column) =>
    printable(column.unit === "" ? column.label : `${column.label} (${column.unit})`)
  );
  const rows = table.rows.map((row) => row.map((cell) => printable(cell.text)));
  const widths = head.map((label, at) =>
    Math.max(stringWidth(label), ...rows.map((row) => stringWidth(row[at] ?? "")))
  );
  const line = (cells: readonly string[]) =>
    widths.map((width, at) => padded(cells[at] ?? "", width, table.columns[at]?.align === "right"))
      .join("  ").trimEnd();
  const rule = widths.map((width) => "-".repeat(width)).join("  ");
  return [wrapped(printable(table.caption)), line(head), rule, ...rows.map(line)].join("\n") + "\n";
}

/**
 * A paragraph broken into lines at ordinary spaces; a number and its unit stay together.
 *
 * @param text one paragraph
 * @param indent what stands before the second and later lines
 * @param first what stands before the first line
 * @returns lines of up to 88 columns, without a line feed at the end
 */
export function wrapped(text: string, indent = "", first = ""): string {
  const lines: string[] = [];
  let line = first;
  let empty = true;
  for (const word of text.split(" ")) {
    if (!empty && stringWidth(line) + 1 + stringWidth(word) > LINE) {
      lines.push(line);
      line = indent + word;
    } else {
      line += (empty ? "" : " ") + word;
      empty = false;
    }
  }
  return [...lines, line].join("\n");
}
