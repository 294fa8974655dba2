import { describe, expect, it } from "vitest";
import type { TowPoint } from "lakeproof/base/session.ts";
import { checkSession } from "lakeproof/check/check-session.ts";
import { checkWindows } from "lakeproof/check/check-windows.ts";
import { seededRandom } from "lakeproof/numeric/random.ts";
import { exampleTow } from "../support/towed-world.ts";

const { session } = exampleTow("two tows");
const first = session.tow[0]!;

interface Plan {
  readonly seconds?: number;
  /** m/s2 */
  readonly drift?: number;
  readonly seed?: string;
  readonly change?: (sample: TowPoint, k: number) => Partial<TowPoint> | null;
}

/** One reading as samples at 10 Hz, in rows 2 and on, with noise that remembers 0.3 s. */
function windowOf({ seconds = 8, drift = 0, seed = "window", change = () => ({}) }: Plan = {}) {
  const random = seededRandom(seed);
  const share = Math.exp(-0.1 / 0.3);
  let noise = random.normal();
  return Array.from({ length: seconds * 10 }, (_, k): TowPoint => {
    noise = share * noise + Math.sqrt(1 - share ** 2) * random.normal();
    const speed = first.speed! + drift * (k / 10 - seconds / 2) + 0.03 * noise;
    return { ...first, row: k + 2, time: 500 + k / 10, window: null, speed };
  }).flatMap((sample, k) => {
    const changed = change(sample, k);
    return changed === null ? [] : [{ ...sample, ...changed }];
  });
}

const told = (plan: Plan) =>
  checkWindows({ ...session, tow: windowOf(plan) }).map(({ code, row, column }) => [
    code,
    row,
    column,
  ]);

describe("raw windows of a logger", () => {
  it("that are whole, long and steady bring no word, nor do means of one row", () => {
    expect(told({})).toEqual([]);
    expect(checkWindows(session)).toEqual([]);
  });

  it.each(
    [
      ["too short", { seconds: 3 }, ["short-window", 2, "time"]],
      ["of two samples", { change: (_, k) => k < 2 ? {} : null }, ["few-samples", 2, "time"]],
      [
        "with a clock that jumps back",
        { change: (one, k) => k === 40 ? { time: one.time! - 2 } : {} },
        ["time-not-rising", 42, "time"],
      ],
      [
        "with the same time twice",
        { change: (one, k) => k === 40 ? { time: one.time! - 0.1 } : {} },
        ["time-not-rising", 42, "time"],
      ],
      ["with a gap", { change: (_, k) => k > 39 && k < 50 ? null : {} }, [
        "window-gap",
        52,
        "time",
      ]],
      ["that speeds up", { drift: 0.06 }, ["drifting-window", 2, "speed"]],
      ["that slows down", { drift: -0.06 }, ["drifting-window", 2, "speed"]],
      [
        "with a sample without time",
        { change: (_, k) => k === 7 ? { time: null } : {} },
        ["sample-without-time", 9, "time"],
      ],
    ] satisfies [string, Plan, unknown[]][],
  )("%s are told with row and column", (_, plan, want) => {
    expect(told(plan)).toEqual([want]);
  });

  it("left out by the user are not looked at", () => {
    expect(told({ seconds: 3, change: () => ({ leaveOut: "wake" }) })).toEqual([]);
  });

  it("that hold their speed are hardly ever called drifting, those at twice the limit nearly always are", () => {
    const share = (drift: number) => {
      let called = 0;
      for (let i = 0; i < 400; i++) {
        if (told({ drift, seed: `drift ${i}` }).length > 0) called++;
      }
      return called / 400;
    };
    // Measured 0 and 100 % of windows of 8 s with 0.03 m/s of noise.
    expect(share(0)).toBeLessThan(0.01);
    expect(share(0.06)).toBeGreaterThan(0.97);
  });

  it("are part of what a session is looked through for", () => {
    const found = checkSession({ ...session, tow: windowOf({ seconds: 3 }) });
    expect(found.map((one) => one.code)).toContain("short-window");
  });
});
