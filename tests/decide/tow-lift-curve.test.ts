import { describe, expect, it } from "vitest";
import type { Session } from "lakeproof/base/session.ts";
import { compareTows } from "lakeproof/decide/compare-tows.ts";
import { readSession } from "lakeproof/read/read-session.ts";
import { towSessionFiles } from "../../data/generate-tow-demo.ts";
import { TOWED, towedCraft } from "../../data/quillwater-tow-craft.ts";
import { SPEEDS } from "../../data/quillwater-tow-session.ts";

const DEGREE = Math.PI / 180;

function demo(seed?: string): Session {
  const encoder = new TextEncoder();
  const files = seed === undefined ? towSessionFiles() : towSessionFiles(seed);
  return readSession(
    "demo",
    new Map([...files].map(([name, text]) => [name, encoder.encode(text)])),
  );
}

const session = demo();
const { answer } = compareTows(session);

/** The same morning with its pitches changed. */
function withPitch(change: (pitch: number, at: number) => number | null) {
  return compareTows({
    ...session,
    tow: session.tow.map((one, at) => ({ ...one, pitch: change(one.pitch!, at) })),
  }).answer;
}
const codes = (one: typeof answer) => one.findings.map((each) => each.code);

describe("lift curve of a tow", () => {
  it("holds the true slope over the speeds towed, and the true pitch of no lift", () => {
    for (const [at, design] of TOWED.entries()) {
      const craft = towedCraft(design);
      const curve = answer.designs[at]!.liftCurve!;
      // A level line: lift is the whole weight, so that the true points are known without a tow.
      const density = 998.56;
      const true_ = SPEEDS.map((speed) => ({
        lift: craft.lift / (density / 2 * speed ** 2 * design.area),
        pitch: DEGREE * craft.pitch({
          speed,
          lineAngle: 0,
          depth: 0.38,
          headwind: 0,
          speedChange: 0,
          moment: 1,
        }, 0),
      }));
      const x = true_.reduce((sum, one) => sum + one.pitch, 0) / true_.length;
      const slope = true_.reduce((sum, one) => sum + (one.pitch - x) * one.lift, 0) /
        true_.reduce((sum, one) => sum + (one.pitch - x) ** 2, 0);
      expect(curve.slope.low!).toBeLessThan(slope);
      expect(curve.slope.high!).toBeGreaterThan(slope);
      // As the generator has it; the line carried on is straight, the truth bends by waves: less than 0.2 degrees.
      const zero = { alder: -1.8, birch: -1.1 }[design.name]! * DEGREE;
      expect(curve.zeroLiftPitch.low!).toBeLessThan(zero);
      expect(curve.zeroLiftPitch.high!).toBeGreaterThan(zero);
    }
  });

  it("tells the slope a degree as a fifty-seventh, and finds it to go with the planform", () => {
    const { slope, slopePerDegree, expectedSlope, fallsOff } = answer.designs[0]!.liftCurve!;
    expect(slopePerDegree.value).toBeCloseTo(slope.value * DEGREE, 12);
    expect(slopePerDegree.high!).toBeCloseTo(slope.high! * DEGREE, 12);
    expect(Math.abs(slope.value / expectedSlope.value - 1)).toBeLessThan(0.15);
    expect(fallsOff).toBeNull();
    expect(codes(answer)).toEqual([]);
  });

  it("moves the pitch of no lift with the level, and nothing else", () => {
    const { slope, zeroLiftPitch } = answer.designs[0]!.liftCurve!;
    const moved = withPitch((pitch) => pitch + DEGREE).designs[0]!.liftCurve!;
    // Sums about another origin, to the last digits.
    expect(moved.slope.value).toBeCloseTo(slope.value, 9);
    expect(moved.zeroLiftPitch.value).toBeCloseTo(zeroLiftPitch.value + DEGREE, 9);
  });

  it("says radians where pitches were written in radians", () => {
    expect(codes(withPitch((pitch) => pitch * DEGREE))).toEqual(
      ["pitch-in-radians", "pitch-in-radians"],
    );
  });

  it("says that the sign is turned round where lift falls with pitch", () => {
    const turned = withPitch((pitch) => -pitch);
    expect(codes(turned)).toEqual(["lift-falls-with-pitch", "lift-falls-with-pitch"]);
    expect(turned.findings[0]!.what).toMatch(/^The lift of alder falls as its pitch grows/);
  });

  it("says that slope and planform part where pitches are half of what they were", () => {
    expect(codes(withPitch((pitch) => pitch / 2))).toContain("lift-slope-apart");
  });

  it("hints at a stall where the slowest two need two degrees more", () => {
    const stalled = withPitch((pitch, at) =>
      pitch + (session.tow[at]!.setSpeed === 3.6 ? 2 * DEGREE : 0)
    );
    const { liftCurve } = stalled.designs[0]!;
    expect(liftCurve!.fallsOff!.rows).toEqual([2, 20]);
    expect(codes(stalled)).toContain("lift-falls-off");
  });

  it("is not there without pitch, without a word; with two pitches or equal ones, with one", () => {
    const none = withPitch(() => null);
    expect(none.designs[0]!.liftCurve).toBeNull();
    expect(codes(none)).toEqual([]);
    const two = withPitch((pitch, at) => at < 2 ? pitch : null);
    expect(two.designs[0]!.liftCurve).toBeNull();
    expect(codes(two)).toEqual(["no-lift-curve"]);
    expect(codes(withPitch(() => 3 * DEGREE))).toEqual(["no-lift-curve", "no-lift-curve"]);
  });

  it("is told where the speeds carry no drag law", () => {
    const slow = compareTows({
      ...session,
      tow: session.tow.filter((one) => one.sweep === "1").slice(0, 4),
    });
    expect(slow.answer.designs[0]!.law).toBeNull();
    expect(slow.answer.designs[0]!.liftCurve).not.toBeNull();
  });
});
