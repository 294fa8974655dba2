/**
 * Invented: the speeds that a paddle log under the board wrote down in the glides of the second evening at Quillwater.
 *
 * @module
 */
import { seededRandom } from "lakeproof/numeric/random.ts";
import { EVENINGS } from "./quillwater-craft.ts";
import { type FlownRun, SEED } from "./quillwater-session.ts";
import { ERRORS, paddleLogScale } from "./quillwater-tow-session.ts";

/** Samples a second. */
const RATE = 10;

/** m/s of one sample, and how much of its error the next one keeps. */
const LOG = { noise: 0.05, kept: 0.55 } as const;

/** Designs that carried the log. */
const LOGGED = ["alder", "birch"];

/**
 * The traces of the second evening, from a stream of chance of their own, so that no other number of the session moves.
 *
 * @param runs of the session
 * @param seed of the session
 * @returns text of each file by path inside the folder
 */
export function traceFiles(runs: readonly FlownRun[], seed: string): Map<string, string> {
  const chance = seededRandom(seed).stream("paddle log");
  const zero = ERRORS.speedZero * chance.normal();
  // The class has one log; other evenings, made to look at the method, have one each.
  const scale = seed === SEED ? paddleLogScale() : paddleLogScale(seed);
  const evening = EVENINGS[1]!.block;
  const files = new Map<string, string>();
  for (const { row, glide } of runs) {
    if (row["block"] !== evening || !LOGGED.includes(row["design"]!)) continue;
    if (row["leave_out"] !== "") continue;
    let noise = chance.normal();
    const lines = ["time,speed"];
    for (let sample = 0; sample / RATE <= glide.duration; sample++) {
      const read = speedAt(glide.history, sample / RATE) * scale + zero + LOG.noise * noise;
      lines.push(`${(sample / RATE).toFixed(1)},${read.toFixed(2)}`);
      noise = LOG.kept * noise + Math.sqrt(1 - LOG.kept ** 2) * chance.normal();
    }
    files.set(`traces/${row["run"]}.csv`, lines.map((line) => `${line}\n`).join(""));
  }
  return files;
}

/** Straight between the steps of the flight: a twentieth of a second apart, that is below a millimetre a second. */
function speedAt(history: readonly (readonly [number, number])[], time: number): number {
  const next = Math.max(1, history.findIndex(([there]) => there >= time));
  const [[t0, v0], [t1, v1]] = [history[next - 1]!, history[next]!];
  return v0 + (v1 - v0) * (time - t0) / (t1 - t0);
}
