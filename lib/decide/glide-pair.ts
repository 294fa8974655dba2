/**
 * Two designs' runs set against each other from one launch: series, contrast, and what forbids one.
 *
 * @module
 */
import type { Finding } from "../base/finding.ts";
import type { CommonLaunch } from "../base/answers.ts";
import type { Result } from "../base/quantity.ts";
import type { Design } from "../base/session.ts";
import type { GlidingCraft } from "../fit/gliding-craft.ts";
import type { GlideRun, GlideTarget } from "../fit/glide-run.ts";
import { fitGlideSeries, type GlideSeries } from "../fit/glide-series.ts";
import { contrastSeries, type SeriesContrast } from "../fit/series-contrast.ts";
import { meanOf } from "../infer/sample.ts";
import type { CommonShift } from "./common-errors.ts";
import type { PreparedRun } from "./glide-runs.ts";

/** One design with its usable runs and its craft at the mass to compare at. */
export interface DesignRuns {
  readonly design: string;
  /** Place in designs.csv, from 1. */
  readonly place: number;
  readonly spec: Design;
  /** Runs that count; each has a `run`. */
  readonly runs: readonly PreparedRun[];
  readonly reference: GlidingCraft;
  /** Standard uncertainty of ln of the induced share. */
  readonly shapeUncertainty: number;
  /** m/s2 */
  readonly gravity: number;
}

/** Launch and shared errors that every pair of one answer has in common. */
export interface PairSetting {
  readonly launch: CommonLaunch;
  readonly shifts: readonly CommonShift[];
  /** True where runs of different sessions may bear the same name. */
  readonly severalSessions: boolean;
  /** Errors in the tables that a comparison rests on: while there is one, nothing is compared. */
  readonly faults: readonly Finding[];
}

/** What a pair came to. */
export interface PairResult {
  readonly end: "own" | "common";
  readonly baseline: GlideSeries;
  readonly candidate: GlideSeries;
  readonly logRatio: number;
  /** `null` where no scatter can be told. */
  readonly contrast: SeriesContrast | null;
}

/** m/s that the launch must lie above an end speed, so that there is a glide to speak of. */
export const LEAST_MARGIN = 0.3;

/** m/s that a common end speed stays below the launch. */
const COMMON_MARGIN = 0.2;

/**
 * Runs that tell a design's own end speed.
 *
 * @param design with its usable runs
 * @returns how many of them stalled
 */
export function stalledCount(design: DesignRuns): number {
  return design.runs.filter((one) => one.run!.inEnd).length;
}

/**
 * The common end speed of several designs: the highest of their mean end speeds, a little below the launch at most.
 *
 * @param designs with runs whose end speed is known
 * @param launchSpeed m/s
 * @returns m/s
 */
export function commonEnd(designs: readonly DesignRuns[], launchSpeed: number): number {
  return Math.min(Math.max(...designs.map(meanEnd)), launchSpeed - COMMON_MARGIN);
}

/**
 * Mean of the end speeds read, however the runs ended, m/s.
 *
 * @param design with at least one usable run
 * @returns m/s
 */
export function meanEnd(design: DesignRuns): number {
  return meanOf(design.runs.map((one) => one.run!.endSpeed));
}

/**
 * Target of a design at a launch.
 *
 * @param design with its usable runs
 * @param launch the common one
 * @param end m/s; `null` for the design's own end speed
 * @returns what its runs are moved to
 */
export function targetOf(
  design: DesignRuns,
  launch: CommonLaunch,
  end: number | null,
): GlideTarget {
  return {
    speed: launch.speed,
    drop: launch.drop,
    end,
    gravity: design.gravity,
    shapeUncertainty: design.shapeUncertainty,
  };
}

/**
 * Whether no block holds runs of both.
 *
 * @param baseline with its usable runs
 * @param candidate with its usable runs
 * @returns true when nothing but the design's own day or rider could tell them apart
 */
export function flownApart(baseline: DesignRuns, candidate: DesignRuns): boolean {
  const blocks = new Set(baseline.runs.map((one) => one.block));
  return !candidate.runs.some((one) => blocks.has(one.block));
}

/**
 * Compares two designs from one launch.
 *
 * @param baseline with at least one usable run
 * @param candidate with at least one usable run
 * @param setting launch and shared errors
 * @returns series and contrast, or the reason why there are none
 */
export function comparePair(
  baseline: DesignRuns,
  candidate: DesignRuns,
  setting: PairSetting,
): Result<PairResult> {
  const { launch, shifts } = setting;
  const own = stalledCount(baseline) >= 2 && stalledCount(candidate) >= 2;
  const end = own ? null : commonEnd([baseline, candidate], launch.speed);
  const fit = (design: DesignRuns, runs: readonly GlideRun[]) =>
    fitGlideSeries(runs, design.reference, targetOf(design, launch, end));
  const plain = (design: DesignRuns) => design.runs.map((one) => one.run!);

  const first = fit(baseline, plain(baseline));
  if (!first.ok) return { ok: false, reason: `${baseline.design}: ${first.reason}` };
  const second = fit(candidate, plain(candidate));
  if (!second.ok) return { ok: false, reason: `${candidate.design}: ${second.reason}` };

  const blocks = {
    baseline: baseline.runs.map((one) => one.block),
    candidate: candidate.runs.map((one) => one.block),
  };
  const contrast = (a: GlideSeries, b: GlideSeries, commonVariance: number) =>
    contrastSeries({ baseline: a, candidate: b, commonVariance, blocks });

  let commonVariance = 0;
  for (const shift of shifts) {
    const ends: number[] = [];
    for (const sign of [1, -1] as const) {
      const [moved, other] = [baseline, candidate].map((one) => shift.apply(one.runs, sign));
      const a = moved == null ? null : fit(baseline, moved);
      const b = other == null ? null : fit(candidate, other);
      if (a === null || b === null || !a.ok || !b.ok) {
        return { ok: false, reason: `the shared error of ${shift.name} is too large to compare` };
      }
      ends.push(contrast(a, b, 0)?.logRatio ?? b.logDistance - a.logDistance);
    }
    commonVariance += ((ends[0]! - ends[1]!) / 2) ** 2;
  }
  const made = contrast(first, second, commonVariance);
  return {
    ok: true,
    end: own ? "own" : "common",
    baseline: first,
    candidate: second,
    logRatio: made?.logRatio ?? second.logDistance - first.logDistance,
    contrast: made,
  };
}
