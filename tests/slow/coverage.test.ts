import { describe, expect, it } from "vitest";
import { acceptanceChecks, ASKED_RUNS } from "lakeproof/tasks/simulation/acceptance.ts";
import { cellsFor, IN_BLOCKS, OTHER_ENDS, TROUBLED } from "lakeproof/tasks/simulation/cells.ts";
import { runCell } from "lakeproof/tasks/simulation/run-cell.ts";

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
