import { Solver } from "odex";
import { describe, expect, it } from "vitest";
import { dormandPrinceStep } from "lakeproof/numeric/dormand-prince.ts";
import {
  followMotion,
  type MotionOptions,
  type RateOfChange,
} from "lakeproof/numeric/ordinary-differential-equation.ts";

/** The motion, or the test fails with the reason. */
function must(
  rate: RateOfChange,
  span: { from: number; to: number; start: number[] },
  options?: MotionOptions,
) {
  const motion = followMotion(rate, span, options);
  if (!motion.ok) throw new Error(motion.reason);
  return motion;
}

const swing: RateOfChange = (_time, [x, v]) => [v!, -x!];
const turn = { from: 0, to: 2 * Math.PI, start: [1, 0] };

describe("Dormand and Prince's step", () => {
  it("has an error that falls with the sixth power of its length, its estimate with the fifth", () => {
    // y' = y cos t, y = exp(sin t).
    const rate: RateOfChange = (t, [y]) => [y! * Math.cos(t)];
    const at = (length: number) => {
      const step = dormandPrinceStep(rate, {
        time: 0.4,
        state: [1],
        slope: rate(0.4, [1]),
        length,
      });
      const exact = Math.exp(Math.sin(0.4 + length) - Math.sin(0.4));
      return [Math.abs(step.end[0]! - exact), Math.abs(step.error[0]!)] as const;
    };
    const [coarse, fine] = [at(0.2), at(0.1)];
    expect(Math.log2(coarse[0] / fine[0])).toBeGreaterThan(5.6);
    expect(Math.log2(coarse[1] / fine[1])).toBeGreaterThan(4.6);
  });
});

describe("a motion followed through time", () => {
  it("comes back after a full swing, closer with a tighter tolerance", () => {
    const miss = (relativeTolerance: number) => {
      const { states } = must(swing, turn, { relativeTolerance });
      const [x, v] = states[states.length - 1]!;
      return Math.hypot(x! - 1, v!);
    };
    expect(miss(1e-6)).toBeLessThan(1e-5);
    expect(miss(1e-12)).toBeLessThan(1e-11);
  });

  it("is known between steps to about the accuracy of the steps", () => {
    const { at } = must(swing, turn, { relativeTolerance: 1e-9 });
    for (let t = 0; t <= 6.28; t += 0.1) {
      expect(Math.abs(at(t)[0]! - Math.cos(t))).toBeLessThan(2e-8);
    }
    expect(() => at(7)).toThrow(RangeError);
    expect(at(turn.to)[0]).toBeCloseTo(1, 8);
  });

  it("agrees with odex, an extrapolation solver, on a swing with cubic stiffness and damping", () => {
    const rate: RateOfChange = (t, [x, v]) => [v!, Math.cos(t) - 0.2 * v! - x! ** 3];
    const solver = new Solver(2);
    solver.absoluteTolerance = solver.relativeTolerance = 1e-12;
    const theirs = solver.solve((t: number, y: number[]) => [...rate(t, y)], 0, [1, 0], 10).y;
    const { states } = must(rate, { from: 0, to: 10, start: [1, 0] }, { relativeTolerance: 1e-11 });
    // Errors of the steps grow on the way; both are good to about 1e-9.
    states[states.length - 1]!.forEach((value, i) => expect(value).toBeCloseTo(theirs[i]!, 8));
  });

  it("closes the Arenstorf orbit (Hairer, Nørsett and Wanner, II.0; constants from memory)", () => {
    const small = 0.012277471;
    const orbit: RateOfChange = (_t, [x, y, vx, vy]) => {
      const earth = Math.hypot(x! + small, y!) ** 3;
      const moon = Math.hypot(x! - 1 + small, y!) ** 3;
      return [
        vx!,
        vy!,
        x! + 2 * vy! - (1 - small) * (x! + small) / earth - small * (x! - 1 + small) / moon,
        y! - 2 * vx! - (1 - small) * y! / earth - small * y! / moon,
      ];
    };
    const start = [0.994, 0, 0, -2.0015851063790825];
    const { states } = must(orbit, { from: 0, to: 17.065216560157964, start }, {
      relativeTolerance: 1e-13,
      absoluteTolerance: 1e-13,
    });
    // The orbit magnifies errors about a hundred million times near the moon.
    const [x, y] = states[states.length - 1]!;
    expect(Math.hypot(x! - start[0]!, y!)).toBeLessThan(1e-3);
  });

  it("runs backwards as well", () => {
    const { states } = must(swing, { from: 0, to: -1, start: [1, 0] });
    expect(states[states.length - 1]![0]).toBeCloseTo(Math.cos(1), 8);
  });

  it("tells when events happen, each way, and which one ended it", () => {
    const events = [
      { name: "any", of: (_t: number, [x]: readonly number[]) => x! },
      {
        name: "down",
        of: (_t: number, [x]: readonly number[]) => x!,
        direction: "falling" as const,
      },
      { name: "late", of: (t: number) => t - 8, ends: true },
    ];
    const motion = must(swing, { from: 0, to: 20, start: [1, 0] }, { events });
    const when = (name: string) =>
      motion.events.filter((one) => one.name === name).map((one) => one.time);
    when("any").forEach((t, i) => expect(t).toBeCloseTo(Math.PI * (i + 0.5), 8));
    expect(when("any")).toHaveLength(3);
    expect(when("down")).toHaveLength(2);
    expect(motion.endedBy).toBe("late");
    expect(motion.times[motion.times.length - 1]).toBeCloseTo(8, 10);
    expect(motion.states[motion.states.length - 1]![0]).toBeCloseTo(Math.cos(8), 7);
  });

  it("does not count a start on the event as the event", () => {
    const events = [{ name: "ground", of: (_t: number, [h]: readonly number[]) => h!, ends: true }];
    const throwUp: RateOfChange = (_t, [_h, v]) => [v!, -10];
    const { events: happened } = must(throwUp, { from: 0, to: 9, start: [0, 20] }, { events });
    expect(happened).toHaveLength(1);
    expect(happened[0]!.time).toBeCloseTo(4, 10);
  });

  it("fails with a reason where it can't go on, never with NaN", () => {
    const blowUp: RateOfChange = (_t, [y]) => [y! * y!];
    expect(followMotion(blowUp, { from: 0, to: 2, start: [1] })).toMatchObject({ ok: false });
    const ends: RateOfChange = (_t, [y]) => [-1 / Math.sqrt(y!)];
    expect(followMotion(ends, { from: 0, to: 2, start: [1] })).toMatchObject({ ok: false });
    expect(followMotion(() => [NaN], { from: 0, to: 1, start: [1] })).toMatchObject({ ok: false });
    expect(followMotion(swing, turn, { mostSteps: 3 })).toMatchObject({ ok: false });
    expect(() => followMotion(swing, { from: 0, to: NaN, start: [1, 0] })).toThrow(RangeError);
  });
});
