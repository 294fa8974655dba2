/**
 * Mean and drift of a signal over a window, with what its own scatter leaves open.
 *
 * @module
 */
import { correlationSteps } from "./correlation-time.ts";
import { checkSample, meanOf } from "./sample.ts";

/** One sample of a signal. */
export interface Sample {
  /** s */
  readonly time: number;
  readonly value: number;
}

/** What a window tells; in the unit of the signal where nothing else stands. */
export interface WindowMean {
  readonly samples: number;
  /** s from the first to the last sample, and a step more. */
  readonly duration: number;
  readonly mean: number;
  /** Of the mean. */
  readonly standardUncertainty: number;
  /** Unit of the signal a second. */
  readonly slope: number;
  readonly slopeUncertainty: number;
  /** About the straight line. */
  readonly standardDeviation: number;
  /** s */
  readonly correlationTime: number;
}

/**
 * Mean and slope of evenly spaced samples.
 *
 * `u = s/sqrt(T/(2 tau))`: neighbouring samples tell nearly the same, so that a window of length T holds only T/(2 tau)
 * independent ones. s is the scatter about the straight line, for degrees of freedom that the memory of the signal leaves.
 * Uncertainties stand for the scatter inside the window; what differs from window to window comes on top.
 *
 * Source: Priestley, Spectral Analysis and Time Series, 1981, section 5.3, from memory.
 *
 * @param samples three or more, in the order of time
 * @returns mean, slope, and their standard uncertainties
 * @throws RangeError when there are fewer than three, a number is not finite, or time does not rise
 *
 * @example A steady speed
 * ```ts
 * import { windowMean } from "lakeproof/infer/window-mean.ts";
 * const speeds = [4.1, 3.9, 4.05, 3.95, 4.1, 3.9, 4, 4.05, 3.95, 4, 4.1, 3.9];
 * const found = windowMean(speeds.map((value, i) => ({ time: 0.5 * i, value })));
 * if (Math.abs(found.mean - 4) > 1e-12 || found.duration !== 6) throw new Error(`${found.mean}`);
 * if (!(found.standardUncertainty > 0.015 && found.standardUncertainty < 0.04)) throw new Error();
 * ```
 */
export function windowMean(samples: readonly Sample[]): WindowMean {
  const times = samples.map((one) => one.time);
  const values = samples.map((one) => one.value);
  checkSample(values, 3, "samples");
  checkSample(times, 3, "times");
  if (times.some((time, i) => i > 0 && !(time > times[i - 1]!))) {
    throw new RangeError("Cannot average a window as its time must rise from sample to sample");
  }
  const n = samples.length;
  const [middle, mean] = [meanOf(times), meanOf(values)];
  let [square, product] = [0, 0];
  for (let i = 0; i < n; i++) {
    square += (times[i]! - middle) ** 2;
    product += (times[i]! - middle) * (values[i]! - mean);
  }
  const slope = product / square;
  const residuals = values.map((value, i) => value - mean - slope * (times[i]! - middle));
  const steps = correlationSteps(residuals);
  const alike = 2 * steps;
  const sum = residuals.reduce((total, one) => total + one * one, 0);
  const variance = sum / Math.max(n - 2 * alike, n / 3);
  const step = (times[n - 1]! - times[0]!) / (n - 1);
  return {
    samples: n,
    duration: n * step,
    mean,
    standardUncertainty: Math.sqrt(variance * alike / n),
    slope,
    slopeUncertainty: Math.sqrt(variance * alike / square),
    standardDeviation: Math.sqrt(variance),
    correlationTime: steps * step,
  };
}
