import { describe, expect, it } from "vitest";
import type { Condition, Session, TowPoint } from "lakeproof/base/session.ts";
import { compareTows } from "lakeproof/decide/compare-tows.ts";
import { towCurrents } from "lakeproof/decide/tow-current.ts";
import { exampleTow } from "../support/towed-world.ts";

const HELD = { setSpeedOver: "water" as const };

/** Each set speed twice a sweep, one pass each way, in the order A B B A; speeds over ground in a current. */
function inCurrent(
  name: string,
  { at, half = 0 }: { readonly at: number; readonly half?: number },
  change: Partial<TowPoint> = {},
) {
  const { crafts, session } = exampleTow(name);
  const low = 1.12 * Math.max(...crafts.map((one) => one.stallSpeed));
  const speeds = Array.from({ length: 7 }, (_, i) => low * (1 + i / 6)).flatMap((v) => [v, v]);
  const made = exampleTow(name, { speeds }).session;
  const last = made.tow.length - 1;
  const tow = made.tow.map((one, i) => {
    const sign = [1, -1, -1, 1][i % 4]!;
    const current = at + half * (2 * i / last - 1);
    return {
      ...one,
      direction: sign > 0 ? "down" : "up",
      speedOver: "ground" as const,
      speed: one.speed! + sign * current,
      ...change,
    };
  });
  return { crafts, session: { ...session, tow } as Session };
}

const codes = (one: Session) => towCurrents(one).findings.map((two) => two.code);

const float = (value: number, uncertainty: number | null = 0.02): Condition => ({
  row: 2,
  own: {},
  quantity: "current",
  value,
  unit: "m/s",
  uncertainty,
  statedAs: "standard",
  block: null,
  note: null,
});

describe("a current in speeds over ground", () => {
  const cases = [0.05, 0.15, 0.3].flatMap((at) => [{ at }, { at, half: 0.1 }]);

  it.each(cases)("comes back from passes both ways: %o", (truth) => {
    let [held, tides] = [0, 0];
    for (let i = 0; i < 10; i++) {
      const { session } = inCurrent(`current ${i}`, truth, HELD);
      const { answer } = towCurrents(session).blocks[0]!;
      expect(answer).toMatchObject({ towards: "down", origin: "passes", passes: 84 });
      const { low, high, standardUncertainty } = answer.speed!;
      // Speeds scatter by 2 % around what was held and are read to 1 %: 0.1 m/s over the root of 84.
      expect(standardUncertainty!).toBeLessThan(0.02);
      if (low! <= truth.at && truth.at <= high!) held++;
      const change = 2 * (truth.half ?? 0);
      if (answer.change!.low! <= change && change <= answer.change!.high!) tides++;
    }
    // 95 % intervals, ten fixed seeds each.
    expect(held).toBeGreaterThanOrEqual(8);
    expect(tides).toBeGreaterThanOrEqual(8);
  });

  it.each([{ at: 0.1 }, { at: -0.3 }, { at: 0.25, half: 0.15 }])(
    "leaves drag and best lift-to-drag where they truly are: %o",
    (truth) => {
      const inside: boolean[] = [];
      for (const name of ["current 0", "current 1"]) {
        const { crafts, session } = inCurrent(name, truth);
        const { answer } = compareTows(session);
        answer.designs.forEach((one, i) => {
          const craft = crafts[i]!;
          const holds = (q: { low: number | null; high: number | null } | null, true_: number) =>
            inside.push(q !== null && (q.low ?? 0) <= true_ && true_ <= (q.high ?? Infinity));
          holds(one.bestLiftToDrag, craft.best.liftToDrag);
          for (const { speed, drag } of one.dragAt) holds(drag, craft.drag(speed));
        });
      }
      // 95 % intervals of 32 numbers that hang together within a session.
      expect(inside.filter(Boolean).length / inside.length).toBeGreaterThan(0.85);
    },
  );

  it("would be missed if it were read as still water", () => {
    const { crafts, session } = inCurrent("current 0", { at: 0.3 });
    // All passes one way: a current of 0.3 m/s in every speed.
    const one = { ...session, tow: session.tow.filter(({ direction }) => direction === "down") };
    const still = { ...one, tow: one.tow.map((row) => ({ ...row, speedOver: "water" as const })) };
    const wrong = compareTows(still).answer.designs[0]!.speedOfBestLiftToDrag!;
    const stated = compareTows({ ...one, conditions: [float(0.3)] }).answer.designs[0]!;
    const truth = crafts[0]!.best.speed;
    expect(wrong.value - stated.speedOfBestLiftToDrag!.value).toBeGreaterThan(0.2);
    expect(Math.abs(stated.speedOfBestLiftToDrag!.value / truth - 1)).toBeLessThan(0.05);
  });

  it("is part of the answer, and of what the uncertainty comes from", () => {
    const { session } = inCurrent("current 0", { at: 0.2 });
    const { answer, designs } = compareTows(session);
    expect(answer.current).toHaveLength(1);
    expect(answer.current[0]!.speed!.value).toBeCloseTo(0.2, 1);
    const names = designs[0]!.series!.shifts.map((one) => one.name);
    expect(names).toContain("current");
    expect(names).toContain("current's change");
    expect(names).toContain("speed zero");
    expect(codes(session)).toContain("current-taken-off");
    expect(codes(session)).not.toContain("speed-over-ground");
  });

  it("is nothing where speeds are through the water", () => {
    const { answer } = compareTows(exampleTow("two tows").session);
    expect(answer.current).toEqual([]);
    expect(answer.findings.filter((one) => one.column === "speed_over")).toEqual([]);
  });

  it("turns round with the words for the two ways", () => {
    const { session } = inCurrent("current 0", { at: 0.2 });
    const renamed = (down: string, up: string) =>
      towCurrents({
        ...session,
        tow: session.tow.map((one) => ({
          ...one,
          direction: one.direction === "down" ? down : up,
        })),
      }).blocks[0]!.answer;
    const here = renamed("down", "up");
    // The first word in the table takes the place of "down"; the first pass ran down.
    expect(renamed("East", "west")).toEqual({ ...here, towards: "east" });
    expect(renamed("up", "down").speed!.value).toBeCloseTo(-here.speed!.value, 12);
  });
});

