/**
 * What a wing's planform says about its drag before anything was measured: the one prior of glides and tows.
 *
 * @module
 */
import type { DragLaw } from "../model/drag-law.ts";

/** The wing and what carries it; unknown parts are `null` and are filled by a usual value. */
export interface Planform {
  /** m, tip to tip, projected. */
  readonly span: number;
  /** m2, projected. */
  readonly area: number;
  readonly strutCount: number | null;
  /** m */
  readonly strutChord: number | null;
  /** m */
  readonly strutThickness: number | null;
  /** m2, drag area of what else is under water. */
  readonly extraDragArea: number | null;
}

/** What the wing carries, in what, how deep. */
export interface PlanformTask {
  /** N: weight less buoyancy. */
  readonly lift: number;
  /** kg/m3 */
  readonly density: number;
  /** m of the wing below the surface, and so of strut under water; `null` where nobody measured it. */
  readonly depth: number | null;
}

/** Prior drag law of the whole craft, and how far to trust it. */
export interface PlanformPrior {
  /** Constants at the given lift; phi of the free surface still multiplies the last term. */
  readonly law: DragLaw;
  /** Standard uncertainty of ln of the induced share `e/a`, which fixes the shape. */
  readonly inducedUncertainty: number;
  /** m: the depth as given, or the usual one. */
  readonly depth: number;
  /** What is expected of the three constants fitted to towed points, before there are any. */
  readonly towed: TowedExpectation;
}

/**
 * What a law of three terms, fitted over a range of speeds, is expected to show; nothing is expected of its first term.
 */
export interface TowedExpectation {
  /** N: mean and standard uncertainty of the constant term `d`. */
  readonly constant: { readonly mean: number; readonly standardUncertainty: number };
  /** N m2/s2: mean and standard uncertainty of `e`. */
  readonly liftTerm: { readonly mean: number; readonly standardUncertainty: number };
}

/** Profile drag coefficient of a hand-made wing at the Reynolds numbers of foils, on projected area. */
const WING_PROFILE = 0.0135;

/** Drag coefficient of a strut's wetted length on chord times length. */
const STRUT_PROFILE = 0.0095;

/** Spray at the surface, on thickness squared. */
const SPRAY = 0.24;

/** N s2/m2: air drag of a standing, bent rider, half of 1.225 kg/m3 times 0.55 m2. */
const RIDER = 0.5 * 1.225 * 0.55;

/** Span efficiency of a wing without twist or with little. */
const SPAN_EFFICIENCY = 0.93;

/** Viscous drag due to lift: the section's own share of K. */
const VISCOUS_LIFT_DRAG = 0.0095;

/** Usual strut where none is described: one, chord in m; and usual depth of the wing in m. */
const USUAL = { count: 1, chord: 0.12, thicknessRatio: 0.12, depth: 0.4 } as const;

/** Standard uncertainty of ln(e/a): planform and depth known; depth not known. */
const UNCERTAINTY = { known: 0.3, depthUnknown: 0.45 } as const;

/**
 * Constant term of a fitted law over the lift: friction that falls with Reynolds number and camber make it lean below
 * zero, by how much varies. With -0.006 and 0.008 the intervals of `a` and `K` held the truth in 90 % of simulated tows of
 * cambered wings, with these in 96 %; drag, best lift-to-drag and its speed hardly feel the difference.
 */
const CONSTANT = { mean: -0.008, standardUncertainty: 0.012 } as const;

/** Standard uncertainty of the fitted lift term over its expectation: depth known; depth not known. */
const LIFT_TERM = { known: 0.2, depthUnknown: 0.4 } as const;

