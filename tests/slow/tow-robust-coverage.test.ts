import { describe, expect, it } from "vitest";
import { prepareDesignTow } from "lakeproof/decide/tow-errors.ts";
import { prepareTow, towedDesigns } from "lakeproof/decide/tow-readings.ts";
import { fitTowSeries } from "lakeproof/fit/tow-series.ts";
import { bestLiftToDragEstimate } from "lakeproof/fit/tow-estimates.ts";
import { singleVariance } from "lakeproof/fit/tow-variance.ts";
import { studentTQuantile } from "lakeproof/numeric/distributions.ts";
import { seededRandom } from "lakeproof/numeric/random.ts";
import { drawCraft, speedsFrom, towSession } from "../support/towed-world.ts";

const SESSIONS = 300;

interface Tally {
  readonly held: number;
  /** Mean half width on the logarithm. */
  readonly half: number;
  readonly bias: number;
  readonly failed: number;
  /** Share of readings without fault that were named, and of wild ones. */
  readonly named: number;
  readonly caught: number;
}

/** Towed designs of 15 readings, some of which are wild, by least squares and by the robust view. */
function tally(wild: number, factor: number, robust: boolean): Tally {
  let held = 0, half = 0, bias = 0, count = 0, named = 0, caught = 0;
  for (let i = 0; i < SESSIONS; i++) {
    const random = seededRandom(`robust coverage ${i}`);
    const craft = drawCraft("alder", random);
    const low = 1.12 * craft.stallSpeed;
    const plan = { speeds: speedsFrom(low, 1.9 * low, 5), sweeps: 3, process: 0.02, shared: true };
    const session = towSession([craft], plan, random);
    const places = random.shuffle(session.tow.map((_, at) => at)).slice(0, wild);
    const prepared = prepareTow({
      ...session,
      tow: session.tow.map((one, at) =>
        places.includes(at) ? { ...one, lineTension: one.lineTension! * factor } : one
      ),
    });
    const { spec, points } = towedDesigns(prepared)[0]!;
    const ready = prepareDesignTow(prepared, spec, points);
    if (!ready.ok) throw new Error(ready.reason);
    const series = fitTowSeries(ready.data, ready.errors, { robust });
    const best = series.ok ? bestLiftToDragEstimate(series) : null;
    if (!series.ok || best === null) continue;
    const { log, variance, degreesOfFreedom } = singleVariance(best);
    const reach = studentTQuantile(0.975, degreesOfFreedom ?? Infinity) * Math.sqrt(variance);
    const off = log - Math.log(craft.best.liftToDrag);
    count++;
    if (Math.abs(off) <= reach) held++;
    half += reach;
    bias += off;
    series.fit.robustWeights?.forEach((weight, at) => {
      if (weight >= 0.5) return;
      if (places.includes(at)) caught++;
      else named++;
    });
  }
  return {
    held: held / count,
    half: half / count,
    bias: bias / count,
    failed: SESSIONS - count,
    named: named / (count * (15 - wild)),
    caught: wild === 0 ? 1 : caught / (count * wild),
  };
}

describe("the robust view in simulated tows of 15 readings", () => {
  it("costs next to nothing where no reading is wild", () => {
    const [plain, robust] = [tally(0, 1, false), tally(0, 1, true)];
    // 300 sessions: 1.3 % standard at 95 %, and it was measured to hold 97 % and more.
    expect(robust.held).toBeGreaterThan(0.93);
    expect(robust.half / plain.half).toBeLessThan(1.06);
    expect(robust.named).toBeLessThan(0.04);
    expect(robust.failed).toBe(0);
  });

  it("holds the truth with a narrower interval and less bias where one reading is 30 % too high", () => {
    const [plain, robust] = [tally(1, 1.3, false), tally(1, 1.3, true)];
    expect(robust.held).toBeGreaterThan(0.93);
    expect(robust.half / plain.half).toBeLessThan(0.75);
    expect(Math.abs(robust.bias)).toBeLessThan(0.005);
    expect(plain.bias).toBeLessThan(-0.01);
    expect(robust.caught).toBeGreaterThan(0.98);
    expect(robust.failed).toBeLessThan(3);
  });

  it("does so where two readings are 20 % too high", () => {
    const [plain, robust] = [tally(2, 1.2, false), tally(2, 1.2, true)];
    expect(robust.held).toBeGreaterThan(0.93);
    expect(robust.half / plain.half).toBeLessThan(0.85);
    expect(Math.abs(robust.bias)).toBeLessThan(0.5 * Math.abs(plain.bias));
    expect(robust.failed).toBeLessThan(3);
  });
});
