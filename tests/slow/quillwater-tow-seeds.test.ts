import { describe, expect, it } from "vitest";
import type { Quantity } from "lakeproof/base/quantity.ts";
import { compareTows } from "lakeproof/decide/compare-tows.ts";
import { readSession } from "lakeproof/read/read-session.ts";
import { towSessionFiles, towTruth } from "../../data/generate-tow-demo.ts";
import { mastDrag, RUNNING_DEPTH, TOWED, towedCraft } from "../../data/quillwater-tow-craft.ts";

const SESSIONS = 15;

const holds = (one: Quantity, truth: number) =>
  (one.low === null || one.low <= truth) && (one.high === null || one.high >= truth);

describe("other mornings behind the boat of Quillwater", () => {
  it("hold the truth about as often as stated, and never find the wrong wing to drag less", () => {
    const truth = towTruth();
    const crafts = TOWED.map(towedCraft);
    const encoder = new TextEncoder();
    const count = {
      best: 0,
      bestSpeed: 0,
      ratio: 0,
      drag: 0,
      drags: 0,
      mast: 0,
      wing: 0,
      parts: 0,
      less: 0,
      more: 0,
    };
    for (let i = 0; i < SESSIONS; i++) {
      const files = [...towSessionFiles(`another morning ${i}`)]
        .map(([name, text]) => [name, encoder.encode(text)] as const);
      const { answer } = compareTows(readSession("another", new Map(files)));
      for (const one of answer.designs) {
        const best = truth.best.find((wing) => wing.design === one.design)!;
        const craft = crafts.find((wing) => wing.name === one.design)!;
        if (holds(one.bestLiftToDrag!, best.liftToDrag)) count.best++;
        if (holds(one.speedOfBestLiftToDrag!, best.speed)) count.bestSpeed++;
        count.drag += one.dragAt.filter((at) => holds(at.drag, craft.drag(at.speed))).length;
        count.drags += one.dragAt.length;
        for (const { speed, parts } of one.parts) {
          if (holds(parts[0]!.drag, mastDrag(speed, RUNNING_DEPTH))) count.mast++;
          if (holds(parts.at(-1)!.drag, craft.wing(speed))) count.wing++;
          count.parts++;
        }
      }
      const [pair] = answer.comparisons;
      if (holds(pair!.bestLiftToDragRatio!, truth.bestLiftToDragRatio)) count.ratio++;
      if (pair!.candidateLessDrag.length > 0) count.less++;
      if (pair!.candidateMoreDrag.length > 0) count.more++;
    }
    if (Deno.env.get("SHOW_COUNTS") !== undefined) console.log(JSON.stringify(count));
    // Measured over 300 mornings: best lift-to-drag held in 98 %, its speed 97 %, ratio 99 %, drag 96 %; birch found in all.
    // At 95 % the mean is 28.5 of 30 with a deviation of 1.2, 14.3 of 15 with 0.8: bounds three below.
    expect(count.best).toBeGreaterThanOrEqual(25);
    expect(count.bestSpeed).toBeGreaterThanOrEqual(25);
    expect(count.ratio).toBeGreaterThanOrEqual(12);
    // Drags of one session hang together: as many as 15 times two single looks, 0.95 - 3 x 0.04.
    expect(count.drag / count.drags).toBeGreaterThan(0.83);
    // Doubts about formulas are one draw for all mornings here, and the rider is 5 % smaller than the formula's: the wing is held
    // in nearly all. The mast scatters from morning to morning; three speeds of a session hang together.
    expect(count.parts).toBeGreaterThan(80);
    expect(count.mast / count.parts).toBeGreaterThan(0.83);
    expect(count.wing / count.parts).toBeGreaterThan(0.9);
    expect(count.less).toBe(SESSIONS);
    expect(count.more).toBe(0);
  });
});
