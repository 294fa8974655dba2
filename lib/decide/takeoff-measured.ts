/**
 * Predicted drag beside the measured: what tows and glides of the same designs showed, and the excess.
 *
 * @module
 */
import { DataError, UsageError } from "../base/errors.ts";
import type { Quantity } from "../base/quantity.ts";
import type { Design, Session } from "../base/session.ts";
import type { MeasuredDrag, MeasuredStall } from "../base/takeoff-answer.ts";
import { median } from "../check/rule.ts";
import { NORMAL_95, takeoffBand } from "../fit/takeoff-band.ts";
import type { Doubt } from "../fit/takeoff-doubts.ts";
import { decayByQuadrature } from "../model/decay-by-quadrature.ts";
import { flightInWater, type SteadyCraft } from "../model/steady-craft.ts";
import { slowestSpeed } from "../model/steady-speeds.ts";
import { compareGlides } from "./compare-glides.ts";
import { compareTows } from "./compare-tows.ts";
import type { GlideEvidence } from "./glide-evidence.ts";
import { quantityFromLog } from "./log-quantity.ts";
import { isSameWing } from "./same-wing.ts";
import type { PreparedTakeoff } from "./takeoff-craft.ts";

/** What one session measured of its designs, by design. */
export interface MeasuredSession {
  readonly drags: (prepared: PreparedTakeoff) => readonly MeasuredDrag[];
  readonly stalls: (prepared: PreparedTakeoff) => readonly MeasuredStall[];
}

/** Inputs that a measured drag does not hang on: it was told at a lift, not at a mass. */
const TOLD_AT_LIFT: readonly (keyof SteadyCraft)[] = ["mass", "wingVolume"];

/** The craft carrying a given lift on a level line, in still air. */
function carrying(craft: SteadyCraft, lift: number, depth: number | null): SteadyCraft {
  const level = {
    ...craft,
    lineAngle: 0,
    headwind: 0,
    runningDepth: depth === null ? craft.runningDepth : Math.min(depth, craft.takeoffDepth),
  };
  const { buoyancy } = flightInWater(level);
  return { ...level, mass: (lift + buoyancy) / craft.gravity };
}

function predictedAt(craft: SteadyCraft, doubts: readonly Doubt[], speeds: readonly number[]) {
  const own = doubts.filter((one) => !TOLD_AT_LIFT.includes(one.key));
  const { curve, logUncertainty } = takeoffBand(craft, own, speeds);
  return speeds.map((_, i) => ({ drag: curve.total[i]!, share: logUncertainty[i]! }));
}

function difference(measured: Quantity, predicted: Quantity): Quantity {
  const value = measured.value - predicted.value;
  const u = Math.hypot(measured.standardUncertainty ?? 0, predicted.standardUncertainty ?? 0);
  return {
    value,
    standardUncertainty: u,
    degreesOfFreedom: null,
    low: value - NORMAL_95 * u,
    high: value + NORMAL_95 * u,
    level: 0.95,
    kind: "interval",
    unit: "N",
  };
}

function beside(
  measured: Quantity,
  { drag, share }: { readonly drag: number; readonly share: number },
): Pick<MeasuredDrag, "measured" | "predicted" | "excess"> {
  const predicted = quantityFromLog({
    log: Math.log(drag),
    variance: share ** 2,
    degreesOfFreedom: null,
    unit: "N",
  });
  return { measured, predicted, excess: difference(measured, predicted) };
}

/** What a reading of the evidence gives; nothing where the tables can't carry it. */
function orNothing<T>(read: () => T): T | null {
  try {
    return read();
  } catch (error) {
    if (error instanceof DataError || error instanceof UsageError) return null;
    throw error;
  }
}

function towed(session: Session): MeasuredSession["drags"] {
  const evidence = session.tow.length === 0 ? null : orNothing(() => compareTows(session));
  return ({ spec, craft, doubts }) => {
    const own = evidence?.answer.designs.find((one) => one.design === spec.design);
    if (own === undefined || own.law === null || !isSameWing(session, spec)) return [];
    const depth = median(
      session.tow.filter((one) => one.design === spec.design).flatMap((one) => one.depth ?? []),
    );
    const { lift } = own.law;
    const level = carrying(craft, lift, depth);
    const predicted = predictedAt(level, doubts, own.dragAt.map((one) => one.speed));
    return own.dragAt.map(({ speed, drag }, i) => ({
      session: session.name,
      from: "tow",
      speed,
      lift,
      ...beside(drag, predicted[i]!),
    }));
  };
}

/** Mean drag over a glide's speeds: energy over distance, the height spent evenly with the speed's energy. */
function meanDrag(craft: SteadyCraft, fast: number, slow: number): number {
  const flight = flightInWater(craft);
  const { distance } = decayByQuadrature((speed) => flight.at(speed)!.total, {
    launchSpeed: fast,
    endSpeed: slow,
    effectiveMass: 1,
  }, 1e-8);
  return (fast * fast - slow * slow) / 2 / distance;
}

