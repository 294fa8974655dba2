import { describe, expect, it } from "vitest";
import type { Session, TowPoint } from "lakeproof/base/session.ts";
import { compareTows } from "lakeproof/decide/compare-tows.ts";
import { exampleTow } from "../support/towed-world.ts";
import { withTow } from "../support/with-tow.ts";

const { session } = exampleTow("two tows");

const codes = (one: Session) => compareTows(one).answer.findings.map((two) => two.code);

describe("findings that leave the law standing", () => {
  it.each([
    ["line-pulls-down", () => ({ lineAngle: -0.14 })],
    ["no-line-angle", () => ({ lineAngle: null })],
    ["angle-in-radians", (one: TowPoint) => ({ lineAngle: one.lineAngle! * Math.PI / 180 })],
    ["steep-line", () => ({ lineAngle: 0.8 })],
    ["speed-over-ground", () => ({ speedOver: "ground" as const })],
    ["not-steady", (one: TowPoint) => ({ speedChange: one.row === 5 ? 0.02 : 0 })],
    [
      "line-on-other-side",
      (one: TowPoint) => one.row === 5 ? { lineAngle: -one.lineAngle! } : {},
    ],
    ["speed-strays", (one: TowPoint) => one.row === 5 ? { setSpeed: one.setSpeed! * 0.75 } : {}],
    ["depth-unknown", () => ({ depth: null })],
    ["single-sweep", () => ({ sweep: null })],
    ["no-repeats", (one: TowPoint) => ({ setSpeed: one.speed })],
    [
      "wild-scatter",
      (one: TowPoint) => ({ lineTension: one.lineTension! * (1 + (one.row % 2 ? 0.08 : -0.08)) }),
    ],
  ])("are told: %s", (code, change) => {
    expect(codes(session)).not.toContain(code);
    expect(codes(withTow(change, session))).toContain(code);
    expect(compareTows(withTow(change, session)).answer.designs[0]!.law).not.toBeNull();
  });

  it("let neither a line that is nearly level nor a current raise a word", () => {
    const level = withTow((one) => ({ lineAngle: one.row === 5 ? -0.015 : 0.03 }), session);
    expect(codes(level)).not.toContain("line-on-other-side");
    const current = withTow((one) => ({ setSpeed: one.speed! + (one.row % 2 ? 0.5 : 0) }), session);
    expect(codes(current)).not.toContain("speed-strays");
    const misnamed = withTow((one) => ({ setSpeed: one.setSpeed! * 1.9 }), session);
    expect(codes(misnamed)).not.toContain("speed-strays");
  });

  it("name the row of a slip of the pen: a speed, a sign", () => {
    const slip = withTow(
      (one) =>
        one.row === 7
          ? { speed: one.speed! + 3, setSpeed: one.setSpeed! }
          : one.row === 9
          ? { lineAngle: -one.lineAngle! }
          : {},
      session,
    );
    const found = compareTows(slip).answer.findings;
    expect(found.find((one) => one.code === "speed-strays")).toMatchObject({
      row: 7,
      column: "speed",
    });
    expect(found.find((one) => one.code === "line-on-other-side")!.row).toBe(9);
  });

  it("name readings that do not go with the others, and the answer without them", () => {
    const first = session.tow.find((one) => one.design === "alder")!;
    const spike = withTow(
      (one) => one.row === 10 ? { lineTension: one.lineTension! * 1.25 } : {},
      session,
    );
    const odd = compareTows(spike).answer.findings.find((one) => one.code === "stands-out");
    expect(odd).toMatchObject({ severity: "warning", row: 10 });
    expect(odd!.what).toMatch(/without it: \d+\.\d, with it: \d+\.\d/);
    const stalling = withTow(
      (one) =>
        one.design === "alder" && one.setSpeed === first.setSpeed
          ? { lineTension: one.lineTension! * 1.2 }
          : {},
      session,
    );
    const slow = compareTows(stalling).answer.findings.find((one) =>
      one.code === "slowest-drag-more"
    );
    expect(slow!.what).toMatch(/alder drag \d+\.\d N more/);
    // In "two tows" repeats agree better by chance, as in one design of twenty.
    const calm = exampleTow("third").session;
    const speeds = [...new Set(calm.tow.map((one) => one.setSpeed!))].sort();
    const waves = withTow((one) => ({
      lineTension: one.lineTension! * (speeds.indexOf(one.setSpeed!) % 2 ? 1.05 : 0.95),
    }), calm);
    expect(codes(waves)).toContain("repeats-agree-better");
    for (
      const code of ["stands-out", "slowest-drag-more", "repeats-agree-better", "rules-the-law"]
    ) {
      expect(codes(calm)).not.toContain(code);
    }
  });

  it("name the reading that decides the law alone", () => {
    const alder = session.tow.filter((one) => one.design === "alder");
    const slowest = Math.min(...alder.map((one) => one.speed!));
    const near = alder.filter((one) => one.speed! > 1.35 * slowest);
    const lone = { ...session, tow: [alder.find((one) => one.speed === slowest)!, ...near] };
    const told = compareTows(lone).answer.findings.find((one) => one.code === "rules-the-law");
    expect(told!.row).toBe(alder.find((one) => one.speed === slowest)!.row);
  });

  it("say that more readings will not help, and what would", () => {
    const many = exampleTow("many", { sweeps: 8 }).session;
    const told = compareTows(many).answer.findings.find((one) =>
      one.code === "more-points-no-help"
    );
    expect(told!.wanted).toMatch(/known weights/);
  });

  it("tell no lift drag factor where the depth is not known", () => {
    expect(compareTows(withTow(() => ({ depth: null }), session)).answer.designs[0]!.law!.K)
      .toBeNull();
    expect(compareTows(session).answer.designs[0]!.law!.K).toBeGreaterThan(0);
  });
});
