/**
 * Published checks of gliding and stalling.
 *
 * @module
 */
import { decay } from "../../model/decay.ts";
import { stallSpeed } from "../../model/stall.ts";
import { type CheckInputs, type PublishedCheck, quantityOf } from "../published-check.ts";

function coastDown(inputs: CheckInputs): Record<string, number> {
  const { distance, duration } = decay(
    { a: inputs.number("a"), d: inputs.number("d"), e: inputs.number("e") },
    {
      launchSpeed: inputs.number("from"),
      endSpeed: inputs.number("to"),
      effectiveMass: inputs.number("mass"),
    },
  );
  return { distance, duration };
}

/** Checks by name. */
export const GLIDE_CHECKS: Readonly<Record<string, PublishedCheck>> = {
  "coast-down": (inputs, quantity) => quantityOf(coastDown(inputs), quantity),
  "stall-speed": (inputs, quantity) =>
    quantityOf({
      "stall speed": stallSpeed({
        weightInWater: inputs.number("lift"),
        density: inputs.number("density"),
        area: inputs.number("area"),
        largestLiftCoefficient: inputs.number("lift_coefficient"),
      }),
    }, quantity),
};
