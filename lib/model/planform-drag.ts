/**
 * Drag of the whole craft, predicted part by part from the planform.
 *
 * @module
 */
import { formFactor, plateFriction, TRANSITION_REYNOLDS } from "./friction-line.ts";
import { ellipticLinePhi } from "./free-surface.ts";
import { type StrutDrag, strutDrag, type Struts } from "./strut-drag.ts";

/** What was built and who stands on it. */
export interface Craft {
  /** m */
  readonly span: number;
  /** m2, projected. */
  readonly area: number;
  /** Thickness over chord, 1. */
  readonly thicknessRatio: number;
  readonly struts: Struts;
  /** m2: drag over dynamic pressure of anything else under water. */
  readonly extraDragArea?: number;
  /** m2 of rider and board in the air; 0.55 for one who stands, bent (from memory, to a third). */
  readonly airDragArea?: number;
  /** Span efficiency of the loading, 1. */
  readonly spanEfficiency?: number;
  /** Growth of section drag with lift, 1. */
  readonly viscousLiftFactor?: number;
  /** Lift coefficient of least section drag, 1; 0 for a symmetric section. */
  readonly liftCoefficientOfLeastDrag?: number;
  /** Reynolds number at which the flow turns turbulent, 1. */
  readonly transitionReynolds?: number;
  /** m: grains of a rough finish, on wing and struts; 0 for a smooth one. */
  readonly roughness?: number;
  /** How far parts depart from their formulas. */
  readonly departures?: Departures;
}

/** Factors on what the formulas add, 1 each where left out: the doubts of the formulas themselves. */
export interface Departures {
  /** On form factor - 1 of the wing. */
  readonly wingForm?: number;
  /** On form factor - 1 of the struts. */
  readonly strutForm?: number;
  readonly spray?: number;
  readonly junction?: number;
  /** On phi - 1: what the surface does. */
  readonly surface?: number;
}

/** Water, air and gravity around the craft, at one depth. */
export interface Surroundings {
  /** kg/m3 */
  readonly density: number;
  /** m2/s */
  readonly kinematicViscosity: number;
  /** m/s2 */
  readonly gravity: number;
  /** m of the wing under the surface; `Infinity` (for a craft without struts) for no surface at all. */
  readonly depth: number;
  /** kg/m3 */
  readonly airDensity?: number;
  /** phi of this span and depth by speed, where someone holds a faster table of it; the integral itself otherwise. */
  readonly phi?: (speed: number) => number;
}

/** One steady state. */
export interface Flight {
  /** m/s through the water. */
  readonly speed: number;
  /** N: weight less buoyancy. */
  readonly weightInWater: number;
  /** rad of a tow line above the horizontal; 0 in a glide. */
  readonly lineAngle?: number;
  /** m/s of wind from ahead. */
  readonly headwind?: number;
}

/** Drag by its parts, N, and the coefficients behind them. */
export interface DragParts {
  readonly wingFriction: number;
  readonly viscousLift: number;
  /** Induced drag and waves, by phi. */
  readonly inducedAndWave: number;
  readonly struts: number;
  readonly spray: number;
  readonly junction: number;
  readonly extra: number;
  /** Rider and board in the air. */
  readonly air: number;
  /** All of the above: what a glide or a load cell sees. */
  readonly total: number;
  /** Wing alone: the first three. */
  readonly wing: number;
  readonly lift: number;
  readonly liftCoefficient: number;
  readonly leastDragCoefficient: number;
  readonly phi: number;
  readonly reynolds: number;
}

/**
 * Lift coefficient that carries the weight while a sloping line takes up all drag; the stable form of the quadratic's root.
 * `null` where the line pulls down more than the wing can lift.
 */
function liftCoefficient(quadratic: number, linear: number, constant: number): number | null {
  const discriminant = linear * linear - 4 * quadratic * constant;
  if (!(discriminant >= 0)) return null;
  return -2 * constant / (linear + Math.sqrt(discriminant));
}

/** A factor whose excess over 1 departs from its formula. */
const departed = (form: number, factor = 1) => factor === 1 ? form : 1 + factor * (form - 1);

/**
 * The build-up of drag of a craft at one depth, as a function of its flight.
 *
 * Everything under water stands on the wing's projected area or enters as a force. Not in it: fuselage and stabiliser (give an extra
 * drag area), ventilation, waves of the lake, a near bottom (deep water means deeper than `pi v^2/g`, 5 m at 4 m/s). Against drag tables
 * of a clean 12 % section the friction part is 19 % low at Reynolds number 1.6e5 and 17 to 48 % high above; a hand-finished foil lies
 * between. Trust the shape over speed more than the level.
 *
 * Source: section drag `2 C_F(Re_c)(1 + 2 t/c + 60 (t/c)^4)` (Hoerner 1965); viscous lift drag `k_v (C_L - C_Lm)^2`, k_v
 * 0.010 from tabulated drag of a 12 % symmetric section; induced and wave drag `C_L^2 phi/(pi AR e)`; struts, spray and junction
 * as in `strut-drag.ts`; air drag on 1.225 kg/m3 (ISO 2533). e 0.95, k_v and air drag area from memory.
 *
 * @param craft planform, struts and shares that are not known from it
 * @param around water, air, gravity, depth
 * @returns a function from speed (m/s), weight in water (N) and line angle (rad) to the parts in N
 * @throws RangeError when a size is not above zero; later when the speed is not, or no steady flight exists
 *
 * @example
 * ```ts
 * import { dragBuildUp } from "lakeproof/model/planform-drag.ts";
 * const craft = { span: 0.9, area: 0.15, thicknessRatio: 0.12, struts: { count: 1, chord: 0.12, thickness: 0.0144 } };
 * const around = { density: 999.1, kinematicViscosity: 1.1386e-6, gravity: 9.81, depth: 0.4 };
 * const drag = dragBuildUp(craft, around)({ speed: 4.5, weightInWater: 843 });
 * if (!(drag.total > 60 && drag.total < 70)) throw new Error(`${drag.total} N`);
 * ```
 */
