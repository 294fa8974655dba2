/**
 * The unit in which an odd number was probably written.
 *
 * @module
 */
import { type Standing, standing } from "./limits.ts";
import type { Dimension } from "./tables.ts";
import { toSi, type Unit, unitNamed } from "./units.ts";

/** Units that people forget to name, the likeliest first. */
const FORGOTTEN: Readonly<Partial<Record<Dimension, readonly string[]>>> = {
  speed: ["km/h", "kn", "mph"],
  length: ["cm", "mm", "in", "ft"],
  area: ["cm2", "dm2", "in2", "ft2"],
  volume: ["ml", "m3"],
  mass: ["lb", "g"],
  force: ["kgf", "lbf", "kN"],
  time: ["ms"],
  temperature: ["degF", "K"],
  salinity: ["%", "1"],
  ratio: ["%"],
};

/**
 * A unit that would make an odd number a usual one for its column; `null` where none of the likely ones does.
 *
 * For a number that can't be at all, a unit that makes it merely odd will do (50 in a column of m/s: km/h).
 *
 * @param column name without unit
 * @param value as it stands
 * @param unit it was read in
 * @returns the unit, or `null`
 * @example
 * ```ts
 * import { likelyUnit } from "lakeproof/base/likely-unit.ts";
 * import { unitNamed } from "lakeproof/base/units.ts";
 * import { equal } from "node:assert/strict";
 * equal(likelyUnit("launch_speed", 16, unitNamed("m/s", "speed"))?.name, "km/h");
 * ```
 */
export function likelyUnit(column: string, value: number, unit: Unit): Unit | null {
  const { dimension } = unit;
  const others = (FORGOTTEN[dimension] ?? []).map((name) => unitNamed(name, dimension));
  const as = (wanted: Standing) =>
    others.find((one) => one.name !== unit.name && standing(column, toSi(value, one)) === wanted);
  return as("fits") ?? (standing(column, toSi(value, unit)) === "impossible" ? as("odd") : null) ??
    null;
}
