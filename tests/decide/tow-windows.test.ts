import { describe, expect, it } from "vitest";
import type { Session, TowPoint } from "lakeproof/base/session.ts";
import { answerable } from "lakeproof/check/answerable.ts";
import { compareTows } from "lakeproof/decide/compare-tows.ts";
import { reduceWindows } from "lakeproof/decide/tow-windows.ts";
import { seededRandom } from "lakeproof/numeric/random.ts";
import { exampleTow } from "../support/towed-world.ts";

const example = exampleTow("two tows", { sweeps: 2 });
const { crafts } = example;
const session: Session = {
  ...example.session,
  tow: example.session.tow.filter((one) => one.design === "alder"),
};

interface Logger {
  readonly seconds?: number;
  /** m/s2 in every window. */
  readonly drift?: number;
  /** Samples of one point changed. */
  readonly change?: (sample: TowPoint, k: number) => Partial<TowPoint> | null;
}

/** Every reading as the samples of a logger at 10 Hz that remembers 0.3 s. */
function logged({ seconds = 8, drift = 0, change = () => ({}) }: Logger = {}): Session {
  const random = seededRandom("logger");
  const share = Math.exp(-0.1 / 0.3);
  const noise = () => {
    let last = random.normal();
    return () => last = share * last + Math.sqrt(1 - share ** 2) * random.normal();
  };
  let row = 1;
  const tow = session.tow.flatMap((one, i) => {
    const [speed, pull] = [noise(), noise()];
    return Array.from({ length: seconds * 10 }, (_, k): TowPoint => {
      const from = (k + 0.5) / 10 - seconds / 2;
      return {
        ...one,
        row: ++row,
        window: null,
        time: 1000 + 60 * i + k / 10,
        speed: one.speed! + drift * from + 0.03 * speed(),
        // A craft of 85 kg that speeds up pulls as much more.
        lineTension: one.lineTension! + 85 * drift + 1.5 * pull(),
      };
    }).flatMap((sample, k) => {
      const changed = i === 3 ? change(sample, k) : {};
      return changed === null ? [] : [{ ...sample, ...changed }];
    });
  });
  return { ...session, tow };
}

/** Answers are kept: many tests ask for the same one. */
const answers = new Map<Session, ReturnType<typeof compareTows>["answer"]>();
function answerOf(one: Session) {
  const kept = answers.get(one) ?? compareTows(one).answer;
  answers.set(one, kept);
  return kept;
}

const codes = (one: Session) => answerOf(one).findings.map((two) => two.code);
const fourth = (one: Session) => answerOf(one).designs[0]!.points[3]!;

const clean = logged();

describe("raw windows of a logger", () => {
  const raw = clean;
  const answer = answerOf(raw);

  it("become one reading each, as if they had been averaged by hand", () => {
    const plain = answerOf(session);
    answer.designs.forEach((one, i) => {
      expect(one.points.map((two) => two.point)).toEqual(
        plain.designs[i]!.points.map((two) => two.point),
      );
      // 0.03 m/s over the root of 8/0.6 windows' worth of samples, in 5 m/s; drag by 0.4 N in 60.
      one.points.forEach((two, j) => {
        expect(Math.abs(two.speed! - plain.designs[i]!.points[j]!.speed!)).toBeLessThan(0.04);
      });
      const was = plain.designs[i]!.bestLiftToDrag!.value;
      expect(Math.abs(one.bestLiftToDrag!.value / was - 1)).toBeLessThan(0.02);
      expect(one.bestLiftToDrag!.low!).toBeLessThan(crafts[i]!.best.liftToDrag);
      expect(one.bestLiftToDrag!.high!).toBeGreaterThan(crafts[i]!.best.liftToDrag);
    });
  });

  it("say how many samples and how steady", () => {
    const windows = answer.designs.flatMap((one) => one.points.map((two) => two.window!));
    expect(windows).toHaveLength(session.tow.length);
    for (const one of windows) {
      expect(one.samples).toBe(80);
      expect(one.given).toBeCloseTo(8, 9);
      expect(one.duration).toBeGreaterThanOrEqual(5);
    }
    const middle = (of: (one: typeof windows[0]) => number) =>
      windows.map(of).sort((a, b) => a - b)[windows.length >> 1]!;
    // True: 0.03 m/s, 1.5 N, 0.3 s; 14 windows tell a scatter to some 7 % and a memory to 20 %.
    expect(middle((one) => one.speedScatter) / 0.03).toBeCloseTo(1, 0);
    expect(middle((one) => one.tensionScatter) / 1.5).toBeCloseTo(1, 0);
    expect(Math.abs(middle((one) => one.speedCorrelationTime) - 0.3)).toBeLessThan(0.1);
  });

  it("raise no finding when they are clean", () => {
    const found = codes(raw).filter((one) => !codes(session).includes(one));
    expect(found.filter((one) => one !== "window-cut")).toEqual([]);
  });

  it("count as readings, not as samples", () => {
    const has = (one: Session) => answerable(one).find((two) => two.question === "tow")!.has;
    expect(has(raw)).toBe(has(session));
  });

  it("leave rows without a time alone", () => {
    expect(reduceWindows(session).session).toBe(session);
  });
});

