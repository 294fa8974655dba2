import { describe, expect, it } from "vitest";
import type { TowAnswer, TowCurrent } from "lakeproof/base/tow-answer.ts";
import { compareTows } from "lakeproof/decide/compare-tows.ts";
import { currentSentence } from "lakeproof/show/tow-current-sentence.ts";
import { towRecord } from "lakeproof/show/tow-record.ts";
import { exampleTow } from "../support/towed-world.ts";

const evidence = compareTows(exampleTow("two tows").session);
const current = (change: Partial<TowCurrent>): TowCurrent => ({
  session: "June",
  block: "morning",
  towards: "down",
  speed: {
    value: 0.152,
    standardUncertainty: 0.011,
    degreesOfFreedom: 20,
    low: 0.129,
    high: 0.175,
    level: 0.95,
    kind: "interval",
    unit: "m/s",
  },
  change: null,
  origin: "passes",
  passes: 20,
  ...change,
});
const said = (all: readonly TowCurrent[], change: Partial<TowAnswer> = {}) =>
  currentSentence({ ...evidence.answer, current: all, ...change });

describe("the current in one sentence", () => {
  it("has its size and its way", () => {
    expect(said([current({})])).toMatch(
      /^The current is taken off the speeds over ground: 0\.152.*0\.011.*m\/s towards "down"\.$/,
    );
  });

  it("names the block where there are several, and what is not known", () => {
    const both = said([current({}), current({ block: "evening", speed: null, origin: null })]);
    expect(both).toContain('towards "down" in morning.');
    expect(both).toContain("their current in evening is not known");
  });

  it("stands in the box, and not where speeds are through the water", () => {
    const box = towRecord({ ...evidence, answer: { ...evidence.answer, current: [current({})] } });
    expect(box.details.join(" ")).toContain("The current is taken off");
    expect(said([])).toBe("");
  });
});
