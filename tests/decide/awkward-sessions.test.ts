import { describe, expect, it } from "vitest";
import { UsageError } from "lakeproof/base/errors.ts";
import { compareGlides } from "lakeproof/decide/compare-glides.ts";
import { allFinite, change, codes } from "./changed-session.ts";
import { design, glide, GLIDES, session } from "./invented-session.ts";

describe("awkward sessions", () => {
  it("cannot tell from two runs a side what seven tell", () => {
    const two = compareGlides([session({ glides: GLIDES.slice(0, 4) })]);
    const comparison = two.answer.comparisons[0]!;
    expect(comparison.verdict).toBe("cannot-tell-yet");
    expect(comparison.moreRuns!.now).toBeGreaterThan(comparison.moreRuns!.matchedLaunches!);
  });

  it("keeps an interval where all rows are equal, from the stated uncertainties", () => {
    const equal = session({
      glides: [1, 2, 3, 4, 5, 6, 7, 8].map((i) =>
        glide(String(i), i % 2 === 1 ? "alder" : "birch")
      ),
    });
    const { ratio } = compareGlides([equal]).answer.comparisons[0]!;
    expect(ratio!.high! / ratio!.low!).toBeGreaterThan(1.03);
  });

  it("gives a number but no interval for one run a side", () => {
    const one = compareGlides([session({ glides: GLIDES.slice(0, 2) })]);
    const comparison = one.answer.comparisons[0]!;
    expect(comparison.ratio!.value).toBeGreaterThan(0);
    expect(comparison.ratio!.low).toBeNull();
    expect(comparison.verdict).toBe("cannot-tell-yet");
    expect(codes(one)).toContain("one-run");
    expect(allFinite(one)).toBe(true);
  });

  it("says so few runs for two or three a side, with an interval all the same", () => {
    const two = compareGlides([session({ glides: GLIDES.slice(0, 4) })]);
    expect(codes(two)).toContain("few-runs");
    expect(two.answer.comparisons[0]!.ratio!.low).not.toBeNull();
  });

  it("refuses a claim where each design flew on its own day", () => {
    const days = compareGlides([change((one) => ({ block: one.design }))]);
    expect(days.answer.comparisons[0]!.verdict).toBe("refused");
    expect(days.answer.comparisons[0]!.ratio).toBeNull();
    expect(days.answer.findings.find((one) => one.code === "own-days")!.what).toContain(
      "the day may be the difference",
    );
  });

  it("takes the date for the block where no block is given", () => {
    const days = change((one) => ({ date: one.design === "alder" ? "2031-06-14" : "2031-06-15" }));
    expect(codes(compareGlides([days]))).toContain("own-days");
  });

  it("compares within blocks where both designs share them", () => {
    const shared = compareGlides([change((_, i) => ({ block: i < 6 ? "morning" : "evening" }))]);
    const comparison = shared.answer.comparisons[0]!;
    expect(comparison.ratio!.degreesOfFreedom).not.toBeNull();
    expect(comparison.raw!.designEffect).toBe(comparison.ratio!.value);
  });

  it("warns where a design has one run in each block and so no scatter of its own", () => {
    const single = compareGlides([session({
      glides: GLIDES.filter((one) => one.design === "alder" || Number(one.run) <= 4)
        .map((one, i) => ({ ...one, block: i % 3 === 0 ? "morning" : "evening" })),
    })]);
    const blocks = single.answer.findings.find((one) => one.code === "one-run-a-block")!;
    expect(blocks.what).toContain("birch has only one run in each block");
    const shared = compareGlides([change((_, i) => ({ block: i < 6 ? "morning" : "evening" }))]);
    expect(codes(shared)).not.toContain("one-run-a-block");
  });

  it("keeps a pumped run and gives both answers", () => {
    const pumped = compareGlides([
      change((one) => one.run === "8" ? { endSpeed: 3.9, ended: "stopped early" } : {}),
    ]);
    const finding = pumped.answer.findings.find((one) => one.code === "odd-run")!;
    expect(finding.what).toContain("without run 8");
    expect(finding.row).toBe(9);
    const use = pumped.answer.runs.find((one) => one.run === "8")!;
    expect(use.used).toBe(true);
    expect(use.reason).toContain("pumped");
  });

  it("flags a run that goes half as far again as the others", () => {
    const pushed = compareGlides([
      change((one) => one.run === "2" ? { distance: one.distance! * 1.8 } : {}),
    ]);
    expect(codes(pushed)).toContain("odd-run");
  });

  it("leaves out what the user leaves out, and lists it", () => {
    const left = compareGlides([
      change((one) => one.run === "4" ? { leaveOut: "wake of a boat" } : {}),
    ]);
    const use = left.answer.runs.find((one) => one.run === "4")!;
    expect(use.used).toBe(false);
    expect(use.reason).toContain("wake of a boat");
    expect(codes(left)).toContain("runs-left-out");
  });

  it("tells a reason that many runs share once, and names five of them", () => {
    const left = compareGlides([
      change((one) => one.design === "birch" ? { leaveOut: "a passing boat" } : {}),
    ]);
    const found = left.answer.findings.find((one) => one.code === "runs-left-out")!;
    expect(found.what.match(/a passing boat/g)).toHaveLength(1);
    expect(found.what).toMatch(/ and \d+ more \(/);
    const out = left.answer.runs.filter((one) => !one.used);
    expect(found.count).toBe(out.length);
  });

  it("names just the runs whose absence alone turns the verdict, as leaving each out by hand does", () => {
    let resting = 0;
    for (const count of [8, 10, 12, 14]) {
      const glides = GLIDES.slice(0, count);
      const verdict = (leaveOut: string | null) => {
        const rows = glides.map((one) => one.run === leaveOut ? { ...one, leaveOut: "try" } : one);
        // The launch stays the one of all runs, as it does in the verdict itself.
        const { answer } = compareGlides([session({ glides: rows })], launch);
        return answer.comparisons[0]!;
      };
      const { speed, drop, mass } = compareGlides([session({ glides })]).answer.launch!;
      const launch = { launchSpeed: speed, drop, mass };
      const whole = verdict(null);
      const turned = glides.filter((one) => verdict(one.run).verdict !== whole.verdict);
      expect(whole.restsOn).toEqual(expect.arrayContaining(turned.map((one) => one.run)));
      expect(whole.restsOn).toHaveLength(turned.length);
      expect(whole.fragile).toBe(turned.length > 0);
      resting += turned.length;
    }
    expect(resting).toBeGreaterThan(0);
  });

  it("says once what no table can show: a sensor for one design only, and what a probability starts from", () => {
    const { assumptions } = compareGlides([session(), session({ name: "other" })]);
    expect(assumptions.filter((one) => one.includes("served a single design"))).toHaveLength(1);
    // What holds for both sessions is told once, without a session's name.
    expect(assumptions.filter((one) => one.startsWith("Standard uncertainty of drop")))
      .toHaveLength(1);
    expect(assumptions.filter((one) => one.startsWith("other: "))).toEqual([]);
    expect(assumptions.filter((one) => one.includes("equally likely before"))).toHaveLength(1);
  });

  it("compares three designs from one launch and says what holds for all at once", () => {
    const third = GLIDES.filter((one) => one.design === "birch").map((one, i) =>
      glide(String(20 + i), "cedar", { ...one, run: String(20 + i), design: "cedar" })
    );
    const three = compareGlides([session({
      designs: [...session().designs, design("cedar", { span: 1.15, area: 0.17 })],
      glides: [...GLIDES, ...third],
    })]);
    expect(three.answer.comparisons.map((one) => one.candidate)).toEqual(["birch", "cedar"]);
    const joint = three.answer.findings.find((one) => one.code === "joint-statement")!;
    expect(joint.what).toContain("each judged more strictly");
    expect(three.designs.map((one) => one.place)).toEqual([1, 2, 3]);
  });

  it("keeps the blocks of several sessions apart", () => {
    const second = session({ name: "quillwater-two" });
    const both = compareGlides([session(), second]);
    expect(both.answer.sessions).toEqual(["quillwater", "quillwater-two"]);
    expect(both.designs[0]!.runsUsed).toBe(14);
    const apart = compareGlides([
      session({ glides: GLIDES.filter((one) => one.design === "alder") }),
      session({ name: "other", glides: GLIDES.filter((one) => one.design === "birch") }),
    ]);
    expect(codes(apart)).toContain("own-days");
  });

  it("warns of one name for two planforms", () => {
    const second = session({
      name: "other",
      designs: [design("alder", { span: 1.3 }), session().designs[1]!],
    });
    expect(codes(compareGlides([session(), second]))).toContain("different-planforms");
  });

  it("answers an empty session with a finding and no comparison", () => {
    const empty = compareGlides([session({ glides: [] })]);
    expect(empty.answer.launch).toBeNull();
    expect(empty.answer.comparisons).toEqual([]);
    expect(codes(empty)).toContain("no-runs");
  });

  it("compares nothing where the baseline asked for was never flown", () => {
    const designs = [...session().designs, design("oak")];
    const unflown = compareGlides([session({ designs })], { baseline: "oak" });
    expect(unflown.answer.comparisons).toEqual([]);
    expect(codes(unflown)).toContain("design-without-runs");
  });

  it("takes the water of each block's own day", () => {
    const warm = {
      row: 2,
      own: {},
      quantity: "water_temperature",
      value: 298.15,
      unit: "K",
      uncertainty: null,
      statedAs: null,
      block: "evening",
      note: null,
    } as const;
    const blocks = change((_, i) => ({ block: i < 8 ? "morning" : "evening" }));
    const { assumptions } = compareGlides([{ ...blocks, conditions: [warm] }]);
    expect(assumptions.filter((one) => one.startsWith("Water"))).toHaveLength(2);
  });

  it("names what it knows when asked for a design that nobody built", () => {
    expect(() => compareGlides([session()], { baseline: "oak" })).toThrow(UsageError);
  });
});
