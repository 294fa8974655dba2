/**
 * Published checks of gliding and stalling.
 *
 * @module
 */
import { decay } from "../../model/decay.ts";
import { air } from "../../model/air.ts";
import {
  bestLiftToDrag,
  dragForce,
  dragLawOfPolar,
  leastDragSpeed,
  leastPowerSpeed,
} from "../../model/drag-law.ts";
import { STANDARD_GRAVITY } from "../../model/gravity.ts";
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

/** Speed of the best glide of a symmetric polar: the path is tilted, so lift is weight times its cosine. */
function bestGlide(inputs: CheckInputs): Record<string, number> {
  const [weight, area] = [inputs.number("weight"), inputs.number("area")];
  const law = (lift: number) =>
    dragLawOfPolar({
      leastDragCoefficient: inputs.number("least_drag_coefficient"),
      liftDragFactor: 1 / (Math.PI * inputs.number("aspect_ratio") * inputs.number("efficiency")),
      liftCoefficientOfLeastDrag: 0,
    }, { lift, density: air(inputs.number("altitude")).density, area });
  const ratio = bestLiftToDrag(law(weight), weight);
  const speed = leastDragSpeed(law(weight * Math.cos(Math.atan(1 / ratio))));
  return { "best-glide speed": speed, "distance from its height": inputs.number("height") * ratio };
}

/** Least sink of a symmetric polar whose best glide ratio and its speed are printed: sink is power over weight. */
function handbookGlide(inputs: CheckInputs): Record<string, number> {
  const weight = inputs.number("mass") * STANDARD_GRAVITY;
  const best = inputs.number("best_speed");
  // Half of the least drag is a v^2 and half e/v^2, where there is no constant term.
  const half = weight / inputs.number("best_glide_ratio") / 2;
  const law = { a: half / best ** 2, d: 0, e: half * best ** 2 };
  const slow = leastPowerSpeed(law);
  return { "least sink": dragForce(law, slow) * slow / weight, "speed of least sink": slow };
}

/** Checks by name. */
export const GLIDE_CHECKS: Readonly<Record<string, PublishedCheck>> = {
  "handbook-glide": (inputs, quantity) => quantityOf(handbookGlide(inputs), quantity),
  "best-glide": (inputs, quantity) => quantityOf(bestGlide(inputs), quantity),
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
