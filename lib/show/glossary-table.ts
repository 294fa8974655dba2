/**
 * The columns of one table of a session folder, as a table to print and take along.
 *
 * @module
 */
import type { TableRecord } from "../base/records.ts";
import type { Column, TableContract } from "../base/tables.ts";
import { textCell } from "./table-cells.ts";
import { left } from "./table-columns.ts";

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
      left("column"),
      left("must be there"),
      left("unit or words"),
      left("what it is"),
    ],
    rows: table.columns.map((column) => [
      textCell(column.name),
      textCell(column.required ? "yes" : ""),
      textCell(fits(column)),
      textCell(column.means),
    ]),
  };
}
