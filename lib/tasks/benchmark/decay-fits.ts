/**
 * Our side of benchmark B: `deno run decay-fits.ts FOLDER ROUNDS` fits 200 decays a round and prints times and answers.
 *
 * @module
 */
import { fitTraces } from "../../fit/trace-fit.ts";
import { decayTraces } from "./decay-traces.ts";

const rounds = Number(Deno.args[1]);
const { times: seconds, speeds, standardDeviation } = decayTraces();

/** kg and N of the glides; without a planform nothing but the force over the mass matters. */
const MASS = 90, WEIGHT = 850;

/** Noise known and without memory: plain least squares. */
function fitAll(): { parameters: number[]; standardErrors: number[] }[] {
  return speeds.map((trace) => {
    const fit = fitTraces({
      runs: [{
        times: seconds,
        speeds: trace,
        effectiveMass: MASS,
        sinkThrust: 0,
        weight: WEIGHT,
        offsetUncertainty: 0,
      }],
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
console.log(JSON.stringify({ times, fits }));
