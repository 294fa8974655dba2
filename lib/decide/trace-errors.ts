/**
 * Traces of a design as the fit takes them, and what happens to them under each error that they share.
 *
 * @module
 */
import type { Result } from "../base/quantity.ts";
import type { Design } from "../base/session.ts";
import { sharedParts } from "../check/column-uncertainty.ts";
import { planformPrior } from "../fit/planform-prior.ts";
import type { TraceData } from "../fit/trace-fit.ts";
import type { TraceRun } from "../fit/trace-motion.ts";
import type { SharedTraceError } from "../fit/trace-series.ts";
import { meanOf } from "../infer/sample.ts";
import { weightInWater } from "../model/buoyancy.ts";
import { effectiveMass } from "../model/effective-mass.ts";
import { phiOf, USUAL_THICKNESS_RATIO, wetVolumeOf } from "./glide-craft.ts";
import type { PreparedTrace, PreparedTraces } from "./trace-runs.ts";

/** A change of the inputs that all traces share; nothing stands for none. */
interface Off {
  readonly speedShare?: number;
  readonly speedFixed?: number;
  readonly dropFixed?: number;
  readonly dropShare?: number;
  /** m of a drop that conditions.csv states for many runs. */
  readonly dropStated?: number;
  readonly distanceFixed?: number;
  readonly distanceShare?: number;
  readonly mass?: number;
  readonly volumeShare?: number;
  readonly depth?: number;
  /** Share of the water that moves along. */
  readonly movingShare?: number;
}

/** Standard uncertainties of shared errors where nobody states them. Common practice, no source. */
export const USUAL_GLIDE_ERRORS = {
  speedScale: 0.01,
  speedZero: 0.02,
  volumeDunked: 0.1,
  volumeEstimated: 0.3,
  depth: 0.02,
  movingWater: 0.5,
  /** A rider lets it sink evenly, or mostly at the end: nobody sees which. */
  steepening: 0.4,
} as const;

/** Share of its drag by which a run differs from the next (trim, ripples), where the runs show no more. Assumed. */
const RUN_SHARE = 0.015;

/** A design's traces with the errors that they share. */
export interface PreparedDesignTraces {
  readonly data: TraceData;
  readonly errors: readonly SharedTraceError[];
  /** True where a depth was measured. */
  readonly depthKnown: boolean;
  /** kg/m3 */
  readonly density: number;
}

/**
 * A design's traces for the fit.
 *
 * @param prepared the session
 * @param spec the design
 * @param traces its traces, those without a reason against them
 * @param referenceMass kg that drag is told at
 * @returns data and shared errors, or why there are none
 */
export function prepareDesignTraces(
  prepared: PreparedTraces,
  spec: Design,
  traces: readonly PreparedTrace[],
  referenceMass: number,
): Result<PreparedDesignTraces> {
  const task = { prepared, spec, traces, referenceMass };
  const here = dataOf(task, {});
  if (here === null) return { ok: false, reason: "the craft floats what it carries" };
  const errors: SharedTraceError[] = [];
  for (const { name, key, off } of sharedOffs(task)) {
    const [plus, minus] = [dataOf(task, off(1)), dataOf(task, off(-1))];
    if (plus === null || minus === null) {
      return { ok: false, reason: `the doubt about ${name} is as large as a reading` };
    }
    errors.push({ name, key, shifted: [plus.data, minus.data] });
  }
  return { ok: true, ...here, errors };
}

interface Task {
  readonly prepared: PreparedTraces;
  readonly spec: Design;
  readonly traces: readonly PreparedTrace[];
  readonly referenceMass: number;
}

interface NamedOff {
  readonly name: string;
  readonly key: string | null;
  readonly off: (sign: 1 | -1) => Off;
}

function sharedOffs({ prepared, spec, traces, referenceMass }: Task): NamedOff[] {
  const { columns } = prepared;
  const speed = sharedParts(columns.trace_speed, {
    fixed: USUAL_GLIDE_ERRORS.speedZero,
    share: USUAL_GLIDE_ERRORS.speedScale,
  });
  const none = { fixed: 0, share: 0 };
  const drop = sharedParts(columns.drop, none), distance = sharedParts(columns.distance, none);
  const { carried_mass: mass } = columns;
  const weighed = sharedParts(mass, none);
  const massFixed = Math.hypot(
    mass.fixed,
    weighed.fixed,
    (mass.share + weighed.share) * referenceMass,
  );
  const depth = sharedParts(columns.depth, { fixed: USUAL_GLIDE_ERRORS.depth, share: 0 });
  const volume = spec.wetVolume === null
    ? USUAL_GLIDE_ERRORS.volumeEstimated
    : USUAL_GLIDE_ERRORS.volumeDunked;
  const one = (name: string, key: string | null, off: NamedOff["off"]): NamedOff => ({
    name,
    key,
    off,
  });
  const stated = traces.some((trace) => trace.dropStated);
  return [
    one("speed scale", "speed scale", (sign) => ({ speedShare: sign * speed.share })),
    one("speed zero", "speed zero", (sign) => ({ speedFixed: sign * speed.fixed })),
    one("drop", "drop", (sign) => ({ dropFixed: sign * drop.fixed, dropShare: sign * drop.share })),
    ...(stated
      ? [one("drop of conditions.csv", "drop of conditions.csv", (sign) => ({
        dropStated: sign * (statedDropUncertainty(prepared) ?? columns.drop.fixed),
      }))]
      : []),
    one("distance", "distance", (sign) => ({
      distanceFixed: sign * distance.fixed,
      distanceShare: sign * distance.share,
    })),
    one("carried mass", "carried mass", (sign) => ({ mass: sign * massFixed })),
    one("water that moves along", "water that moves along", (sign) => ({
      movingShare: sign * USUAL_GLIDE_ERRORS.movingWater,
    })),
    one("wet volume", null, (sign) => ({ volumeShare: sign * volume })),
    one("depth", null, (sign) => ({ depth: sign * depth.fixed })),
  ];
}

