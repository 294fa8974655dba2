import { describe, expect, it } from "vitest";
import type { Quantity } from "lakeproof/base/quantity.ts";
import { compareTows } from "lakeproof/decide/compare-tows.ts";
import { seededRandom } from "lakeproof/numeric/random.ts";
import { drawCraft, speedsFrom, towSession } from "../support/towed-world.ts";

/** Sessions a cell, and what three binomial standard errors take from a coverage of 95 %. */
const SESSIONS = 300, SLACK = 3 * Math.sqrt(0.95 * 0.05 / SESSIONS);

const holds = (q: Quantity, truth: number) => q.low! <= truth && truth <= q.high!;

/** One craft under two names, with 2 % on the drag of each sweep, or of each design where they did not take turns. */
function run(turns: boolean) {
  const count = { ratio: 0, ratios: 0, band: 0, best: 0, bests: 0 };
  for (let i = 0; i < SESSIONS; i++) {
    const random = seededRandom(`days ${turns} ${i}`);
    const craft = drawCraft("alder", random);
    const low = (1.05 + 0.15 * random.uniform()) * craft.stallSpeed;
    const session = towSession([craft, { ...craft, name: "birch" }], {
      speeds: speedsFrom(low, (1.5 + 0.7 * random.uniform()) * low, 5),
      sweeps: 3,
      process: 0.01 + 0.03 * random.uniform(),
      shared: true,
      turns,
      sweepScatter: 0.02,
    }, random);
    const { designs: [alder], comparisons: [pair] } = compareTows(session).answer;
    if (pair!.bestLiftToDragRatio !== null) {
      count.ratios++;
      if (holds(pair!.bestLiftToDragRatio, 1)) count.ratio++;
    }
    if (pair!.candidateLessDrag.length + pair!.candidateMoreDrag.length > 0) count.band++;
    if (alder!.bestLiftToDrag?.kind === "interval") {
      count.bests++;
      if (holds(alder!.bestLiftToDrag, craft.best.liftToDrag)) count.best++;
    }
  }
  return count;
}

describe("designs towed in turn, each sweep with 2 % of its own", () => {
  const count = run(true);

  it("cover their best lift-to-drag and their ratio, and claim no difference where there is none", () => {
    expect(count.best / count.bests).toBeGreaterThan(0.95 - SLACK);
    expect(count.ratio / count.ratios).toBeGreaterThan(0.95 - SLACK);
    expect(count.band / SESSIONS).toBeLessThan(0.05);
  });
});

describe("designs towed one after the other, each with a day of its own", () => {
  const count = run(false);

  it("cover their ratio by what is allowed for the day", () => {
    expect(count.ratio / count.ratios).toBeGreaterThan(0.95 - SLACK);
    expect(count.band / SESSIONS).toBeLessThan(0.05 + SLACK);
  });

  it("can't cover a single number by it: a day's own offset can't be seen from inside", () => {
    // Measured 85 %; known, and told by no interval of one session.
    expect(count.best / count.bests).toBeLessThan(0.95 - SLACK);
  });
});
