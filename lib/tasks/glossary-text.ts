/**
 * The glossary that lies in each new session folder: what may stand in which column, in plain words.
 *
 * @module
 */
import {
  type Column,
  CONDITION_QUANTITIES,
  type TableContract,
  TABLES,
  traceContract,
} from "../base/tables.ts";
import { UNITS } from "../base/units.ts";

/** Units that fit a column, the default first. */
function units(column: Column): string {
  const all = UNITS.filter((one) => one.dimension === column.dimension).map((one) => one.name);
  if (column.name.endsWith("_count")) return "number";
  const others = all.filter((one) => one !== column.unit && one !== "1");
  const usual = column.unit === "1" ? "number" : column.unit!;
  return others.length === 0 ? usual : `${usual} (or ${others.join(", ")})`;
}

function holds(column: Column): string {
  if (column.choices !== undefined) return column.choices.join(", ");
  if (column.kind === "date") return "day";
  if (column.kind === "text") return "text";
  return column.dimension === undefined ? "number" : units(column);
}

const row = (column: Column, must: boolean) =>
  `| ${must ? `**${column.name}**` : column.name} | ${holds(column)} | ${column.means} |`;

function table(contract: TableContract): string {
  return [
    `## ${contract.file}`,
    "",
    contract.means,
    "",
    "| column | holds | means |",
    "|---|---|---|",
    ...contract.columns.map((column) => row(column, column.required)),
  ].join("\n");
}

const RULES = `# What stands where

Open the tables in any spreadsheet, write your own rows, and save them as CSV again. Columns in **bold** must be there.
Columns of your own are welcome; they stay in the file, unused.

- An empty cell means: not measured.
- One row in each table is an example. It never counts; write over it and take the words "example row" out.
- A unit in square brackets after a column's name, as \`launch_speed [km/h]\`, holds for the whole column. Without one the
  first unit given below holds.
- A column \`u_NAME\`, as \`u_distance\`, holds the standard uncertainty of NAME in that row, where it differs from the
  others'.
- To keep a row out, write your reason in \`leave_out\`. Nothing is ever left out without being told.
- Rows stand in the order flown. A decimal point or a decimal comma: both are read, but the same one in the whole file.
- Films, logs and photographs go into a folder \`raw\` in here. Nothing of ours ever writes there.
- \`datapackage.json\` describes the tables to other programs. You need not touch it.

Flying and towing can hurt: wear impact protection and a flotation aid, keep off shallow water, dress for the water's
temperature, never go alone, and follow the rules of the place.`;

/**
 * The text of GLOSSARY.md.
 *
 * @returns Markdown, one table of columns for each file
 */
export function glossaryText(): string {
  const conditions = [
    "### Quantities for conditions.csv",
    "",
    "| quantity | unit | means |",
    "|---|---|---|",
    ...CONDITION_QUANTITIES.map((one) => row(one, false)),
  ].join("\n");
  const tables = TABLES.map((contract) =>
    contract.file === "conditions.csv" ? `${table(contract)}\n\n${conditions}` : table(contract)
  );
  const traces = table(traceContract("traces/RUN.csv")) +
    "\n\nOne file a run, under the run's name in glides.csv: traces/7.csv. How well the log reads stands in " +
    "instruments.csv as trace_speed.";
  return [RULES, ...tables, traces].join("\n\n") + "\n";
}
