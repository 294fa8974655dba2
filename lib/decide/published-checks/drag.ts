/**
 * Published checks of friction, the free surface, struts and the drag law.
 *
 * @module
 */
import {
  bestLiftToDrag,
  dragLawOfPolar,
  leastDrag,
  leastDragSpeed,
  leastPowerSpeed,
} from "../../model/drag-law.ts";
import { biplaneFactor, ellipticLinePhi } from "../../model/free-surface.ts";
import { cavitationNumber, cavitationSpeed } from "../../model/cavitation.ts";
import {
  formFactor,
  laminarFriction,
  roughFriction,
  shipCorrelationFriction,
  turbulentFriction,
} from "../../model/friction-line.ts";
import { sectionLiftFactor } from "../../model/surface-lift.ts";
import { water } from "../../model/water.ts";
import { strutDrag } from "../../model/strut-drag.ts";
import { vortexWaveDrag } from "../../model/vortex-wave-drag.ts";
import { STANDARD_GRAVITY } from "../../model/gravity.ts";
import { type CheckInputs, type PublishedCheck, quantityOf } from "../published-check.ts";

/** phi at a span Froude number, by way of a wing of one metre. */
function phi(inputs: CheckInputs): number {
  const speed = inputs.number("span_froude") * Math.sqrt(STANDARD_GRAVITY);
  const depth = inputs.number("depth_over_span");
  return ellipticLinePhi({ span: 1, depth })(speed, STANDARD_GRAVITY);
}

/** What follows from a symmetric polar at any lift. */
function polar(inputs: CheckInputs): Record<string, number> {
  const task = { lift: 800, density: 1000, area: 0.15 };
  const law = dragLawOfPolar({
    leastDragCoefficient: inputs.number("least_drag_coefficient"),
    liftDragFactor: 1 / (Math.PI * inputs.number("aspect_ratio") * inputs.number("efficiency")),
    liftCoefficientOfLeastDrag: 0,
  }, task);
  const liftCoefficient = (speed: number) =>
    2 * task.lift / (task.density * task.area * speed ** 2);
  const best = bestLiftToDrag(law, task.lift);
  return {
    "best lift-to-drag": best,
    "its lift coefficient": liftCoefficient(leastDragSpeed(law)),
    "its glide angle": Math.atan(1 / best) * 180 / Math.PI,
    "lift coefficient of least power": liftCoefficient(leastPowerSpeed(law)),
    "least-power speed over least-drag speed": leastPowerSpeed(law) / leastDragSpeed(law),
  };
}

/** Least drag and power of three constants. */
function law(inputs: CheckInputs): Record<string, number> {
  const own = { a: inputs.number("a"), d: inputs.number("d"), e: inputs.number("e") };
  return {
    "least-drag speed": leastDragSpeed(own),
    "least drag": leastDrag(own),
    "least-power speed": leastPowerSpeed(own),
  };
}

/** Spray and junction of one strut; friction is not asked, so any viscosity does. */
function strut(inputs: CheckInputs): Record<string, number> {
  const { spray, junction } = strutDrag(
    { count: 1, chord: inputs.number("chord"), thickness: inputs.number("thickness") },
    {
      speed: inputs.number("speed"),
      density: inputs.number("density"),
      depth: 1,
      kinematicViscosity: 1e-6,
    },
  );
  return { spray, junction };
}

/** Cavitation number at a speed, and the speed at which it is 1, in the table's own water. */
function cavitation(inputs: CheckInputs): Record<string, number> {
  const salinity = inputs.number("salinity");
  const { density, vapourPressure } = water({
    temperature: 273.15 + inputs.number("celsius"),
    salinity,
  });
  const task = {
    depth: inputs.number("depth"),
    density,
    gravity: STANDARD_GRAVITY,
    vapourPressure,
  };
  return {
    "cavitation number": cavitationNumber({ ...task, speed: inputs.number("speed") }),
    "speed of number 1": cavitationSpeed(task, 1),
  };
}

/** Checks by name. */
export const DRAG_CHECKS: Readonly<Record<string, PublishedCheck>> = {
  "plate-friction": (inputs, quantity) =>
    quantityOf({
      "laminar": laminarFriction(inputs.number("reynolds")),
      "turbulent": turbulentFriction(inputs.number("reynolds")),
      "ship correlation": shipCorrelationFriction(inputs.number("reynolds")),
    }, quantity),
  "rough-friction": (inputs, quantity) =>
    quantityOf({ "rough": roughFriction(inputs.number("length_over_grain")) }, quantity),
  "section-lift": (inputs, quantity) =>
    quantityOf({ "lift factor": sectionLiftFactor(inputs.number("depth_over_chord")) }, quantity),
  "cavitation": (inputs, quantity) => quantityOf(cavitation(inputs), quantity),
  "form-factor": (inputs, quantity) =>
    quantityOf({ "form factor": formFactor(inputs.number("thickness_ratio")) }, quantity),
  "strut": (inputs, quantity) => quantityOf(strut(inputs), quantity),
  "biplane-factor": (inputs, quantity) =>
    quantityOf({ "sigma": biplaneFactor(inputs.number("gap_over_span")) }, quantity),
  "free-surface": (inputs, quantity) => quantityOf({ "phi": phi(inputs) }, quantity),
  "vortex-wave-drag": (inputs, quantity) =>
    quantityOf({
      "drag a metre": vortexWaveDrag({
        circulation: inputs.number("circulation"),
        depth: inputs.number("depth"),
        speed: inputs.number("speed"),
        density: inputs.number("density"),
        gravity: inputs.number("gravity"),
      }),
    }, quantity),
  "polar": (inputs, quantity) => quantityOf(polar(inputs), quantity),
  "drag-law": (inputs, quantity) => quantityOf(law(inputs), quantity),
};
