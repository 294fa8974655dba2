/**
 * Our side of benchmark A: `deno run polar-bootstrap.ts FOLDER ROUNDS` refits the points 10,000 times a round and prints times.
 *
 * The answer on the places that all programs share is worked out after the clock has stopped.
 *
 * @module
 */
import { bootstrapLaw, drawPlaces } from "../../fit/bootstrap-law.ts";
import { seededRandom } from "../../numeric/random.ts";
import { polarPoints, RESAMPLES, sharedPlaces } from "./polar-points.ts";

const rounds = Number(Deno.args[1]);
const points = polarPoints();
const times: number[] = [], draws: number[] = [];
let own = null;
for (let round = 0; round < rounds; round++) {
  const start = performance.now();
  const random = seededRandom(`round ${round}`);
  const places = drawPlaces(random, points.terms.length, RESAMPLES);
  draws.push(performance.now() - start);
  own = bootstrapLaw(points, places)!;
  times.push(performance.now() - start);
}
const shared = rounds > 1 ? bootstrapLaw(points, sharedPlaces())! : null;
const least = Math.min(...draws), whole = Math.min(...times);
const parts = `at best ${whole.toFixed(1)} ms, random places ${
  (100 * least / whole).toFixed(0)
} % of it, refits and quantiles the rest`;
console.log(JSON.stringify({ times, parts, shared, own }));
