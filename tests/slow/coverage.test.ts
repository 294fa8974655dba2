import { describe, expect, it } from "vitest";
import { acceptanceChecks, ASKED_RUNS } from "lakeproof/tasks/simulation/acceptance.ts";
import { cellsFor, IN_BLOCKS, OTHER_ENDS, TROUBLED } from "lakeproof/tasks/simulation/cells.ts";
import { type WorldName, WORLDS } from "lakeproof/tasks/simulation/foil-world.ts";
import { drawSession } from "lakeproof/tasks/simulation/invented-session.ts";
import { runCell } from "lakeproof/tasks/simulation/run-cell.ts";
import { seededRandom } from "lakeproof/numeric/random.ts";
import { fitGlideSeries } from "lakeproof/fit/glide-series.ts";
import { contrastSeries, probabilityFarther } from "lakeproof/fit/series-contrast.ts";

/** Sessions a cell; the whole study (lib/tasks/simulate.ts) takes 2,000. */
const SESSIONS = 300;

/** Three binomial standard errors of one cell: 3 sqrt(0.95 0.05/300). The mix of three worlds has smaller ones. */
const SLACK = 3 * Math.sqrt(0.95 * 0.05 / SESSIONS);

describe("the verdict over worlds whose truth is known", () => {
  const cells = [...cellsFor(ASKED_RUNS), ...IN_BLOCKS, ...OTHER_ENDS, ...TROUBLED].map((kind) =>
    runCell(kind, SESSIONS)
  );

  for (const check of acceptanceChecks(cells, SLACK)) {
    it(`${check.what}: between ${check.low.toFixed(3)} and ${check.high.toFixed(3)}`, () => {
      expect(check.value).toBeGreaterThanOrEqual(check.low);
      expect(check.value).toBeLessThanOrEqual(check.high);
    });
  }

  it("gives the same counts again for the same cell", () => {
    const kind = cellsFor([4])[0]!;
    expect(runCell(kind, 50)).toEqual(runCell(kind, 50));
  });

  it("covers less without the doubt about the shape of drag, so the study can tell", () => {
    const kind = { world: "prior", runs: 20, foils: "null", depthKnown: true } as const;
    // Measured 86 % over 2,000 sessions; three binomial standard errors of 600 are 4 points.
    expect(runCell(kind, 600, { ignoreShape: true }).covered / 600).toBeLessThan(0.91);
  });
});

describe("the probability that the candidate goes further", () => {
  it("is right at least as often as it says, up to the top", () => {
    const from = [0.5, 0.8, 0.9, 0.975, 0.99, 0.999];
    const tally = from.map(() => ({ count: 0, said: 0, right: 0 }));
    for (const world of Object.keys(WORLDS) as WorldName[]) {
      for (const runs of [4, 7, 12]) {
        const random = seededRandom(`probabilities ${world} ${runs}`);
        const kind = { world, runs, foils: "pair", depthKnown: true } as const;
        for (let i = 0; i < 800; i++) {
          const { baseline, candidate, logRatio } = drawSession(kind, random);
          const first = fitGlideSeries(baseline.runs, baseline.reference, baseline.target);
          const second = fitGlideSeries(candidate.runs, candidate.reference, candidate.target);
          if (!first.ok || !second.ok) continue;
          const contrast = contrastSeries({
            baseline: first,
            candidate: second,
            commonVariance: 0,
          });
          const probability = probabilityFarther(contrast!);
          const said = Math.max(probability, 1 - probability);
          const cell = tally[from.findLastIndex((low) => said >= low)]!;
          cell.count++;
          cell.said += said;
          if (probability > 0.5 === logRatio > 0) cell.right++;
        }
      }
    }
    for (const [i, { count, said, right }] of tally.entries()) {
      // Three binomial standard errors; a single wrong one is allowed where none is to be expected.
      const mean = said / count;
      const slack = 3 * Math.sqrt(mean * (1 - mean) / count) + 1 / count;
      expect(count, `from ${from[i]}`).toBeGreaterThan(300);
      expect(right / count, `from ${from[i]}`).toBeGreaterThan(mean - slack);
    }
  });
});
