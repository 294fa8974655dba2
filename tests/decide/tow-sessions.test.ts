import { describe, expect, it } from "vitest";
import type { Instrument, Session } from "lakeproof/base/session.ts";
import { compareTows } from "lakeproof/decide/compare-tows.ts";
import { exampleTow } from "../support/towed-world.ts";

const { session } = exampleTow("two tows");

const only = (name: string, designs: readonly string[], parts: Partial<Session> = {}): Session => ({
  ...session,
  name,
  tow: session.tow.filter((one) => designs.includes(one.design)),
  checksums: [{ file: "tow.csv", sha256: name }],
  ...parts,
});

const shared = (quantity: string, instrument: string, uncertainty: number): Instrument => ({
  row: 2,
  own: {},
  quantity,
  instrument,
  uncertainty,
  relative: true,
  statedAs: "standard",
  kind: "common",
  how: null,
});

describe("designs towed in sessions of their own", () => {
  const together = compareTows(session).answer;
  const apart = compareTows([only("June", ["alder"]), only("July", ["birch"])]).answer;

  it("are compared, with all sessions and files named", () => {
    expect(apart.sessions).toEqual(["June", "July"]);
    expect(apart.dataChecksums.map((one) => one.file)).toEqual(["June/tow.csv", "July/tow.csv"]);
    expect(apart.designs.map((one) => [one.design, one.session])).toEqual([
      ["alder", "June"],
      ["birch", "July"],
    ]);
    expect(apart.designs[0]!.law).toEqual(together.designs[0]!.law);
    expect(apart.comparisons).toHaveLength(1);
  });

  it("share no error, and a claim below 6 % is out of reach", () => {
    const [one, two] = [together, apart].map((answer) => {
      const { value, standardUncertainty } = answer.comparisons[0]!.bestLiftToDragRatio!;
      return standardUncertainty! / value;
    });
    // Two days of 2 % each, the load cell's 1 % twice, the mass twice.
    expect(two).toBeGreaterThan(Math.hypot(0.02, 0.02, 0.01, 0.01));
    expect(two).toBeGreaterThan(1.5 * one!);
    const said = apart.findings.find((finding) => finding.code === "not-alternated")!;
    expect(said.what).toMatch(/different sessions.*a claim under 6 % is out of reach/);
  });

  it("keep as one error what an instrument of one name brought to both", () => {
    const u = (june: string, july: string) => {
      const { comparisons: [pair] } = compareTows([
        only("June", ["alder"], { instruments: [shared("line_tension", june, 0.03)] }),
        only("July", ["birch"], { instruments: [shared("line_tension", july, 0.03)] }),
      ]).answer;
      const { value, standardUncertainty } = pair!.bestLiftToDragRatio!;
      return standardUncertainty! / value;
    };
    const [same, other] = [u("load cell", "load cell"), u("load cell", "spring balance")];
    // A scale of 3 % each cancels in the one and counts twice in the other.
    expect(Math.abs(other ** 2 - same ** 2 - 2 * 0.03 ** 2)).toBeLessThan(2e-4);
  });

  it("are told at one mass", () => {
    const lifts = apart.designs.map((one) => one.law!.lift);
    const masses = session.tow.map((one) => one.carriedMass!);
    const mean = masses.reduce((sum, one) => sum + one, 0) / masses.length;
    // Weight in water differs by the wet volumes, 4 litres at the most.
    lifts.forEach((lift) => expect(Math.abs(lift / 9.80665 - mean)).toBeLessThan(5));
  });
});

describe("one design towed on two days", () => {
  const { answer } = (() => {
    const two = ["alder", "birch"];
    return compareTows([only("June", two), only("July", two)]);
  })();

  it("has an entry a day, each candidate against the baseline of its own day", () => {
    expect(answer.designs.map((one) => `${one.design} ${one.session}`)).toEqual([
      "alder June",
      "alder July",
      "birch June",
      "birch July",
    ]);
    expect(answer.comparisons).toHaveLength(2);
    expect(answer.findings.map((one) => one.code)).not.toContain("not-alternated");
  });

  it("is said to be two wings where its numbers differ", () => {
    const designs = session.designs.map((one) => ({ ...one, span: one.span * 1.1 }));
    const { findings } =
      compareTows([only("June", ["alder"]), only("July", ["alder"], { designs })])
        .answer;
    expect(findings.find((one) => one.code === "design-differs")!.what).toContain("July");
  });
});

describe("several candidates", () => {
  const third: Session = {
    ...session,
    designs: [
      ...session.designs,
      { ...session.designs[1]!, design: "cedar", row: 9 },
    ],
    tow: session.tow.flatMap((one) =>
      one.design === "birch"
        ? [one, { ...one, design: "cedar", point: `c${one.point}`, row: one.row + 1000 }]
        : [one]
    ),
  };
  const alone = compareTows(third, { candidates: ["birch"] }).answer.comparisons[0]!;
  const { comparisons } = compareTows(third).answer;

  it("are judged together, each more strictly, and say so", () => {
    expect(alone.family).toBe("pointwise");
    expect(comparisons.map((one) => one.family)).toEqual(["joint", "joint"]);
    const [one, two] = [alone.bestLiftToDragRatio!, comparisons[0]!.bestLiftToDragRatio!];
    expect(two.value).toBe(one.value);
    // t at 0.9875 over t at 0.975: 1.14 with no limit to the degrees of freedom, a little more with few.
    const wider = Math.log(two.high! / two.low!) / Math.log(one.high! / one.low!);
    expect(wider).toBeGreaterThan(1.14);
    expect(wider).toBeLessThan(1.25);
  });

  it("claim no stretch of speeds that one comparison alone would not", () => {
    const length = (stretches: typeof alone.candidateLessDrag) =>
      stretches.reduce((sum, [from, to]) => sum + to - from, 0);
    expect(length(comparisons[0]!.candidateLessDrag)).toBeLessThanOrEqual(
      length(alone.candidateLessDrag),
    );
  });
});
