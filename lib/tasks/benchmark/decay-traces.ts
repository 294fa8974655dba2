/**
 * What the benchmark of decays works on: invented falling speeds, the same for every program.
 *
 * @module
 */
import { seededRandom } from "../../numeric/random.ts";

/** One trace: speeds at the shared times. */
export interface DecayTraces {
  /** s */
  readonly times: readonly number[];
  /** m/s, one row a trace. */
  readonly speeds: readonly (readonly number[])[];
  /** m/s of each reading. */
  readonly standardDeviation: number;
}

const COUNT = 200, SAMPLES = 201, SECONDS = 5, NOISE = 0.02;

/** Steps between samples in which the truth is followed. */
const FINE = 4;

/**
 * 200 glides of 5 s with 201 readings each, from 7 to 8.5 m/s, whose drag over mass is `A v^2 + B + C/v^2`.
 *
 * @returns times in s, speeds and their reading error in m/s; the same at each call
 */
export function decayTraces(): DecayTraces {
  const random = seededRandom("benchmark of decays");
  const between = (low: number, high: number) => low + (high - low) * random.uniform();
  const step = SECONDS / (SAMPLES - 1);
  const times = Array.from({ length: SAMPLES }, (_, i) => i * step);
  const speeds = Array.from({ length: COUNT }, () => {
    const A = between(0.012, 0.018), B = between(-0.08, 0.02), C = between(5, 9);
    const rate = (v: number) => -(A * v * v + B + C / (v * v));
    const h = step / FINE;
    let v = between(7, 8.5);
    return times.map((_, i) => {
      for (let k = 0; i > 0 && k < FINE; k++) {
        const k1 = rate(v), k2 = rate(v + h / 2 * k1), k3 = rate(v + h / 2 * k2);
        v += h / 6 * (k1 + 2 * k2 + 2 * k3 + rate(v + h * k3));
      }
      return v + NOISE * random.normal();
    });
  });
  return { times, speeds, standardDeviation: NOISE };
}
