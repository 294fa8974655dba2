/**
 * Numbers that can't be or look odd in their column, and columns that look as if they stood in another unit.
 *
 * @module
 */
import { type Finding, finding } from "../base/finding.ts";
import { likelyUnit } from "../base/likely-unit.ts";
import { LIMITS, standing } from "../base/limits.ts";
import type { Row, Session } from "../base/session.ts";
import { type Column, DESIGNS, GLIDES, type TableContract, TOW } from "../base/tables.ts";
import { fromSi, toSi, type Unit, unitNamed } from "../base/units.ts";
import { median, short } from "./rule.ts";

interface Value {
  readonly row: number;
  readonly value: number;
}

/** Columns of at least this many rows may be wrong as a whole; fewer are told row by row. */
const WHOLE_COLUMN = 3;

const field = (name: string) => name.replace(/_(\w)/g, (_, letter: string) => letter.toUpperCase());

const inUnit = (value: number, unit: Unit) =>
  `${short(fromSi(value, unit))}${unit.name === "1" ? "" : ` ${unit.name}`}`;

/** The unit that would make every value usual, if the SI unit of the column makes hardly any so. */
function slip(column: Column, values: readonly Value[], shown: Unit): Unit | null {
  const odd = values.filter(({ value }) => standing(column.name, value) !== "fits");
  if (values.length < WHOLE_COLUMN || odd.length < 0.8 * values.length) return null;
  const first = values[0]!;
  const unit = likelyUnit(column.name, fromSi(first.value, shown), shown);
  if (unit === null) return null;
  const fits = values.every(({ value }) =>
    standing(column.name, toSi(fromSi(value, shown), unit)) === "fits"
  );
  return fits ? unit : null;
}

/** A number below zero that would be usual above it. */
const signSlip = (column: Column, value: number) =>
  value < 0 && standing(column.name, value) === "odd" && standing(column.name, -value) === "fits";

/** How far from the middle of its column a number may lie for a unit to be a good guess. */
const NEAR = 1.6;

/** The unit in which a single odd number lies among the others of its column. */
function rowSlip(column: Column, value: number, middle: number, shown: Unit): Unit | null {
  const unit = likelyUnit(column.name, fromSi(value, shown), shown);
  if (unit === null) return null;
  const ratio = toSi(fromSi(value, shown), unit) / middle;
  return ratio < NEAR && ratio > 1 / NEAR ? unit : null;
}

function checkColumn(file: string, column: Column, values: readonly Value[]): Finding[] {
  const limits = LIMITS[column.name];
  if (limits === undefined || column.dimension === undefined || values.length === 0) return [];
  const shown = unitNamed(column.unit!, column.dimension);
  const common = { file, column: column.name } as const;
  const better = slip(column, values, shown);
  if (better !== null) {
    const first = values[0]!;
    const number = short(fromSi(first.value, shown));
    return [finding({
      ...common,
      severity: "warning",
      code: "unit-slip",
      count: values.length,
      what:
        `The values (${number} ${shown.name} in row ${first.row}) are odd all through: ${limits.why}.`,
      wanted: `Did you mean ${better.name}? ${number} ${better.name} is ${
        inUnit(toSi(fromSi(first.value, shown), better), shown)
      }. Then write the unit after the column's name: ${column.name} [${better.name}].`,
    })];
  }
  if (values.length >= WHOLE_COLUMN && values.every(({ value }) => signSlip(column, value))) {
    const first = values[0]!;
    return [finding({
      ...common,
      severity: "warning",
      code: "sign-slip",
      count: values.length,
      what: `Every value is below zero (${
        inUnit(first.value, shown)
      } in row ${first.row}), but ${limits.why}.`,
      wanted: `Did you mean ${inUnit(-first.value, shown)}? What is lost counts as positive.`,
    })];
  }
  const middle = median(values.map((one) => one.value))!;
  return values.flatMap(({ row, value }) => {
    const how = standing(column.name, value);
    if (how === "fits") return [];
    const guess = rowSlip(column, value, middle, shown);
    const number = short(fromSi(value, shown));
    return [finding({
      ...common,
      row,
      severity: how === "impossible" ? "error" : "warning",
      code: how === "impossible" ? "impossible-value" : "odd-value",
      what: `${inUnit(value, shown)} ${
        how === "impossible" ? "can't be" : "is unusual"
      }: ${limits.why}.`,
      wanted: guess === null
        ? "Look whether it is right; if so, leave it."
        : `Did you mean ${guess.name}? ${number} ${guess.name} is ${
          inUnit(toSi(fromSi(value, shown), guess), shown)
        }.`,
    })];
  });
}

/** A row that the user has left out stands in nobody's way, whatever it says. */
const spared = (one: Finding): Finding =>
  one.severity === "error" ? { ...one, severity: "note" } : one;

function checkTable(contract: TableContract, rows: readonly Row[]): Finding[] {
  const out = rows.filter((one) => (one as { leaveOut?: string | null }).leaveOut != null);
  const kept = out.length === 0 ? rows : rows.filter((one) => !out.includes(one));
  return [...checkRows(contract, kept), ...checkRows(contract, out).map(spared)];
}

function checkRows(contract: TableContract, rows: readonly Row[]): Finding[] {
  return contract.columns.flatMap((column) => {
    const values = rows.flatMap((row) => {
      const value = (row as unknown as Record<string, unknown>)[field(column.name)];
      return typeof value === "number" ? [{ row: row.row, value }] : [];
    });
    return checkColumn(contract.file, column, values);
  });
}

/**
 * Every number of designs, glides and tows against the limits of its column.
 *
 * @param session as read
 * @returns errors for what can't be (notes in rows that are left out), warnings for what is odd, one warning for a column
 *   that looks like another unit
 */
export function checkValues(session: Session): Finding[] {
  return [
    ...checkTable(DESIGNS, session.designs),
    ...checkTable(GLIDES, session.glides),
    ...checkTable(TOW, session.tow),
  ];
}
