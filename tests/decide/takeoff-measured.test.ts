import { describe, expect, it } from "vitest";
import type { Session } from "lakeproof/base/session.ts";
import { compareTows } from "lakeproof/decide/compare-tows.ts";
import { estimateTakeoff } from "lakeproof/decide/estimate-takeoff.ts";
import { openSession } from "lakeproof/read/open-session.ts";
import { stallSentence } from "lakeproof/show/takeoff-sentence.ts";
import { excessSentence, measuredDragTable } from "lakeproof/show/takeoff-measured-table.ts";
import { exampleTow } from "../support/towed-world.ts";

const { session } = exampleTow("measured beside predicted");
const evidence = estimateTakeoff(session, { draws: 100 });

/** The same with every pull changed by a factor. */
function pulled(factor: number): Session {
  return {
    ...session,
    tow: session.tow.map((one) => ({ ...one, lineTension: one.lineTension! * factor })),
  };
}

describe("measured drag beside the predicted", () => {
  it("stands at the speeds towed, with the tow's own drag and interval", () => {
    const tows = compareTows(session);
    for (const one of evidence.answer.designs) {
      const towed = tows.answer.designs.find((each) => each.design === one.design)!;
      expect(one.measured.map((each) => each.speed)).toEqual(
        towed.dragAt.map((each) => each.speed),
      );
      expect(one.measured.map((each) => each.measured)).toEqual(
        towed.dragAt.map((each) => each.drag),
      );
      for (const { measured, predicted, excess, lift } of one.measured) {
        expect(excess.value).toBeCloseTo(measured.value - predicted.value, 12);
        expect(excess.standardUncertainty!).toBeCloseTo(
          Math.hypot(measured.standardUncertainty!, predicted.standardUncertainty!),
          12,
        );
        expect(lift).toBeCloseTo(towed.law!.lift, 9);
      }
    }
    expect(measuredDragTable(evidence).rows.length).toBe(
      evidence.answer.designs.reduce((sum, one) => sum + one.measured.length, 0),
    );
  });
  it("shows no excess within the prediction's doubt, and shows one that is large", () => {
    const [plain] = evidence.answer.designs;
    expect(plain!.measured.length).toBeGreaterThan(3);
    const draggy = estimateTakeoff(session, { draws: 100 }, [{ ...pulled(1.5), name: "draggy" }]);
    const [own] = draggy.answer.designs;
    const more = own!.measured.filter((one) => one.session === "draggy");
    expect(more.length).toBe(plain!.measured.length);
    expect(more.every((one) => one.excess.low! > 0)).toBe(true);
    expect(excessSentence({ ...own!, measured: more })).toMatch(/drags more than predicted/);
    expect(draggy.answer.sessions).toEqual([session.name, "draggy"]);
  });
  it("says nothing where nothing was measured, and agrees or not in words", () => {
    const [own] = evidence.answer.designs;
    expect(excessSentence({ ...own!, measured: [] })).toBe("");
    expect(excessSentence(own!)).not.toBe("");
  });
});

describe("one name in two sessions", () => {
  it("is one wing only where span and area agree", () => {
    const other = {
      ...session,
      name: "other",
      designs: session.designs.map((one) =>
        one.design === "birch" ? { ...one, span: one.span * 1.1 } : one
      ),
    };
    const { answer } = estimateTakeoff(session, { draws: 100 }, [other]);
    const told = answer.findings.filter((one) => one.code === "other-wing");
    expect(told.length).toBe(1);
    expect(told[0]!.what).toContain("Birch of other");
    const from = (design: string) =>
      answer.designs.find((one) => one.design === design)!.measured.map((one) => one.session);
    expect(from("birch")).not.toContain("other");
    expect(from("alder")).toContain("other");
  });
});

describe("glides that ended in a stall", () => {
  it("give back the largest lift coefficient they were flown with", async () => {
    // The invented evening was flown with 1.05 at most, less or more by each wing's own luck.
    const evening = await openSession("quillwater-evening");
    const { answer } = estimateTakeoff(evening, { draws: 100, mass: 84 });
    expect(answer.designs.length).toBe(3);
    for (const one of answer.designs) {
      const [stall] = one.measuredStalls;
      expect(stall!.largestLiftCoefficient.low!).toBeLessThan(1.05 * 1.1);
      expect(stall!.largestLiftCoefficient.high!).toBeGreaterThan(1.05 / 1.1);
      // Equal end and prediction mean the assumed coefficient: the two ratios hang together by the closed form.
      const ratio = stall!.largestLiftCoefficient.value / 1.05;
      expect(ratio).toBeCloseTo((stall!.predicted / stall!.endSpeed.value) ** 2.1, 9);
      expect(stallSentence(one, 1.05)).toContain("u_largest_lift_coefficient");
    }
    expect(stallSentence({ ...answer.designs[0]!, measuredStalls: [] }, 1.05)).toBe("");
  });
});
