/**
 * Our side of benchmark B: `deno run decay-fits.ts FOLDER ROUNDS` fits 200 decays a round and prints times and answers.
 *
 * @module
 */
import { fitTraces } from "../../fit/trace-fit.ts";
import { phiCurve, traceMotion } from "../../fit/trace-motion.ts";
import { type TraceColumns, whitenedSums } from "../../fit/trace-noise.ts";
import { decayTraces } from "./decay-traces.ts";

const rounds = Number(Deno.args[1]);
const { times: seconds, speeds, standardDeviation } = decayTraces();

/** kg and N of the glides; without a planform nothing but the force over the mass matters. */
const MASS = 90, WEIGHT = 850;

const runs = speeds.map((trace) => ({
  times: seconds,
  speeds: trace,
  effectiveMass: MASS,
  sinkThrust: 0,
  weight: WEIGHT,
  offsetUncertainty: 0,
}));

/** Noise known and without memory: plain least squares. */
function fitAll(): { parameters: number[]; standardErrors: number[] }[] {
  return runs.map((run) => {
    const fit = fitTraces({
      runs: [run],
      craft: { lift: WEIGHT, phi: () => 1, expected: null },
    }, { known: { noise: { standardDeviation, memory: 0 }, runScale: 1 } });
    if (!fit.ok) throw new Error(fit.reason);
    const v0 = fit.referenceSpeed;
    const factors = [v0 ** -2, 1, v0 ** 2].map((one) => one / MASS);
    return {
      parameters: fit.parameters.map((one, j) => one * factors[j]!),
      standardErrors: factors.map((one, j) => one * Math.sqrt(fit.covariance[j]![j]!)),
    };
  });
}

const times: number[] = [];
let fits = null;
for (let round = 0; round < rounds; round++) {
  const start = performance.now();
  fits = fitAll();
  times.push(performance.now() - start);
}
console.log(JSON.stringify({ times, fits, ...(rounds > 1 ? { parts: parts() } : {}) }));

/** Where the time of a fit goes, from its two heavy parts done once for all traces; the least of as many rounds. */
function parts(): string {
  const phi = phiCurve(() => 1, { from: 1, to: 15 });
  const setting = { referenceSpeed: 6, liftShare: 1, offset: 0 };
  const follow = (run: typeof runs[number]) =>
    traceMotion(run, phi, {
      ...setting,
      parameters: [0.5 * MASS, 0, 0.2 * MASS],
      launchSpeed: run.speeds[0]!,
    })!;
  const columns = runs.map((run): TraceColumns => {
    const { byLaunch, byOffset, byFirst, byThird, bySteepening, speed } = follow(run);
    return [byLaunch, byOffset, byFirst, byThird, bySteepening, speed];
  });
  const least = (work: () => void) =>
    Math.min(...Array.from({ length: rounds }, () => {
      const start = performance.now();
      work();
      return performance.now() - start;
    }));
  const micro = (milliseconds: number) => `${(1000 * milliseconds / runs.length).toFixed(0)} us`;
  return `at best ${micro(Math.min(...times))} a fit of about six steps; of each step ${
    micro(least(() => runs.forEach(follow)))
  } for the glide with its sensitivities, ${
    micro(least(() => columns.forEach((one) => whitenedSums(one, seconds, 0))))
  } for the sums of products; the rest is not split up`;
}
