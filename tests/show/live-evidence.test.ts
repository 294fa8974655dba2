import { describe, expect, it } from "vitest";
import { estimateTakeoff } from "lakeproof/decide/estimate-takeoff.ts";
import { openSession } from "lakeproof/read/open-session.ts";
import { liveTakeoff, liveTaskOf } from "lakeproof/show/live-record.ts";
import { liveStates } from "lakeproof/show/live-state.ts";

const evidence = estimateTakeoff(await openSession("quillwater-evening"), { draws: 50 });

describe("a live figure of an answer", () => {
  const states = liveStates(liveTaskOf(evidence));

  it("starts at the answer's own numbers", () => {
    states.forEach(({ design, place, result }, at) => {
      const { answer, prepared } = evidence.designs[at]!;
      expect([design, place]).toEqual([answer.design, prepared.place]);
      if (!result.ok) throw new Error(result.reason);
      const pairs = [
        [result.stallSpeed, answer.stallSpeed],
        [result.takeoffSpeed, answer.takeoffSpeed],
        [result.towForceAtTakeoff, answer.towForceAtTakeoff],
        [result.leastDrag.value, answer.leastDrag],
        [result.leastDrag.speed, answer.leastDragSpeed],
        [result.leastPower.value, answer.leastPower],
        [result.leastPower.speed, answer.leastPowerSpeed],
      ] as const;
      for (const [own, told] of pairs) {
        // 1e-9: both solve a flat dip, from scans of different fineness.
        expect(Math.abs(own.value / told!.value - 1)).toBeLessThan(1e-9);
      }
      for (const [own, told] of pairs.slice(0, 2)) {
        // 1e-4: the same first order, by steps of their own.
        expect(Math.abs(own.low / told!.low! - 1)).toBeLessThan(1e-4);
        expect(Math.abs(own.high / told!.high! - 1)).toBeLessThan(1e-4);
      }
    });
  });

  it("says as published what the answer says", () => {
    const { figure, task } = liveTakeoff(evidence);
    expect(figure.caption).toMatch(/^As published: load, all that flies/);
    expect(JSON.stringify(task)).toContain("takes off at");
  });
});
