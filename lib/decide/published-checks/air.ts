/**
 * Published checks of air.
 *
 * @module
 */
import { air, airViscosity } from "../../model/air.ts";
import { type PublishedCheck, quantityOf } from "../published-check.ts";

/** Checks by name. */
export const AIR_CHECKS: Readonly<Record<string, PublishedCheck>> = {
  "standard-air": (inputs, quantity) => {
    const own = air(inputs.number("altitude"));
    return quantityOf({
      "temperature": own.temperature,
      "pressure": own.pressure,
      "density": own.density,
      "viscosity": own.viscosity,
      "kinematic viscosity": own.kinematicViscosity,
    }, quantity);
  },
  "air-viscosity": (inputs, quantity) =>
    quantityOf({ "viscosity": airViscosity(inputs.number("celsius") + 273.15) }, quantity),
};