describe("a current that nobody knows", () => {
  it("stays open where passes both ways read alike and nobody says what was held", () => {
    const alike = inCurrent("current 1", { at: 0 });
    const { answer } = compareTows(alike.session);
    expect(answer.current).toMatchObject([{ speed: null, origin: null, passes: 84 }]);
    expect(codes(alike.session)).toContain("current-not-told");
    // Said to be held through the water it is told: none.
    const still = inCurrent("current 1", { at: 0 }, HELD).session;
    expect(Math.abs(towCurrents(still).blocks[0]!.answer.speed!.value)).toBeLessThan(0.04);
    expect(codes(still)).not.toContain("current-not-told");
  });

  it("is not told by passes whose speed over ground was held", () => {
    const { session } = inCurrent("current 1", { at: 0.2 }, { setSpeedOver: "ground" });
    expect(towCurrents(session).blocks[0]!.answer).toMatchObject({ speed: null, passes: 0 });
  });

  it("hardly counts where both ways were towed, and counts in full where one was", () => {
    const { session } = inCurrent("current 1", { at: 0 });
    const part = (one: Session) => {
      const { series } = compareTows(one).designs[0]!;
      const { fits: [plus, minus] } = series!.shifts.find((two) => two.name === "current")!;
      return Math.abs(Math.log(plus.referenceSpeed / minus.referenceSpeed)) / 2;
    };
    const down = { ...session, tow: session.tow.filter((one) => one.direction === "down") };
    expect(part(down)).toBeGreaterThan(0.02);
    expect(part(session)).toBeLessThan(0.002);
  });

  it("is allowed for where some passes have no direction", () => {
    const { session } = inCurrent("current 1", { at: 0.2 });
    const some = {
      ...session,
      tow: session.tow.map((one, i) => i < 4 ? { ...one, direction: null } : one),
    };
    expect(codes(some)).toContain("pass-without-direction");
    expect(codes(session)).not.toContain("pass-without-direction");
    const names = compareTows(some).designs[0]!.series!.shifts.map((one) => one.name);
    expect(names).toContain("current without direction");
  });
});

describe("a drifting float", () => {
  const { session } = inCurrent("current 2", { at: 0.2 });

  it("joins the passes where both agree", () => {
    const [both] = towCurrents({ ...session, conditions: [float(0.19)] }).blocks;
    const [alone] = towCurrents(session).blocks;
    expect(both!.answer.origin).toBe("both");
    expect(both!.standardUncertainty).toBeLessThan(alone!.standardUncertainty);
    expect(both!.value).toBeGreaterThan(Math.min(0.19, alone!.value));
    expect(both!.value).toBeLessThan(Math.max(0.19, alone!.value));
  });

  it("counts where they do not, with the difference as a doubt, and says so", () => {
    const wrong = { ...session, conditions: [float(-0.2)] };
    const [one] = towCurrents(wrong).blocks;
    expect(one).toMatchObject({ value: -0.2, answer: { origin: "float" } });
    expect(one!.standardUncertainty).toBeGreaterThan(0.1);
    expect(codes(wrong)).toContain("current-disagrees");
    expect(codes({ ...session, conditions: [float(0.19)] })).not.toContain("current-disagrees");
  });

  it("serves alone, with a usual uncertainty where none is stated", () => {
    const oneWay = { ...session, tow: session.tow.filter((row) => row.direction === "up") };
    const [told] = towCurrents({ ...oneWay, conditions: [float(0.2, null)] }).blocks;
    expect(told).toMatchObject({ value: 0.2, standardUncertainty: 0.03, slope: 0 });
  });
});
