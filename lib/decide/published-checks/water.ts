/**
 * Published checks of water and gravity.
 *
 * @module
 */
import { gravity } from "../../model/gravity.ts";
import { pureWaterViscosity, water } from "../../model/water.ts";
import { type PublishedCheck, quantityOf } from "../published-check.ts";

/** Mass fraction of salt from practical salinity. */
const salt = (practical: number) => practical / 35 * 0.03516504;

/** All properties at a Celsius temperature of 1990 and a mass fraction of salt. */
function properties(celsius: number, salinity: number) {
  const { density, viscosity, kinematicViscosity, vapourPressure } = water({
    temperature: 273.15 + celsius,
    salinity,
  });
  return {
    "density": density,
    "viscosity": viscosity,
    "kinematic viscosity": kinematicViscosity,
    "vapour pressure": vapourPressure,
  };
}

/** Checks by name. */
export const WATER_CHECKS: Readonly<Record<string, PublishedCheck>> = {
  "water": (inputs, quantity) =>
    quantityOf(
      properties(inputs.number("celsius"), inputs.number("salinity")),
      quantity,
    ),
  // The formula's own scale of temperature is that of 1968.
  "water-eos80": (inputs, quantity) =>
    quantityOf(
      properties(
        inputs.number("celsius_1968") / 1.00024,
        salt(inputs.number("practical_salinity")),
      ),
      quantity,
    ),
  "pure-water-viscosity": (inputs, quantity) =>
    quantityOf({ "viscosity": pureWaterViscosity(inputs.number("kelvin")) }, quantity),
  "gravity": (inputs, quantity) =>
    quantityOf(
      { "gravity at the sea": gravity(inputs.number("latitude_degrees") * Math.PI / 180) },
      quantity,
    ),
};
