/**
 * The drag law of one glide from its speeds alone: plain numbers in, plain numbers out.
 *
 * @module
 */
import type { Result } from "../base/quantity.ts";
import type { DragLaw } from "../model/drag-law.ts";
import { mapThree } from "./symmetric-three.ts";
import { fitTraces } from "./trace-fit.ts";

/** What glides. */
export interface DecayTraceCraft {
  /** kg, carried mass plus the water that moves along. */
  readonly effectiveMass: number;
  /** N of thrust that a steady sink gives; 0 for level. */
  readonly sinkThrust?: number;
  /** Free-surface factor by speed in m/s; 1 unless given. */
  readonly phi?: (speed: number) => number;
}

/** A law with its launch speed, as least squares gives them. */
export interface DecayTraceFit extends DragLaw {
  /** m/s at the first sample. */
  readonly launchSpeed: number;
  /** Of a, d, e, from the noise of the samples. */
  readonly covariance: readonly (readonly number[])[];
  /** m/s */
  readonly noise: number;
  /** s in which the noise's correlation falls to 1/e; 0 for independent samples. */
  readonly memory: number;
  /** m/s, one a sample. */
  readonly fitted: readonly number[];
}

/**
 * Fits `a v^2 + d + e phi/v^2` to the speeds of one glide, with nothing known beforehand.
 *
 * For a look at one run, and to compare with other programs: of one run alone the three constants can hardly be told apart.
 * Answers take all runs of a design and lean on its planform (`fitTraces`).
 *
 * @param times s, rising
 * @param speeds m/s, one a time
 * @param craft what glides
 * @param options `independent`: samples share no noise, plain least squares; else their memory is found
 * @returns constants in SI with launch speed and noise, or why there are none
 *
 * @example The closed-form glide of 4.752128539 s from 9 to 5 m/s fits its own law
 * ```ts
 * import { fitDecayTrace } from "lakeproof/fit/decay-trace.ts";
 * import { decay } from "lakeproof/model/decay.ts";
 * const law = { a: 0.6, d: 10, e: 2000 };
 * const speeds = Array.from({ length: 41 }, (_, i) => 9 - i / 10);
 * const times = speeds.map((endSpeed) =>
 *   decay(law, { launchSpeed: 9, endSpeed, effectiveMass: 100 }).duration
 * );
 * const fit = fitDecayTrace(times, speeds, { effectiveMass: 100 }, { independent: true });
 * if (!fit.ok || Math.abs(fit.a / law.a - 1) > 1e-3) throw new Error(JSON.stringify(fit));
 * ```
 */
export function fitDecayTrace(
  times: readonly number[],
  speeds: readonly number[],
  { effectiveMass, sinkThrust = 0, phi = () => 1 }: DecayTraceCraft,
  { independent = false }: { readonly independent?: boolean } = {},
): Result<DecayTraceFit> {
  const run = { times, speeds, effectiveMass, weight: 1, sinkThrust, offsetUncertainty: 0 };
  const craft = { lift: 1, phi, expected: null };
  const fit = fitTraces({ runs: [run], craft }, { white: independent });
  if (!fit.ok) return fit;
  const { referenceSpeed: v0, parameters } = fit;
  const factors = [v0 ** -2, 1, v0 ** 2] as const;
  const [a, d, e] = [0, 1, 2].map((i) => parameters[i]! * factors[i]!) as [number, number, number];
  return {
    ok: true,
    a,
    d,
    e,
    launchSpeed: fit.runs[0]!.launchSpeed,
    covariance: mapThree((i, j) => fit.covariance[i]![j]! * factors[i]! * factors[j]!),
    noise: fit.noise.standardDeviation,
    memory: fit.noise.memory,
    fitted: [...fit.runs[0]!.speeds],
  };
}
