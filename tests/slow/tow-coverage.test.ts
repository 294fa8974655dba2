import { beforeAll, describe, expect, it } from "vitest";
import type { Quantity } from "lakeproof/base/quantity.ts";
import { compareTows } from "lakeproof/decide/compare-tows.ts";
import { dragEstimate, type TowEstimate } from "lakeproof/fit/tow-series.ts";
import { singleVariance } from "lakeproof/fit/tow-variance.ts";
import { studentTQuantile } from "lakeproof/numeric/distributions.ts";
import { seededRandom } from "lakeproof/numeric/random.ts";
import { drawCraft, speedsFrom, towSession } from "../support/towed-world.ts";

/** Sessions a cell. */
const SESSIONS = 300;

/** Three binomial standard errors at 95 %: what chance may take from a coverage. */
const SLACK = 3 * Math.sqrt(0.95 * 0.05 / SESSIONS);

/** Counts of one cell. */
interface Cell {
  drag: number;
  best: number;
  bestInside: number;
  speed: number;
  bound: number;
  bestOutside: number;
  withoutShared: number;
  ratio: number;
  ratios: number;
  bandClaims: number;
  laws: number;
  slips: number;
  readonly words: Map<string, number>;
}

const holds = (quantity: Quantity, truth: number) =>
  (quantity.low === null || quantity.low <= truth) &&
  (quantity.high === null || quantity.high >= truth);

function covers(estimate: TowEstimate, truth: number): boolean {
  const { log, variance, degreesOfFreedom } = singleVariance(estimate);
  const reach = studentTQuantile(0.975, degreesOfFreedom ?? Infinity) * Math.sqrt(variance);
  return Math.abs(log - Math.log(truth)) <= reach;
}

/** Sessions of a craft towed twice under two names: a comparison of nothing with nothing. */
function runCell(speeds: number, sweeps: number, depthKnown: boolean): Cell {
  const cell: Cell = {
    drag: 0,
    best: 0,
    bestInside: 0,
    speed: 0,
    bound: 0,
    bestOutside: 0,
    withoutShared: 0,
    ratio: 0,
    ratios: 0,
    bandClaims: 0,
    laws: 0,
    slips: 0,
    words: new Map(),
  };
  for (let i = 0; i < SESSIONS; i++) {
    const random = seededRandom(`tow ${speeds} ${sweeps} ${i}`);
    const craft = drawCraft("alder", random);
    const low = (1.05 + 0.15 * random.uniform()) * craft.stallSpeed;
    const high = (1.5 + 0.7 * random.uniform()) * low;
    const towed = towSession([craft, { ...craft, name: "birch" }], {
      speeds: speedsFrom(low, high, speeds),
      sweeps,
      process: 0.01 + 0.03 * random.uniform(),
      shared: true,
    }, random);
    const session = depthKnown
      ? towed
      : { ...towed, tow: towed.tow.map((one) => ({ ...one, depth: null })) };
    const { answer, designs, pairs } = compareTows(session);
    cell.slips += answer.findings.filter((one) => one.severity === "error").length;
    for (const { code } of answer.findings) cell.words.set(code, (cell.words.get(code) ?? 0) + 1);
    const { series, answer: alder } = designs[0]!;
    if (series === null) continue;
    cell.laws++;
    const at = Math.min(Math.max(4, low), high);
    const drag = dragEstimate(series, at)!;
    if (covers(drag, craft.drag(at))) cell.drag++;
    if (covers({ ...drag, shared: [] }, craft.drag(at))) cell.withoutShared++;
    if (alder.bestLiftToDrag?.kind === "interval") {
      cell.bestInside++;
      if (holds(alder.bestLiftToDrag, craft.best.liftToDrag)) cell.best++;
      if (holds(alder.speedOfBestLiftToDrag!, craft.best.speed)) cell.speed++;
    } else if (alder.bestLiftToDrag !== null) {
      cell.bestOutside++;
      if (holds(alder.bestLiftToDrag, craft.best.liftToDrag)) cell.bound++;
    }
    const [pair] = pairs;
    const ratio = pair!.answer.bestLiftToDragRatio;
    if (ratio !== null) {
      cell.ratios++;
      if (holds(ratio, 1)) cell.ratio++;
    }
    if (pair!.answer.candidateLessDrag.length + pair!.answer.candidateMoreDrag.length > 0) {
      cell.bandClaims++;
    }
  }
  return cell;
}

const CELLS = [
  [4, 2, true],
  [5, 3, true],
  [9, 3, true],
  [10, 4, true],
  [5, 3, false],
] as const;

/** Findings that a session without fault may bring by chance, with the share of designs that it may reach. */
const FALSE_WORDS = {
  "stands-out": 0.05,
  "repeats-agree-better": 0.05,
  "slowest-drag-more": 0.01,
  "rules-the-law": 0.02,
  "leans-on-planform": 0.01,
  "pulls-from-planform": 0.02,
} as const;

describe.each(CELLS)(
  "tows at %i speeds in %i sweeps, depth known: %s",
  (speeds, sweeps, depthKnown) => {
    let cell: Cell;
    beforeAll(() => {
      cell = runCell(speeds, sweeps, depthKnown);
      if (Deno.env.get("SHOW_COUNTS") !== undefined) {
        console.log(JSON.stringify({ ...cell, words: [...cell.words] }));
      }
    }, 300_000);

    it("give a law in every session, without a false word on units", () => {
      // Simulated elsewhere: 3 false words in 10,000 sessions.
      expect(cell.laws).toBeGreaterThanOrEqual(SESSIONS - 1);
      expect(cell.slips).toBeLessThanOrEqual(2);
    });

    it.each(Object.entries(FALSE_WORDS))("say %s of no more than a share of %f", (code, share) => {
      // Two designs a session; three binomial standard errors on top.
      const count = cell.words.get(code) ?? 0;
      const slack = 3 * Math.sqrt(share * (1 - share) / (2 * SESSIONS));
      expect(count / (2 * SESSIONS)).toBeLessThan(share + slack);
    });

    it("cover the drag at 4 m/s or the nearest speed towed", () => {
      expect(cell.drag / cell.laws).toBeGreaterThan(0.95 - SLACK);
    });

    it("cover best lift-to-drag and its speed", () => {
      expect(cell.best / cell.bestInside).toBeGreaterThan(0.95 - SLACK);
      expect(cell.speed / cell.bestInside).toBeGreaterThan(0.95 - SLACK);
    });

    it("cover a ratio of one, and see no difference where there is none", () => {
      expect(cell.ratio / cell.ratios).toBeGreaterThan(0.95 - SLACK);
      expect(cell.bandClaims / cell.laws).toBeLessThan(0.05);
    });

    it("cover less with the shared errors left out, visibly so with many readings", () => {
      expect(cell.withoutShared).toBeLessThan(cell.drag);
      // Measured 85 % here at 27 readings, 91 % at 15; three binomial standard errors of 85 % are 6 points.
      if (speeds * sweeps === 27) expect(cell.withoutShared / cell.laws).toBeLessThan(0.91);
    });
  },
);
