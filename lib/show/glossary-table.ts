/**
 * The columns of one table of a session folder, as a table to print and take along.
 *
 * @module
 */
import type { TableCell, TableRecord } from "../base/records.ts";
import type { Column, TableContract } from "../base/tables.ts";

const cell = (text: string): TableCell => ({ text, number: null, mark: null });

function fits(column: Column): string {
  if (column.choices !== undefined) return column.choices.join(", ");
  if (column.kind === "number") {
    return column.unit === undefined || column.unit === "1" ? "number" : column.unit;
  }
  return column.kind;
}

/**
 * What may stand in a table's columns.
 *
 * @param table one of the contract's tables
 * @returns one row a column: name, whether it must be there, what goes in, what it means
 */
export function glossaryTable(table: TableContract): TableRecord {
  return {
    name: `glossary-${table.file.replace(/\..*$/, "")}`,
    caption: `${table.file}. ${table.means}`,
    columns: [
      { label: "column", unit: "", align: "left" },
      { label: "must be there", unit: "", align: "left" },
      { label: "unit or words", unit: "", align: "left" },
      { label: "what it is", unit: "", align: "left" },
    ],
    rows: table.columns.map((column) => [
      cell(column.name),
      cell(column.required ? "yes" : ""),
      cell(fits(column)),
      cell(column.means),
    ]),
  };
}
