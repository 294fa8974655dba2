/**
 * Rows whose unit stands in the row: conditions, instruments, calibrations.
 *
 * @module
 */
import { didYouMean } from "../base/did-you-mean.ts";
import { type Finding, finding, type Severity } from "../base/finding.ts";
import { LIMITS, standing } from "../base/limits.ts";
import { printable } from "../base/printable.ts";
import {
  type Calibration,
  type Condition,
  type ErrorKind,
  type Instrument,
  type StatedAs,
} from "../base/session.ts";
import {
  CALIBRATIONS,
  type Column,
  CONDITION_QUANTITIES,
  CONDITIONS,
  DESIGNS,
  GLIDES,
  INSTRUMENTS,
  type TableContract,
  TOW,
} from "../base/tables.ts";
import { decimalToSi, findUnit, SI_UNITS, type Unit, unitNamed, UNITS } from "../base/units.ts";
import { type ReadRow, type ReadTable } from "./read-table.ts";
import { standardUncertainty } from "./stated-uncertainty.ts";
import { usable } from "./typed-rows.ts";

/** Rows of one kind and what was found while making them. */
export interface QuantityRows<T> {
  readonly rows: readonly T[];
  readonly findings: readonly Finding[];
}

/** Reports a problem in one row. */
type Report = (
  severity: Severity,
  code: string,
  column: string,
  what: string,
  wanted?: string,
) => void;

function each<T>(
  contract: TableContract,
  table: ReadTable,
  make: (row: ReadRow, report: Report) => T | null,
): QuantityRows<T> {
  const findings: Finding[] = [];
  const rows: T[] = [];
  for (const row of table.rows) {
    if (!usable(contract, row, findings)) continue;
    const made = make(row, (severity, code, column, what, wanted) =>
      findings.push(finding({
        severity,
        code,
        file: contract.file,
        row: row.row,
        column,
        what,
        wanted: wanted ?? null,
      })));
    if (made !== null) rows.push(made);
  }
  return { rows, findings };
}

const textOf = (row: ReadRow, name: string) => row.values[name] as string | null;

/** The unit written in a row for a known quantity: the default where none is written, `null` with an error if it can't be. */
function unitFor(column: Column, written: string | null, report: Report): Unit | null {
  const usual = unitNamed(column.unit!, column.dimension!);
  if (written === null) return usual;
  const unit = findUnit(written, column.dimension);
  if (unit !== null) return unit;
  const other = findUnit(written);
  report(
    "error",
    other === null ? "unknown-unit" : "wrong-unit",
    "unit",
    other === null
      ? `"${printable(written)}" is no unit that we know; the row was not used.`
      : `"${
        printable(written)
      }" is a unit of ${other.dimension}, but ${column.name} is a ${column.dimension}; the row was not used.`,
    `One of ${
      UNITS.filter((one) => one.dimension === column.dimension).map((one) => one.name).join(", ")
    }.`,
  );
  return null;
}

/** Rows of `conditions.csv`, values and standard uncertainties in SI. */
export function readConditions(table: ReadTable): QuantityRows<Condition> {
  const seen = new Map<string, number>();
  return each(CONDITIONS, table, (row, report) => {
    const written = textOf(row, "quantity")!;
    const quantity = written.toLowerCase().replace(/[\s-]+/g, "_");
    const known = CONDITION_QUANTITIES.find((one) => one.name === quantity);
    const block = textOf(row, "block");
    const key = JSON.stringify([quantity, block]);
    const before = seen.get(key);
    if (before !== undefined) {
      report(
        "error",
        "doubled-row",
        "quantity",
        `${
          printable(written)
        } stands in row ${before} already for the same block; this row was not used.`,
        "One row for each quantity and block.",
      );
      return null;
    }
    seen.set(key, row.row);
    const statedAs = textOf(row, "stated_as") as StatedAs | null;
    const spread = row.decimals["uncertainty"];
    if (spread !== undefined && !(Number(spread) > 0)) {
      report(
        "error",
        "impossible-value",
        "uncertainty",
        `An uncertainty of ${spread} can't be.`,
        "More than 0, or an empty cell.",
      );
      return null;
    }
    const base = {
      row: row.row,
      own: row.own,
      quantity,
      statedAs,
      block,
      note: textOf(row, "note"),
    };
    if (known === undefined) {
      const meant = didYouMean(quantity, CONDITION_QUANTITIES.map((one) => one.name));
      report(
        meant === null ? "note" : "warning",
        "unknown-quantity",
        "quantity",
        `"${printable(written)}" is no quantity that we use; it is kept, unused.`,
        meant === null ? undefined : `Did you mean ${meant}?`,
      );
    }
    const unit = known === undefined
      ? findUnit(textOf(row, "unit") ?? "")
      : unitFor(known, textOf(row, "unit"), report);
    if (known !== undefined && unit === null) return null;
    const si = (text: string, isSpread: boolean) =>
      unit === null ? Number(text) : decimalToSi(text, unit, isSpread);
    const value = si(row.decimals["value"]!, false);
    const bound = spread === undefined ? null : si(spread, true);
    if (!Number.isFinite(value) || (bound !== null && !Number.isFinite(bound))) {
      report(
        "error",
        "not-a-number",
        "value",
        "The value is beyond all measure; the row was not used.",
      );
      return null;
    }
    if (known !== undefined && standing(quantity, value) === "impossible") {
      report(
        "error",
        "impossible-value",
        "value",
        `${row.decimals["value"]} ${unit!.name} can't be: ${
          LIMITS[quantity]!.why
        }; the row was not used.`,
        betterUnit(Number(row.decimals["value"]), known, unit!),
      );
      return null;
    }
    return {
      ...base,
      value,
      unit: unit === null ? textOf(row, "unit") ?? "" : SI_UNITS[unit.dimension],
      uncertainty: bound === null ? null : standardUncertainty(bound, statedAs ?? "standard"),
    };
  });
}

