/**
 * One design's own result: distance, glide ratio and end speed from the common launch, and its curve over launch speeds.
 *
 * @module
 */
import type { CommonLaunch, DesignGlide } from "../base/answers.ts";
import type { Quantity } from "../base/quantity.ts";
import { fitGlideSeries, type GlideSeries, logDistance } from "../fit/glide-series.ts";
import { endFactor } from "../fit/glide-sums.ts";
import { varianceOf } from "../infer/sample.ts";
import { studentTQuantile } from "../numeric/distributions.ts";
import type { CurvePoint } from "./glide-evidence.ts";
import { type DesignRuns, LEAST_MARGIN, type PairSetting, targetOf } from "./glide-pair.ts";
import { quantityFromLog } from "./log-quantity.ts";

/** Points of a design's curve. */
const CURVE_POINTS = 31;

/** m/s that the curve goes beyond the launches flown. */
const BEYOND = 0.1;

/** Variance of ln distance and ln glide ratio from errors that all runs share; `null` where one is too large to tell. */
function commonVariances(design: DesignRuns, setting: PairSetting, end: number | null) {
  let distance = 0, glideRatio = 0;
  const target = targetOf(design, setting.launch, end);
  for (const shift of setting.shifts) {
    const [up, down] = ([1, -1] as const).map((sign) => {
      const runs = shift.apply(design.runs, sign);
      const moved = runs === null ? null : logDistance(runs, design.reference, target);
      return moved?.ok ? moved : null;
    });
    if (up == null || down == null) return null;
    distance += ((up.logDistance - down.logDistance) / 2) ** 2;
    glideRatio += ((up.logGlideRatio - down.logGlideRatio) / 2) ** 2;
  }
  return { distance, glideRatio };
}

/** Variance from scatter with its floor, with what else is known without limit, and the degrees of freedom of the sum. */
function total(scatter: number | null, fixed: number | null, count: number) {
  if (scatter === null || fixed === null) return { variance: null, degreesOfFreedom: null };
  const variance = scatter + fixed;
  if (!(variance > 0)) return { variance: null, degreesOfFreedom: null };
  return { variance, degreesOfFreedom: variance ** 2 / (scatter ** 2 / (count - 1)) };
}

/**
 * The series of one design at the common launch.
 *
 * @param design with at least one usable run
 * @param launch the common launch
 * @param end m/s; `null` for the design's own end speed
 * @returns series, or `null` where the runs give none
 */
export function designSeries(
  design: DesignRuns,
  launch: CommonLaunch,
  end: number | null,
): GlideSeries | null {
  const series = fitGlideSeries(
    design.runs.map((one) => one.run!),
    design.reference,
    targetOf(design, launch, end),
  );
  return series.ok ? series : null;
}

/**
 * A design's own numbers in the answer.
 *
 * @param design with at least one usable run
 * @param series at the common launch; `null` where there is none
 * @param setting launch and shared errors
 * @param end m/s; `null` for the design's own end speed
 * @returns the design's entry in the answer
 */
export function designGlide(
  design: DesignRuns,
  series: GlideSeries | null,
  setting: PairSetting,
  end: number | null,
): DesignGlide {
  const runsUsed = design.runs.length;
  const endSpeed = ownEndSpeed(design);
  if (series === null) {
    return { design: design.design, glideRatio: null, distance: null, endSpeed, runsUsed };
  }
  const common = commonVariances(design, setting, end);
  const glideRatioScatter = series.count < 2 ? null : Math.max(
    varianceOf(series.glideRatioPseudoValues) / series.count,
    series.glideRatioMeasurementVariance / 4,
  );
  return {
    design: design.design,
    distance: quantityFromLog({
      log: series.logDistance,
      ...total(
        series.variance,
        common === null ? null : series.shapeSensitivity ** 2 + common.distance,
        series.count,
      ),
      unit: "m",
    }),
    glideRatio: quantityFromLog({
      log: series.logDistance - Math.log(series.energyHeight),
      ...total(
        glideRatioScatter,
        common === null ? null : series.glideRatioShapeSensitivity ** 2 + common.glideRatio,
        series.count,
      ),
      unit: "1",
    }),
    endSpeed,
    runsUsed,
  };
}

/** Mean end speed of the stalled runs, at the mass to compare at; `null` where none stalled. */
function ownEndSpeed(design: DesignRuns): Quantity | null {
  const stalled = design.runs.filter((one) => one.run!.inEnd).map((one) => one.run!);
  if (stalled.length === 0) return null;
  const speeds = stalled.map((run) => run.endSpeed * endFactor(run, design.reference));
  const n = speeds.length;
  const value = speeds.reduce((sum, speed) => sum + speed, 0) / n;
  const spread = n < 2 ? null : varianceOf(speeds);
  const measured = stalled.reduce((sum, run) => sum + run.uncertainty.endSpeed ** 2, 0) / n ** 2;
  const error = spread === null ? null : Math.sqrt(Math.max(spread / n, measured / 4));
  const half = error === null ? null : studentTQuantile(0.975, n - 1) * error;
  return {
    value,
    standardUncertainty: error,
    degreesOfFreedom: error === null ? null : n - 1,
    low: half === null ? null : value - half,
    high: half === null ? null : value + half,
    level: 0.95,
    kind: "interval",
    unit: "m/s",
  };
}

/**
 * Distance against launch speed at the common height and mass, with a pointwise 95 % band.
 *
 * Spans the launches flown by this design and the common launch, a little beyond on both sides; starts no nearer than
 * 0.3 m/s above the end speed.
 *
 * @param design with at least two usable runs, else the curve is empty
 * @param setting launch and shared errors
 * @param end m/s; `null` for the design's own end speed
 * @returns points by rising launch speed
 */
export function designCurve(
  design: DesignRuns,
  setting: PairSetting,
  end: number | null,
): CurvePoint[] {
  const series = designSeries(design, setting.launch, end);
  if (series === null) return [];
  const speeds = [...design.runs.map((one) => one.run!.launchSpeed), setting.launch.speed];
  const from = Math.max(Math.min(...speeds) - BEYOND, series.endSpeed + LEAST_MARGIN);
  const to = Math.max(...speeds) + BEYOND;
  if (!(to > from)) return [];
  return Array.from({ length: CURVE_POINTS }, (_, i) => from + (to - from) * i / (CURVE_POINTS - 1))
    .flatMap((speed) => {
      const there = { ...setting, launch: { ...setting.launch, speed } };
      const point = designSeries(design, there.launch, end);
      if (point === null) return [];
      const { distance } = designGlide(design, point, there, end);
      if (distance === null || distance.low === null || distance.high === null) return [];
      return [{
        launchSpeed: speed,
        distance: distance.value,
        low: distance.low,
        high: distance.high,
      }];
    });
}
