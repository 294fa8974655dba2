import { describe, expect, it } from "vitest";
import type { Quantity } from "lakeproof/base/quantity.ts";
import type { Session } from "lakeproof/base/session.ts";
import { compareTows } from "lakeproof/decide/compare-tows.ts";
import { seededRandom } from "lakeproof/numeric/random.ts";
import { glideTraces, type TracePlan } from "../support/traced-world.ts";
import { exampleTow } from "../support/towed-world.ts";

const PLAN: TracePlan = {
  runs: 6,
  rate: 10,
  noise: 0.05,
  correlation: 0.5,
  process: 0.02,
  shared: true,
  launch: [1.25, 1.45],
  seconds: 5,
};

const { crafts, session } = exampleTow("two tows");

/** The example's tows, with glides of both designs. */
function glided(plan: Partial<TracePlan> = {}, name = "more glides"): Session {
  const random = seededRandom(name);
  const [one, two] = crafts.map((craft, i) =>
    glideTraces(craft, { ...PLAN, ...plan }, random, 1 + 100 * i)
  );
  return {
    ...session,
    glides: [...one!.glides, ...two!.glides],
    traces: [...one!.traces, ...two!.traces],
  };
}

const holds = (q: Quantity, truth: number) =>
  (q.low === null || q.low <= truth) && (q.high === null || truth <= q.high);

describe("speed traces beside a tow", () => {
  const { answer, designs } = compareTows(glided());

  it("give a law that holds the truth, in the words of the tow's", () => {
    answer.designs.forEach((one, i) => {
      const traces = one.fromTraces!;
      expect(traces.traces.every((use) => use.used)).toBe(true);
      expect(holds(traces.bestLiftToDrag!, crafts[i]!.best.liftToDrag)).toBe(true);
      expect(holds(traces.speedOfBestLiftToDrag!, crafts[i]!.best.speed)).toBe(true);
      for (const { speed, drag } of traces.dragAt) {
        expect(holds(drag, crafts[i]!.drag(speed))).toBe(true);
      }
      const { law } = traces;
      expect(Math.abs(law.lift / one.law!.lift - 1)).toBeLessThan(1e-12);
      expect(traces.uncertaintyShares.reduce((sum, share) => sum + share.share, 0)).toBeCloseTo(
        1,
        9,
      );
    });
  });

  it("leave the tow's own numbers as they are", () => {
    const alone = compareTows(session).answer;
    expect(answer.designs.map(({ fromTraces: _, ...one }) => one)).toEqual(
      alone.designs.map(({ fromTraces: _, ...one }) => one),
    );
    expect(answer.comparisons).toEqual(alone.comparisons);
    expect(alone.designs.every((one) => one.fromTraces === null)).toBe(true);
    expect(alone.agreement).toEqual([]);
  });

  it("are held against the tow, and both are shown beside what they give together", () => {
    expect(answer.agreement.map((one) => `${one.design} ${one.quantity} ${one.kind}`)).toEqual(
      ["alder", "birch"].flatMap((name) => [
        `${name} bestLiftToDrag traces`,
        ...[0, 1, 2].map(() => `${name} drag traces`),
        `${name} drag glides`,
      ]),
    );
    for (const { en, tow, traces, combined } of answer.agreement) {
      expect(Math.abs(en)).toBeLessThanOrEqual(1);
      const [low, high] = [tow.value, traces.value].sort((a, b) => a - b);
      expect(combined!.value).toBeGreaterThanOrEqual(low!);
      expect(combined!.value).toBeLessThanOrEqual(high!);
    }
    const best = answer.agreement[0]!;
    expect(best.tow).toEqual(answer.designs[0]!.bestLiftToDrag);
    expect(designs[0]!.answer.fromTraces).toEqual(answer.designs[0]!.fromTraces);
  });
});

describe("a tow in the slope of the boat's waves", () => {
  it("is not combined with the glides, and the first cause is named", () => {
    // Half a degree of slope under the foil: 15 % of the drag and more.
    const lifted = glided();
    const tow = lifted.tow.map((one) => ({ ...one, lineTension: one.lineTension! * 0.82 }));
    const { agreement, findings } = compareTows({ ...lifted, tow }).answer;
    expect(agreement.some((one) => one.en < -1 && one.combined === null)).toBe(true);
    const said = findings.filter((one) => one.code === "tow-and-glide-differ");
    expect(said[0]!.what).toMatch(/differ by \d+ % .* slope of the boat's waves, splash/);
  });
});

describe("traces without a tow", () => {
  const { answer } = compareTows({ ...glided(), tow: [] });

  it("answer for their designs, with an entry that has no tow", () => {
    expect(answer.designs.map((one) => one.design)).toEqual(["alder", "birch"]);
    expect(answer.designs[0]).toMatchObject({ law: null, dragAt: [], points: [] });
    expect(answer.designs[0]!.fromTraces!.bestLiftToDrag).not.toBeNull();
    expect(answer.comparisons).toEqual([]);
    expect(answer.findings.filter((one) => one.severity === "error")).toEqual([]);
  });
});

describe("traces that say less or something else", () => {
  const codes = (one: Session) => compareTows(one).answer.findings.map(({ code }) => code);

  it("that rise after the launch are told, kept, and both answers are given", () => {
    const pumped = glided({ pump: 0.9 });
    const said = compareTows(pumped).answer.findings.filter((one) => one.code === "pumped-trace");
    expect(said.map((one) => one.file)).toEqual(["traces/1.csv", "traces/101.csv"]);
    expect(said[0]!.what).toMatch(/kept in the law.* with all runs, .* without/);
    expect(codes(glided())).not.toContain("pumped-trace");
  });

  it("of one run say what can't be seen from one", () => {
    expect(codes(glided({ runs: 1 }))).toContain("one-trace");
  });

  it("that begin elsewhere than the run are told", () => {
    const one = glided();
    const glides = one.glides.map((row) => ({ ...row, launchSpeed: row.launchSpeed! + 0.8 }));
    expect(codes({ ...one, glides })).toContain("trace-and-launch-differ");
  });

  it("of runs left out, or without drop or distance, are left out with the reason", () => {
    const one = glided();
    const glides = one.glides.map((row, i) => ({
      ...row,
      leaveOut: i === 0 ? "weed" : null,
      drop: i === 1 ? null : row.drop,
      distance: i === 2 ? null : row.distance,
    }));
    const { answer } = compareTows({ ...one, glides });
    const reasons = answer.designs[0]!.fromTraces!.traces.map((use) => use.reason);
    expect(reasons.slice(0, 4)).toEqual([
      "left out on purpose: weed",
      "no drop, so its thrust is not known",
      "no distance, so its sink is not known",
      null,
    ]);
    expect(answer.findings.find((two) => two.code === "traces-left-out")!.count).toBe(3);
  });

  it("keep more doubt than the tow of a speed log of the same name", () => {
    const named = (quantity: string, instrument: string) => ({
      row: 2,
      own: {},
      quantity,
      instrument,
      uncertainty: 0.01,
      relative: true,
      statedAs: "standard" as const,
      kind: "common" as const,
      how: null,
    });
    const en = (second: string) =>
      compareTows({
        ...glided(),
        instruments: [named("speed", "paddle log"), named("trace_speed", second)],
      }).answer.agreement.findLast((one) => one.kind === "traces")!.en;
    // Fast, drag grows with the speed read in both: a log that both share can't part them.
    expect(Math.abs(en("paddle log"))).toBeGreaterThan(Math.abs(en("another log")));
  });
});