describe("a window that drifts", () => {
  it("has the pull taken off that sped the craft up, and is warned of", () => {
    const drifting = logged({ drift: 0.02 });
    expect(codes(drifting)).toContain("not-steady");
    expect(codes(clean)).not.toContain("not-steady");
    const best = (one: Session) => answerOf(one).designs[0]!.bestLiftToDrag!.value;
    // 85 kg x 0.02 m/s2 is 1.7 N in 60; what is left is noise of the slopes.
    expect(Math.abs(best(drifting) / best(clean) - 1)).toBeLessThan(0.015);
  });

  it("is left out beyond 0.03 m/s2, with the reason", () => {
    const steep = logged({ change: (one, k) => ({ speed: one.speed! + 0.06 * k / 10 }) });
    expect(fourth(steep)).toMatchObject({
      used: false,
      reason: expect.stringMatching(/drifts by 0\.0\d+/),
    });
    const told = answerOf(steep).findings.find((one) => one.code === "readings-left-out");
    expect(told!.what).toMatch(/drifts by/);
    // A row that states its drift is held to the same.
    const stated = {
      ...session,
      tow: session.tow.map((one, i) => i === 3 ? { ...one, speedChange: 0.05 } : one),
    };
    expect(fourth(stated).reason).toMatch(/drifts by 0.050 m\/s2/);
  });

  it("is cut to its steady part where it has one", () => {
    const early = logged({
      seconds: 12,
      change: (one, k) => ({ speed: one.speed! - 0.3 * Math.max(0, 3 - k / 10) }),
    });
    const { window, speed } = fourth(early);
    expect(window!.used).toBeLessThan(100);
    expect(window!.duration).toBeGreaterThanOrEqual(5);
    expect(codes(early)).toContain("window-cut");
    const settled = session.tow[3]!.speed!;
    expect(Math.abs(speed! - settled)).toBeLessThan(0.06);
  });
});

describe("windows with something wrong", () => {
  it.each<[string, Logger]>([
    ["short-window", { seconds: 4 }],
    ["window-gap", { change: (one, k) => k > 60 ? { time: one.time! + 3 } : {} }],
    ["samples-passed-over", { change: (_, k) => k % 9 === 4 ? { lineTension: null } : {} }],
    ["time-not-rising", { change: (one, k) => k === 20 ? { time: one.time! - 1 } : {} }],
  ])("are told: %s", (code, logger) => {
    expect(codes(clean)).not.toContain(code);
    expect(codes(logged(logger))).toContain(code);
  });

  it.each<[RegExp, Logger]>([
    [/time does not rise in row 26\d/, {
      change: (one, k) => k === 20 ? { time: one.time! - 1 } : {},
    }],
    [/its samples differ in set_speed/, { change: (_, k) => k === 9 ? { setSpeed: 9 } : {} }],
    [/2 whole samples/, { change: (_, k) => k > 1 ? null : {} }],
  ])("are left out with the reason where no mean can be had: %s", (reason, logger) => {
    const wrong = logged(logger);
    const point = fourth(wrong);
    expect(point).toMatchObject({
      used: false,
      window: null,
      reason: expect.stringMatching(reason),
    });
    expect(answerOf(wrong).designs[0]!.law).not.toBeNull();
  });

  it("use the longest part without a gap, and the samples that are whole", () => {
    const gap = fourth(logged({ change: (one, k) => k > 60 ? { time: one.time! + 3 } : {} }))
      .window!;
    expect(gap.used).toBeLessThanOrEqual(61);
    const holes = fourth(
      logged({ change: (_, k) => k > 70 ? { leaveOut: "rider looked round" } : {} }),
    );
    expect(holes.window!.used).toBeLessThanOrEqual(71);
    expect(holes.used).toBe(true);
    const out = fourth(logged({ change: () => ({ leaveOut: "rider fell" }) }));
    expect(out.reason).toBe("left out on purpose: rider fell");
  });
});
