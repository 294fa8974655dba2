/**
 * The answer on towed designs as other programs read it: keys in a fixed order, numbers to 12 significant digits.
 *
 * @module
 */
import type {
  DesignTow,
  SpeedParts,
  TowAnswer,
  TowComparison,
  TowPointUse,
} from "../base/tow-answer.ts";
import { currentObject, windowObject } from "./tow-instruments-json.ts";
import { drawnObject, liftCurveObject, robustObject } from "./tow-views-json.ts";
import { headObject, type Plain, quantityObject, rounded } from "./plain-answer.ts";
import { agreementObject, fromTracesObject, lawObject } from "./tow-traces-json.ts";

function point(one: TowPointUse): Plain {
  return {
    point: one.point,
    row: one.row,
    used: one.used,
    reason: one.reason,
    speed: one.speed,
    drag: one.drag,
    lift: one.lift,
    liftCoefficient: one.liftCoefficient,
    dragCoefficient: one.dragCoefficient,
    coefficientCovariance: one.coefficientCovariance,
    residual: one.residual,
    window: windowObject(one.window),
  };
}

function parts({ at, speed, total, parts, expectedOfWing: wing }: SpeedParts): Plain {
  return {
    at,
    speed,
    total: quantityObject(total),
    parts: parts.map(({ part, how, source, drag }) => ({
      part,
      how,
      source,
      drag: quantityObject(drag),
    })),
    expectedOfWing: wing === null ? null : {
      frictionAndForm: quantityObject(wing.frictionAndForm),
      viscousLift: quantityObject(wing.viscousLift),
      inducedAndWave: quantityObject(wing.inducedAndWave),
      excess: quantityObject(wing.excess),
    },
  };
}

function design(one: DesignTow): Plain {
  const { law } = one;
  return {
    design: one.design,
    session: one.session,
    law: law === null ? null : lawObject(law),
    bestLiftToDrag: quantityObject(one.bestLiftToDrag),
    speedOfBestLiftToDrag: quantityObject(one.speedOfBestLiftToDrag),
    leastPowerSpeed: quantityObject(one.leastPowerSpeed),
    dragAt: one.dragAt.map(({ speed, drag }) => ({ speed, drag: quantityObject(drag) })),
    parts: one.parts.map(parts),
    wingLiftToDrag: one.wingLiftToDrag.map(({ speed, liftToDrag }) => ({
      speed,
      liftToDrag: quantityObject(liftToDrag),
    })),
    points: one.points.map(point),
    uncertaintyShares: one.uncertaintyShares.map(({ source, share }) => ({ source, share })),
    liftCurve: liftCurveObject(one.liftCurve),
    fromTraces: fromTracesObject(one.fromTraces),
    robust: robustObject(one.robust),
    byDrawing: drawnObject(one.byDrawing),
  };
}

function comparison(one: TowComparison): Plain {
  const { jointTest } = one;
  return {
    baseline: one.baseline,
    candidate: one.candidate,
    baselineSession: one.baselineSession,
    candidateSession: one.candidateSession,
    bestLiftToDragRatio: quantityObject(one.bestLiftToDragRatio),
    candidateLessDrag: one.candidateLessDrag,
    candidateMoreDrag: one.candidateMoreDrag,
    jointTest: jointTest === null ? null : {
      f: jointTest.f,
      numerator: jointTest.numerator,
      degreesOfFreedom: jointTest.degreesOfFreedom,
      pValue: jointTest.pValue,
    },
    family: one.family,
  };
}

/**
 * A tow answer as a plain object with keys in the contract's order and numbers rounded.
 *
 * @param answer as decided
 * @param versions software that made it, by name; what the answer already holds is kept
 * @returns a new object that `JSON.stringify` turns into the same bytes each time
 * @throws RangeError when a number is not finite, with its path
 * @example
 * ```ts
 * import { compareTows } from "lakeproof/decide/compare-tows.ts";
 * import { readSession } from "lakeproof/read/read-session.ts";
 * import { towAnswerObject } from "lakeproof/show/tow-json.ts";
 * const answer = towAnswerObject(compareTows(readSession("lake", new Map())).answer);
 * if (Object.keys(answer)[1] !== "question") throw new Error("order of keys");
 * ```
 */
export function towAnswerObject(
  answer: TowAnswer,
  versions: Readonly<Record<string, string>> = {},
): TowAnswer {
  const ordered: Plain = {
    ...headObject(answer, versions),
    designs: answer.designs.map(design),
    comparisons: answer.comparisons.map(comparison),
    current: answer.current.map(currentObject),
    agreement: answer.agreement.map(agreementObject),
  };
  return rounded(ordered, "") as unknown as TowAnswer;
}
