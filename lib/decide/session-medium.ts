/**
 * The water and gravity of a session, from its conditions or stated assumptions.
 *
 * @module
 */
import type { Condition, Session } from "../base/session.ts";
import { gravity as gravityAt, STANDARD_GRAVITY } from "../model/gravity.ts";
import { waterDensity } from "../model/water.ts";

/** What the craft of a session move in. */
export interface Medium {
  /** kg/m3 */
  readonly density: number;
  /** m/s2 */
  readonly gravity: number;
  /** Sentences: value, and what it was taken from. */
  readonly assumptions: readonly string[];
}

/** K and kg/kg of a lake in early summer, where nobody measured. */
const USUAL_TEMPERATURE = 288.15, USUAL_SALINITY = 0;

/**
 * The condition that holds for a block: its own row, else the row without a block.
 *
 * @param session whose conditions
 * @param quantity name in conditions.csv
 * @param block of the run; `null` for a run without one
 * @returns the row, or `null` where none is given
 */
export function conditionOf(
  session: Session,
  quantity: string,
  block: string | null,
): Condition | null {
  const rows = session.conditions.filter((one) => one.quantity === quantity);
  return (block === null ? undefined : rows.find((one) => one.block === block)) ??
    rows.find((one) => one.block === null) ?? null;
}

/**
 * Water density and gravity of a session.
 *
 * @param session with or without water_temperature, salinity, latitude and altitude in its conditions
 * @returns density in kg/m3, gravity in m/s2, and sentences that say what they rest on
 * @throws RangeError where a stated condition is outside the range of the water's or gravity's formula
 */
export function sessionMedium(session: Session): Medium {
  const temperature = conditionOf(session, "water_temperature", null);
  const salinity = conditionOf(session, "salinity", null);
  const latitude = conditionOf(session, "latitude", null);
  const altitude = conditionOf(session, "altitude", null);
  const kelvin = temperature?.value ?? USUAL_TEMPERATURE;
  const salt = salinity?.value ?? USUAL_SALINITY;
  const density = waterDensity({ temperature: kelvin, salinity: salt });
  const gravity = latitude === null
    ? STANDARD_GRAVITY
    : gravityAt(latitude.value, altitude?.value ?? 0);
  const celsius = `${(kelvin - 273.15).toFixed(1)} °C${temperature === null ? " (assumed)" : ""}`;
  const salted = salt === 0
    ? `fresh water${salinity === null ? " (assumed)" : ""}`
    : `${(salt * 1000).toFixed(1)} g of salt a kilogram`;
  return {
    density,
    gravity,
    assumptions: [
      `Water of ${density.toFixed(1)} kg/m³: ${celsius}, ${salted}.`,
      latitude === null
        ? `Gravity ${gravity.toFixed(5)} m/s²: the standard value, since no latitude is given.`
        : `Gravity ${gravity.toFixed(5)} m/s² at latitude ${
          (latitude.value * 180 / Math.PI).toFixed(1)
        } degrees.`,
    ],
  };
}
