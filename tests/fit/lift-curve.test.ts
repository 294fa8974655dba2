import { describe, expect, it } from "vitest";
import { liftFallsOff, liftLine, type LiftPoint } from "lakeproof/fit/lift-curve.ts";
import { seededRandom } from "lakeproof/numeric/random.ts";

const DEGREE = Math.PI / 180;

/** Points on a true line of 4 a radian, nought at -2 degrees, each pitch twice; `bent` takes lift off the steepest. */
function drawn(
  name: string,
  { uPitch = 0.4 * DEGREE, uLift = 0.012, bent = 0 } = {},
): LiftPoint[] {
  const random = seededRandom(name);
  return [2, 3, 4, 5, 6, 7, 8].flatMap((degrees, i) =>
    [0, 1].map(() => ({
      pitch: degrees * DEGREE + uPitch * random.normal(),
      pitchUncertainty: uPitch,
      liftCoefficient: 4 * (degrees + 2) * DEGREE - (i === 6 ? bent : 0) + uLift * random.normal(),
      liftCoefficientUncertainty: uLift,
      group: String(i),
    }))
  );
}

describe("lift against pitch", () => {
  it("finds the slope without bias where least squares of lift on pitch is flat by a twentieth", () => {
    let york = 0, plain = 0;
    const count = 400;
    for (let i = 0; i < count; i++) {
      const points = drawn(`bias ${i}`, { uPitch: 0.5 * DEGREE });
      const line = liftLine(points);
      if (!line.ok) throw new Error(line.reason);
      york += line.slope / count;
      const x = points.reduce((sum, one) => sum + one.pitch, 0) / points.length;
      plain += points.reduce((sum, one) => sum + (one.pitch - x) * one.liftCoefficient, 0) /
        points.reduce((sum, one) => sum + (one.pitch - x) ** 2, 0) / count;
    }
    // Mean of 400 with a scatter of 0.3 each: 0.015, twice over.
    expect(Math.abs(york - 4)).toBeLessThan(0.04);
    expect(plain).toBeLessThan(3.85);
  });

  it("holds slope and pitch of no lift in its intervals as often as it says", () => {
    let slope = 0, zero = 0;
    const count = 500;
    for (let i = 0; i < count; i++) {
      const line = liftLine(drawn(`cover ${i}`));
      if (!line.ok) throw new Error(line.reason);
      // t of 12 degrees of freedom.
      const t = 2.179;
      if (Math.abs(line.slope - 4) < t * Math.sqrt(line.slopeVariance)) slope++;
      const far = line.zeroLiftPitch - line.centre;
      const u = Math.sqrt(line.levelVariance + far ** 2 * line.slopeVariance) / line.slope;
      if (Math.abs(line.zeroLiftPitch + 2 * DEGREE) < t * u) zero++;
    }
    // k is never under 1, so that a little over 95 % is right; 500 draws: +-1 % standard.
    for (const held of [slope / count, zero / count]) {
      expect(held).toBeGreaterThan(0.93);
      expect(held).toBeLessThan(0.995);
    }
  });

  it("speaks of a stall in less than 3 of 100 clean sets, and in most where a tenth of the lift is gone", () => {
    const rate = (bent: number) => {
      let told = 0;
      for (let i = 0; i < 400; i++) {
        if (liftFallsOff(drawn(`stall ${bent} ${i}`, { bent }))!.pValue < 0.01) told++;
      }
      return told / 400;
    };
    // One in a hundred by design.
    expect(rate(0)).toBeLessThan(0.03);
    expect(rate(0.12)).toBeGreaterThan(0.7);
  });

  it("refuses two pitches, and pitches that spread no more than they are uncertain", () => {
    const few = drawn("few").slice(0, 2);
    expect(liftLine(few)).toMatchObject({
      ok: false,
      reason: expect.stringMatching(/there are 2/),
    });
    const same = drawn("same").map((one) => ({ ...one, pitch: 3 * DEGREE }));
    expect(liftLine(same)).toMatchObject({
      ok: false,
      reason: expect.stringMatching(/there are 1/),
    });
    const vague = drawn("vague", { uPitch: 2 * DEGREE });
    expect(liftLine(vague)).toMatchObject({
      ok: false,
      reason: expect.stringMatching(/spread by/),
    });
    expect(liftFallsOff(few)).toBeNull();
  });

  it("refuses lift that does not change with pitch: it is nought nowhere", () => {
    const level = drawn("level").map((one, i) => ({
      ...one,
      liftCoefficient: 0.5 + 0.01 * (-1) ** i,
    }));
    for (const points of [level, level.map((one) => ({ ...one, liftCoefficient: 0.5 }))]) {
      expect(liftLine(points))
        .toMatchObject({ ok: false, reason: expect.stringMatching(/does not change with pitch/) });
    }
  });
});