function betterUnit(value: number, column: Column, unit: Unit): string {
  const better = UNITS.find((one) =>
    one.dimension === column.dimension && one !== unit &&
    standing(column.name, decimalToSi(String(value), one)) === "fits"
  );
  return better === undefined
    ? `A ${column.dimension} in ${unit.name} that can be.`
    : `Did you mean ${better.name}? Write it in the column unit.`;
}

const MEASURED: readonly Column[] = [
  ...GLIDES.columns,
  ...TOW.columns,
  ...DESIGNS.columns,
  ...CONDITION_QUANTITIES,
].filter((one) => one.dimension !== undefined);

/** Rows of `instruments.csv`, standard uncertainties in SI or as shares. */
export function readInstruments(table: ReadTable): QuantityRows<Instrument> {
  return each(INSTRUMENTS, table, (row, report) => {
    const written = textOf(row, "quantity")!;
    const quantity = written.toLowerCase().replace(/[\s-]+/g, "_");
    const column = MEASURED.find((one) => one.name === quantity);
    if (column === undefined) {
      const meant = didYouMean(quantity, [...new Set(MEASURED.map((one) => one.name))]);
      report(
        "error",
        "unknown-quantity",
        "quantity",
        `"${printable(written)}" is no column of numbers that we know; the row was not used.`,
        meant === null ? "The name of a column, as launch_speed." : `Did you mean ${meant}?`,
      );
      return null;
    }
    const statedAs = textOf(row, "stated_as") as StatedAs | null;
    const kind = textOf(row, "kind") as ErrorKind | null;
    if (row.faults.includes("stated_as") || row.faults.includes("kind")) return null;
    if (statedAs === null) {
      report(
        "note",
        "assumed",
        "stated_as",
        "stated_as is empty: the number is taken as a standard uncertainty.",
        "standard, 95 % or limits.",
      );
    }
    if (kind === null) {
      report(
        "note",
        "assumed",
        "kind",
        "kind is empty: the error is taken as a new one in each row (independent).",
        "independent, or common for an error that all rows share.",
      );
    }
    const unitText = textOf(row, "unit");
    const relative = unitText !== null && column.dimension !== "ratio" &&
      findUnit(unitText, "ratio")?.name === "%";
    const unit = relative ? unitNamed("%", "ratio") : unitFor(column, unitText, report);
    if (unit === null) return null;
    const text = row.decimals["uncertainty"]!;
    const stated = decimalToSi(text, unit, true);
    if (!(stated > 0) || !Number.isFinite(stated)) {
      report(
        "error",
        "impossible-value",
        "uncertainty",
        `An uncertainty of ${text} can't be; the row was not used.`,
        "More than 0.",
      );
      return null;
    }
    return {
      row: row.row,
      own: row.own,
      quantity,
      instrument: textOf(row, "instrument"),
      uncertainty: standardUncertainty(stated, statedAs ?? "standard"),
      relative,
      statedAs: statedAs ?? "standard",
      kind: kind ?? "independent",
      how: textOf(row, "how"),
    };
  });
}

/** Rows of `calibrations.csv`; values in SI where their unit is known, else as they stand. */
export function readCalibrations(table: ReadTable): QuantityRows<Calibration> {
  return each(CALIBRATIONS, table, (row) => {
    const inSi = (column: string) => {
      const text = row.decimals[column];
      const unit = findUnit(textOf(row, `${column}_unit`) ?? "");
      if (text === undefined) return null;
      return unit === null ? Number(text) : decimalToSi(text, unit);
    };
    const unitOf = (column: string) => {
      const written = textOf(row, `${column}_unit`);
      const unit = written === null ? null : findUnit(written);
      return unit === null ? written : SI_UNITS[unit.dimension];
    };
    return {
      row: row.row,
      own: row.own,
      instrument: textOf(row, "instrument")!,
      when: textOf(row, "when") as Calibration["when"],
      applied: inSi("applied"),
      appliedUnit: unitOf("applied"),
      reading: inSi("reading")!,
      readingUnit: unitOf("reading"),
    };
  });
}