export function dragBuildUp(craft: Craft, around: Surroundings): (flight: Flight) => DragParts {
  const at = steadyBuildUp(craft, around);
  return (flight) => {
    const parts = at(flight);
    if (parts !== null) return parts;
    throw new RangeError(
      "Cannot fly steadily as the line pulls down more than the wing can lift at this speed",
    );
  };
}

/**
 * The same, for those who ask at speeds where there may be no steady flight: on a line that slopes down steeply.
 *
 * @param craft planform, struts and shares that are not known from it
 * @param around water, air, gravity, depth
 * @returns a function from the flight to the parts in N, or to `null` where the line pulls down more than the wing can lift
 * @throws RangeError when a size is not above zero; later when the speed is not
 */
export function steadyBuildUp(
  craft: Craft,
  around: Surroundings,
): (flight: Flight) => DragParts | null {
  const { span, area, thicknessRatio, struts } = craft;
  const { density, kinematicViscosity, gravity, depth, airDensity = 1.225 } = around;
  for (
    const [name, value] of Object.entries({ span, area, density, kinematicViscosity, gravity })
  ) {
    if (!(value > 0 && value < Infinity)) {
      throw new RangeError(`Cannot build up drag as ${name} must be above zero: ${value}`);
    }
  }
  const viscous = craft.viscousLiftFactor ?? 0.010;
  const camber = craft.liftCoefficientOfLeastDrag ?? 0;
  const transition = craft.transitionReynolds ?? TRANSITION_REYNOLDS;
  const chord = area / span;
  const aspect = span * span / area;
  const { departures = {}, roughness = 0 } = craft;
  const form = departed(formFactor(thicknessRatio), departures.wingForm);
  const strutShape = struts.count === 0 ? 1 : formFactor(struts.thickness / struts.chord);
  const strutForm = departed(strutShape, departures.strutForm) / strutShape;
  const chordOverGrain = roughness > 0 ? chord / roughness : Infinity;
  const integral = around.phi === undefined ? ellipticLinePhi({ span, depth }) : null;
  const phiAt = around.phi ?? ((speed: number) => integral!(speed, gravity));
  const airArea = craft.airDragArea ?? 0.55;
  const none: StrutDrag = { friction: 0, spray: 0, junction: 0 };

  return ({ speed, weightInWater, lineAngle = 0, headwind = 0 }) => {
    if (!(speed > 0 && Number.isFinite(speed + weightInWater + lineAngle + headwind))) {
      throw new RangeError(
        `Cannot build up drag as the speed must be above zero and all else finite: ${speed} m/s, ${weightInWater} N`,
      );
    }
    const onArea = density * speed * speed / 2 * area;
    const phi = departed(phiAt(speed), departures.surface);
    const reynolds = speed * chord / kinematicViscosity;
    const least = 2 * plateFriction(reynolds, transition, chordOverGrain) * form;
    const induced = phi / (Math.PI * aspect * (craft.spanEfficiency ?? 0.95));
    const own = struts.count === 0 ? none : strutDrag(struts, {
      speed,
      depth,
      density,
      kinematicViscosity,
      transitionReynolds: transition,
      roughness,
    });
    const strut: StrutDrag = {
      friction: own.friction * strutForm,
      spray: own.spray * (departures.spray ?? 1),
      junction: own.junction * (departures.junction ?? 1),
    };
    const wind = speed + headwind;
    const air = airDensity * wind * Math.abs(wind) / 2 * airArea;
    const extra = onArea / area * (craft.extraDragArea ?? 0);
    const rest = strut.friction + strut.spray + strut.junction + air + extra;

    const slope = Math.tan(lineAngle);
    const lift = liftCoefficient(
      slope * (viscous + induced),
      1 - 2 * slope * viscous * camber,
      slope * (least + viscous * camber * camber + rest / onArea) - weightInWater / onArea,
    );
    if (lift === null) return null;
    const wingFriction = onArea * least;
    const viscousLift = onArea * viscous * (lift - camber) ** 2;
    const inducedAndWave = onArea * induced * lift * lift;
    const wing = wingFriction + viscousLift + inducedAndWave;
    return {
      wingFriction,
      viscousLift,
      inducedAndWave,
      struts: strut.friction,
      spray: strut.spray,
      junction: strut.junction,
      extra,
      air,
      total: wing + rest,
      wing,
      lift: lift * onArea,
      liftCoefficient: lift,
      leastDragCoefficient: least,
      phi,
      reynolds,
    };
  };
}