/**
 * Prior drag law of a craft from its planform.
 *
 * Two terms: everything that grows with the square of the speed (wing friction and form, struts, spray, the rider in the
 * air), and everything due to lift (induced drag, and the section's own share, which a formula with span alone forgets: it
 * is a fifth for a slender wing). A third, constant term is left to whoever fits points over a range of speeds.
 *
 * Why this one. Shape error of ln R of two foils launched up to 1.2 m/s apart, rms in %, in invented worlds without noise
 * (camber on the whole lift drag / waves, Reynolds number, section drag, struts, air / images and two-dimensional waves):
 * this prior 2.5 / 1.5 / 2.0; lift drag as 1.15 times induced drag and no rider's air 2.4 / 1.6 / 2.0; this prior without
 * the air 3.1 / 2.1 / 2.4; with a constant term of -0.6 % of the lift 2.8 / 2.5 / 2.9; friction of a clean section at its
 * own Reynolds number 3.8 / 2.6 / 2.8. It is the best where the physics is richest, and the only one of the best two that
 * holds every part of the drag. A doubt of 0.30 on ln(e/a) covers those errors: 1.0 / 0.6 / 0.8 of it on one foil under two
 * names. Depth not known: 0.4 m stands in (2.9 / 2.1 / 2.0), which beats leaving the surface out (4.2 / 4.2 / 4.4), and the
 * doubt is 0.45. Camber is inside the 0.30: the first of the three worlds exaggerates it and is still covered.
 *
 * Towed points tell the level of the drag and most of its shape by themselves. There the prior only steadies the two terms
 * that points over a short range of speeds can't tell apart: `towed` gives the constant and the lift term, each with a doubt
 * wide enough not to move an answer whose speeds were towed. Chosen on invented worlds, not by theory.
 *
 * Source: induced drag of a lifting line (any text); friction and form at Reynolds numbers of 1e5 to 1e6, strut and spray
 * coefficients: common practice.
 *
 * @param planform the wing and its struts
 * @param task lift, water, depth
 * @returns law, uncertainty, depth used
 * @throws RangeError when span, area, lift or density is not above zero
 *
 * @example
 * ```ts
 * import { planformPrior } from "lakeproof/fit/planform-prior.ts";
 *
 * const prior = planformPrior(
 *   { span: 0.95, area: 0.15, strutCount: 1, strutChord: 0.12, strutThickness: 0.0144, extraDragArea: null },
 *   { lift: 800, density: 999.1, depth: 0.4 },
 * );
 * const leastDragSpeed = (prior.law.e / prior.law.a) ** 0.25;
 * if (Math.abs(leastDragSpeed - 4.34) > 0.01) throw new Error(`unexpected ${leastDragSpeed}`);
 * ```
 */
export function planformPrior(planform: Planform, task: PlanformTask): PlanformPrior {
  const { span, area } = planform;
  const { lift, density } = task;
  if (!(span > 0 && area > 0 && lift > 0 && density > 0)) {
    throw new RangeError(
      `Cannot predict drag as span, area, lift and density must be above zero: ${span} m, ${area} m2, ${lift} N, ${density} kg/m3`,
    );
  }
  const count = planform.strutCount ?? USUAL.count;
  const chord = planform.strutChord ?? USUAL.chord;
  const thickness = planform.strutThickness ?? USUAL.thicknessRatio * chord;
  const depth = task.depth ?? USUAL.depth;
  const dragArea = WING_PROFILE * area +
    count * (STRUT_PROFILE * chord * depth + SPRAY * thickness ** 2) +
    (planform.extraDragArea ?? 0);
  const aspectRatio = span ** 2 / area;
  const liftDragFactor = 1 / (Math.PI * aspectRatio * SPAN_EFFICIENCY) + VISCOUS_LIFT_DRAG;
  const e = 2 * liftDragFactor * lift ** 2 / (density * area);
  const known = task.depth === null ? "depthUnknown" : "known";
  return {
    law: { a: density / 2 * dragArea + RIDER, d: 0, e },
    inducedUncertainty: UNCERTAINTY[known],
    depth,
    towed: {
      constant: {
        mean: CONSTANT.mean * lift,
        standardUncertainty: CONSTANT.standardUncertainty * lift,
      },
      liftTerm: { mean: e, standardUncertainty: LIFT_TERM[known] * e },
    },
  };
}
