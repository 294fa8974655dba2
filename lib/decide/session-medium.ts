/**
 * The water and gravity of a session, from its conditions or stated assumptions.
 *
 * @module
 */
import { DataError } from "../base/errors.ts";
import { finding } from "../base/finding.ts";
import type { Session } from "../base/session.ts";
import { conditionOf } from "../check/condition-of.ts";
import { meanOf } from "../infer/sample.ts";
import { gravity as gravityAt, STANDARD_GRAVITY } from "../model/gravity.ts";
import { water } from "../model/water.ts";

/** What the craft of a session move in. */
export interface Medium {
  /** kg/m3 */
  readonly density: number;
  /** m2/s */
  readonly kinematicViscosity: number;
  /** m/s2 */
  readonly gravity: number;
  /** One sentence each on the water and on gravity, or several where blocks differ: value, and what it was taken from. */
  readonly sentences: { readonly water: readonly string[]; readonly gravity: readonly string[] };
}

/** K and kg/kg of a lake in early summer, where nobody measured. */
const USUAL_TEMPERATURE = 288.15, USUAL_SALINITY = 0;

/**
 * Water density and gravity of one block of a session.
 *
 * @param session with or without water_temperature, salinity, latitude and altitude in its conditions
 * @param block whose own rows come first; `null` for those that hold for all
 * @returns density in kg/m3, viscosity in m2/s, gravity in m/s2, and sentences that say what they rest on
 * @throws RangeError where a stated condition is outside the range of the water's or gravity's formula
 */
export function blockMedium(session: Session, block: string | null): Medium {
  const temperature = conditionOf(session, "water_temperature", block);
  const salinity = conditionOf(session, "salinity", block);
  const latitude = conditionOf(session, "latitude", block);
  const altitude = conditionOf(session, "altitude", block);
  const kelvin = temperature?.value ?? USUAL_TEMPERATURE;
  const salt = salinity?.value ?? USUAL_SALINITY;
  const { density, kinematicViscosity } = water({ temperature: kelvin, salinity: salt });
  const gravity = latitude === null
    ? STANDARD_GRAVITY
    : gravityAt(latitude.value, altitude?.value ?? 0);
  const celsius = `${(kelvin - 273.15).toFixed(1)} °C${temperature === null ? " (assumed)" : ""}`;
  const salted = salt === 0
    ? `fresh water${salinity === null ? " (assumed)" : ""}`
    : `${(salt * 1000).toFixed(1)} g of salt a kilogram`;
  return {
    density,
    kinematicViscosity,
    gravity,
    sentences: {
      water: [`Water of ${density.toFixed(1)} kg/m³: ${celsius}, ${salted}.`],
      gravity: [
        latitude === null
          ? `Gravity ${gravity.toFixed(5)} m/s²: the standard value, since no latitude is given.`
          : `Gravity ${gravity.toFixed(5)} m/s² at latitude ${
            (latitude.value * 180 / Math.PI).toFixed(1)
          } degrees.`,
      ],
    },
  };
}

/**
 * The medium to compare designs in: the mean over the blocks flown.
 *
 * @param media one or more
 * @returns mean density, viscosity and gravity, and each distinct sentence once
 */
export function meanMedium(media: readonly Medium[]): Medium {
  return {
    density: meanOf(media.map((one) => one.density)),
    kinematicViscosity: meanOf(media.map((one) => one.kinematicViscosity)),
    gravity: meanOf(media.map((one) => one.gravity)),
    sentences: {
      water: [...new Set(media.flatMap((one) => one.sentences.water))],
      gravity: [...new Set(media.flatMap((one) => one.sentences.gravity))],
    },
  };
}

/**
 * What a reading of the conditions gives; a condition that no water has is a fault in the data.
 *
 * @param read reads water and gravity
 * @returns what it gave
 * @throws DataError with a finding where a stated condition can't be
 */
export function withinNature<T>(read: () => T): T {
  try {
    return read();
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    throw new DataError(error.message, [
      finding({
        severity: "error",
        code: "impossible-conditions",
        file: "conditions.csv",
        what: `${error.message}.`,
      }),
    ]);
  }
}
