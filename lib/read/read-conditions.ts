/**
 * Water, day and the comparison's own settings: rows of conditions.csv.
 *
 * @module
 */
import { decimalToSi } from "../base/decimal-to-si.ts";
import { didYouMean } from "../base/did-you-mean.ts";
import { likelyUnit } from "../base/likely-unit.ts";
import { LIMITS, standing } from "../base/limits.ts";
import { excerpt } from "../base/printable.ts";
import { type Condition, type StatedAs } from "../base/session.ts";
import { type Column, CONDITION_QUANTITIES, CONDITIONS } from "../base/tables.ts";
import { findUnit, SI_UNITS, type Unit } from "../base/units.ts";
import { each, type QuantityRows, textOf, unitFor } from "./quantity-rows.ts";
import { type ReadTable } from "./read-table.ts";
import { standardUncertainty } from "./stated-uncertainty.ts";

/**
 * Rows of `conditions.csv`, values and standard uncertainties in SI.
 *
 * @param table as read
 * @returns one condition a row, in order, and what was found (a quantity stated twice, an unknown name)
 */
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
          excerpt(written)
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
        `"${excerpt(written)}" is no quantity that we use; it is kept, unused.`,
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
  const better = likelyUnit(column.name, value, unit);
  return better === null
    ? `A ${column.dimension} in ${unit.name} that can be.`
    : `Did you mean ${better.name}? Write it in the column unit.`;
}