/** m: middle of the depths that a design's glides were read at. */
function glideDepth(session: Session, spec: Design): number | null {
  return median(
    session.glides.filter((one) => one.design === spec.design).flatMap((one) => one.depth ?? []),
  );
}

function glided(session: Session, evidence: GlideEvidence | null): MeasuredSession["drags"] {
  return ({ spec, craft, doubts }) => {
    const own = evidence?.answer.designs.find((one) => one.design === spec.design);
    const launch = evidence?.answer.launch ?? null;
    if (own === undefined || launch === null || !isSameWing(session, spec)) return [];
    const { glideRatio, endSpeed } = own;
    if (glideRatio?.standardUncertainty == null || endSpeed === null) return [];
    if (!(launch.speed > endSpeed.value)) return [];
    const loaded = { ...craft, mass: launch.mass };
    const lift = flightInWater(loaded).load;
    if (!(lift > 0)) return [];
    const level = carrying(loaded, lift, glideDepth(session, spec));
    const speed = (launch.speed + endSpeed.value) / 2;
    const [predicted] = predictedAt(level, doubts, [speed]);
    const measured = quantityFromLog({
      log: Math.log(lift / glideRatio.value),
      variance: (glideRatio.standardUncertainty / glideRatio.value) ** 2,
      degreesOfFreedom: glideRatio.degreesOfFreedom,
      unit: "N",
    });
    const drag = meanDrag(level, launch.speed, endSpeed.value);
    return [{
      session: session.name,
      from: "glides",
      speed,
      lift,
      ...beside(measured, { drag, share: predicted!.share }),
    }];
  };
}

/** Largest lift coefficient that a design's stalled glides show. */
function stalled(session: Session, evidence: GlideEvidence | null): MeasuredSession["stalls"] {
  return ({ spec, craft, doubts }) => {
    const own = evidence?.answer.designs.find((one) => one.design === spec.design);
    const launch = evidence?.answer.launch ?? null;
    const ends = session.glides.some((one) =>
      one.design === spec.design && one.leaveOut === null && one.ended === "stalled"
    );
    if (own?.endSpeed?.standardUncertainty == null || launch === null) return [];
    if (!ends || !isSameWing(session, spec)) return [];
    const loaded = { ...craft, mass: launch.mass, lineAngle: 0 };
    const depth = glideDepth(session, spec) ?? craft.runningDepth;
    const flight = flightInWater(loaded, depth);
    const slowest = slowestSpeed(flight);
    if (slowest.kind !== "speed") return [];
    const { value, standardUncertainty, degreesOfFreedom } = own.endSpeed;
    const power = 2 + craft.liftExponent;
    const share = (key: "mass" | "area") =>
      doubts.find((one) => one.key === key)?.standardUncertainty ?? 0;
    const parts = [
      power * standardUncertainty! / value,
      share("mass") * flight.weight / flight.load,
      share("area"),
    ];
    return [{
      session: session.name,
      endSpeed: own.endSpeed,
      predicted: slowest.speed,
      largestLiftCoefficient: quantityFromLog({
        log: Math.log(craft.largestLiftCoefficient) + power * Math.log(slowest.speed / value),
        variance: parts.reduce((sum, one) => sum + one * one, 0),
        degreesOfFreedom,
        unit: "1",
      }),
    }];
  };
}

/**
 * What sessions measured, made ready to be asked design by design.
 *
 * Tows: each speed towed, from the design's fitted law at its own lift. Glides: mean drag of the glide from the common launch to the
 * design's own end, beside the mean of the predicted drag over the same speeds. Predicted at the lift, depth and planform of the
 * measurement, so that the difference is what the build-up does not hold: finish, junctions, what hangs below, and its own doubts.
 *
 * Glides that ended in a stall also tell the largest lift coefficient: the one that would make the predicted stall speed theirs.
 *
 * @param session with tows or glides
 * @returns functions from a design made ready to its measured drags and stalls; none where the tables carry no law
 *
 * @example
 * ```ts
 * import { measuredIn } from "lakeproof/decide/takeoff-measured.ts";
 * import { readSession } from "lakeproof/read/read-session.ts";
 * if (typeof measuredIn(readSession("lake", new Map())).drags !== "function") throw new Error("a function");
 * ```
 */
export function measuredIn(session: Session): MeasuredSession {
  const glides = session.glides.length === 0 ? null : orNothing(() => compareGlides([session]));
  const parts = [towed(session), glided(session, glides)];
  return {
    drags: (prepared) => parts.flatMap((one) => one(prepared)),
    stalls: stalled(session, glides),
  };
}
