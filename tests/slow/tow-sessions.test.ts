import { describe, expect, it } from "vitest";
import type { Quantity } from "lakeproof/base/quantity.ts";
import { compareTows } from "lakeproof/decide/compare-tows.ts";
import { seededRandom } from "lakeproof/numeric/random.ts";
import { drawCraft, speedsFrom, towSession } from "../support/towed-world.ts";

/** Answers a cell, and what three binomial standard errors take from a coverage of 95 %. */
const ANSWERS = 200, SLACK = 3 * Math.sqrt(0.95 * 0.05 / ANSWERS);

const holds = (q: Quantity, truth: number) => q.low! <= truth && truth <= q.high!;

const claims = (one: {
  readonly candidateLessDrag: readonly unknown[];
  readonly candidateMoreDrag: readonly unknown[];
}) => one.candidateLessDrag.length + one.candidateMoreDrag.length > 0;

describe(
  "one craft under two names, each towed in a session of its own with 2 % of its own",
  () => {
    const count = { ratio: 0, ratios: 0, band: 0, asOne: 0 };
    for (let i = 0; i < ANSWERS; i++) {
      const random = seededRandom(`sessions ${i}`);
      const craft = drawCraft("alder", random);
      const low = (1.05 + 0.15 * random.uniform()) * craft.stallSpeed;
      const plan = {
        speeds: speedsFrom(low, (1.5 + 0.7 * random.uniform()) * low, 5),
        sweeps: 3,
        process: 0.01 + 0.03 * random.uniform(),
        shared: true,
      };
      const [one, two] = ["alder", "birch"].map((name) => {
        const session = towSession([{ ...craft, name }], plan, random);
        const day = 1 + 0.02 * random.normal();
        return {
          ...session,
          name: `of ${name}`,
          tow: session.tow.map((row) => ({ ...row, lineTension: row.lineTension! * day })),
        };
      });
      const [pair] = compareTows([one!, two!]).answer.comparisons;
      if (claims(pair!)) count.band++;
      if (pair!.bestLiftToDragRatio !== null) {
        count.ratios++;
        if (holds(pair!.bestLiftToDragRatio, 1)) count.ratio++;
      }
      // The same readings as if one session with turns had brought them.
      const mixed = one!.tow.flatMap((row, at) => [row, two!.tow[at]!])
        .map((row, at) => ({ ...row, row: at + 2, point: String(at + 1) }));
      const merged = { ...one!, designs: [...one!.designs, ...two!.designs], tow: mixed };
      if (claims(compareTows(merged).answer.comparisons[0]!)) count.asOne++;
    }

    it("cover their ratio, and claim no difference where there is none", () => {
      expect(count.ratio / count.ratios).toBeGreaterThan(0.95 - SLACK);
      expect(count.band / ANSWERS).toBeLessThan(0.05 + SLACK);
    });

    it("would be told apart too often as if they were one session", () => {
      expect(count.asOne / ANSWERS).toBeGreaterThan(0.05 + SLACK);
    });
  },
  300_000,
);

describe("one craft under four names, all in one session", () => {
  it(
    "bring a false claim about any of the three candidates in no more than one answer of twenty",
    () => {
      let any = 0;
      for (let i = 0; i < ANSWERS; i++) {
        const random = seededRandom(`family ${i}`);
        const craft = drawCraft("alder", random);
        const low = 1.1 * craft.stallSpeed;
        const names = ["alder", "birch", "cedar", "elm"];
        const session = towSession(names.map((name) => ({ ...craft, name })), {
          speeds: speedsFrom(low, 1.8 * low, 5),
          sweeps: 3,
          process: 0.01 + 0.03 * random.uniform(),
          shared: true,
        }, random);
        const { comparisons } = compareTows(session).answer;
        const wrong = comparisons.some((one) =>
          claims(one) || (one.bestLiftToDragRatio !== null && !holds(one.bestLiftToDragRatio, 1))
        );
        if (wrong) any++;
      }
      expect(any / ANSWERS).toBeLessThan(0.05 + SLACK);
    },
    300_000,
  );
});
