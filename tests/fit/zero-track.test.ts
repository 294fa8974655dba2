import { describe, expect, it } from "vitest";
import { zeroTrack } from "lakeproof/fit/zero-track.ts";

describe("a zero looked at several times", () => {
  const track = zeroTrack([
    { time: 10, value: 1 },
    { time: 0, value: 0.3 },
    { time: 0, value: 0.1 },
    { time: 20, value: 0.4 },
  ]);

  it("runs straight from look to look, with looks at one time averaged", () => {
    // By hand: 0.2 to 1 to 0.4.
    expect([-5, 0, 5, 10, 15, 20, 99].map(track.zeroAt)).toEqual(
      [0.2, 0.2, 0.6, 1, 0.7, 0.4, 0.4].map((value) => expect.closeTo(value, 12)),
    );
  });

  it("carries the doubt of each stretch by itself", () => {
    // A rectangle as wide as the drift (GUM 4.3.7).
    expect(track.stretches.map((one) => one.standardUncertainty * Math.sqrt(12))).toEqual(
      [0.8, 0.6].map((value) => expect.closeTo(value, 12)),
    );
    expect([-1, 3, 12, 21].map(track.stretchAt)).toEqual([null, 0, 1, null]);
  });

  it("stands still after a single look, and needs one", () => {
    const still = zeroTrack([{ time: 3, value: 0.5 }]);
    expect(still.stretches).toEqual([]);
    expect(still.zeroAt(100)).toBe(0.5);
    expect(() => zeroTrack([])).toThrow(/have been read/);
    expect(() => zeroTrack([{ time: NaN, value: 0 }])).toThrow(/finite/);
  });
});
