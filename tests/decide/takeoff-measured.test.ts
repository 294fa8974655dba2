import { describe, expect, it } from "vitest";
import type { Session } from "lakeproof/base/session.ts";
import { compareTows } from "lakeproof/decide/compare-tows.ts";
import { estimateTakeoff } from "lakeproof/decide/estimate-takeoff.ts";
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