function statedDropUncertainty({ session }: PreparedTraces): number | null {
  return session.conditions.find((one) => one.quantity === "drop")?.uncertainty ?? null;
}

function dataOf(
  { prepared, spec, traces, referenceMass }: Task,
  off: Off,
): Omit<PreparedDesignTraces, "errors"> | null {
  const { columns } = prepared;
  const density = meanOf(traces.map((one) => one.medium.density));
  const gravity = meanOf(traces.map((one) => one.medium.gravity));
  const wetVolume = wetVolumeOf(spec) * (1 - (off.volumeShare ?? 0));
  const weightOf = (whole: number, medium: { density: number; gravity: number }) => {
    const mass = whole - (off.mass ?? 0);
    return mass > 0 ? weightInWater({ mass, wetVolume, ...medium }) : 0;
  };
  const lift = weightOf(referenceMass, { density, gravity });
  if (!(lift > 0)) return null;
  const runs = traces.map((one): TraceRun | null => {
    const { density, gravity } = one.medium;
    const weight = weightOf(one.mass, { density, gravity });
    const mass = one.mass - (off.mass ?? 0);
    const distance = one.distance * (1 - (off.distanceShare ?? 0)) - (off.distanceFixed ?? 0);
    if (!(weight > 0 && distance > 0)) return null;
    const drop = one.drop * (1 - (off.dropShare ?? 0)) - (off.dropFixed ?? 0) -
      (one.dropStated ? off.dropStated ?? 0 : 0);
    const moving = effectiveMass({
      mass,
      density,
      span: spec.span,
      area: spec.area,
      thicknessRatio: spec.thicknessRatio ?? USUAL_THICKNESS_RATIO,
    }) - mass;
    const sinkThrust = weight * drop / distance;
    const { glide } = one;
    const uncertainty = (column: "drop" | "distance", value: number) =>
      glide.own[column] ?? Math.hypot(columns[column].fixed, columns[column].share * value);
    const uDrop = one.dropStated ? 0 : uncertainty("drop", one.drop);
    const uSink = weight / one.distance *
      Math.hypot(uDrop, one.drop / one.distance * uncertainty("distance", one.distance));
    return {
      times: one.times,
      speeds: one.speeds.map((v) => v * (1 - (off.speedShare ?? 0)) - (off.speedFixed ?? 0)),
      effectiveMass: mass + moving * (1 - (off.movingShare ?? 0)),
      weight,
      sinkThrust,
      offsetUncertainty: Math.hypot(uSink, RUN_SHARE * meanDrag(one, mass + moving, sinkThrust)),
    };
  });
  const kept = runs.filter((one) => one !== null);
  if (kept.length < runs.length || !kept.every((one) => one.speeds.every((v) => v > 0))) {
    return null;
  }
  const depths = traces.flatMap((one) => one.depth === null ? [] : [one.depth]);
  const depthKnown = depths.length > 0;
  const depth = depthKnown ? Math.max(0.02, meanOf(depths) - (off.depth ?? 0)) : null;
  const prior = planformPrior(spec, { lift, density, depth });
  return {
    data: {
      runs: kept,
      craft: { lift, phi: phiOf(spec.span, prior.depth, gravity), expected: prior.towed },
      steepeningUncertainty: USUAL_GLIDE_ERRORS.steepening,
    },
    depthKnown,
    density,
  };
}

/** N: what slowed a run, from the first and the last quarter of its samples. */
function meanDrag({ times, speeds }: PreparedTrace, mass: number, sinkThrust: number): number {
  const part = Math.max(1, Math.floor(times.length / 4));
  const mean = (values: readonly number[]) => meanOf(values);
  const slowed = (mean(speeds.slice(0, part)) - mean(speeds.slice(-part))) /
    (mean(times.slice(-part)) - mean(times.slice(0, part)));
  return Math.max(0, mass * slowed + sinkThrust);
}
