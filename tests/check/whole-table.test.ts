import { describe, expect, it } from "vitest";
import { answerable } from "lakeproof/check/answerable.ts";
import { checkSession } from "lakeproof/check/check-session.ts";
import { compareGlides } from "lakeproof/decide/compare-glides.ts";
import { readSession } from "lakeproof/read/read-session.ts";

const bytes = (text: string) => new TextEncoder().encode(text);
const HEADER = "run,block,design,launch_speed,end_speed,drop,distance,carried_mass,ended";

interface Run {
  readonly run: string;
  readonly design: string;
  readonly launch: number;
  readonly end: number;
  readonly drop: number;
  readonly distance: number;
}

const inTurns: readonly Run[] = [1, 2, 3, 4].flatMap((n) => [
  { run: `a${n}`, design: "alder", launch: 4 + n / 10, end: 3.1, drop: 0.2, distance: 8 + n / 10 },
  { run: `b${n}`, design: "birch", launch: 4 + n / 10, end: 3, drop: 0.2, distance: 11 + n / 10 },
]);

function session(runs: readonly Run[]) {
  const rows = runs.map((one) =>
    `${one.run},sat,${one.design},${one.launch},${one.end},${one.drop},${one.distance},82,stalled`
  );
  return readSession(
    "lake",
    new Map([
      ["designs.csv", bytes("design,span,area\nalder,1,0.16\nbirch,1.2,0.17\n")],
      ["glides.csv", bytes([HEADER, ...rows].join("\n"))],
    ]),
  );
}

const codes = (runs: readonly Run[]) => checkSession(session(runs)).map((one) => one.code);

describe("a whole table that is wrong", () => {
  it("says nothing of a sound one", () => {
    expect(codes(inTurns)).toEqual([]);
  });

  it("is an error, and no verdict, when speeds in km/h stand in a column of m/s", () => {
    const wrong = inTurns.map((one) => ({ ...one, launch: one.launch * 3.6, end: one.end * 3.6 }));
    expect(checkSession(session(wrong)).filter((one) => one.severity === "error")).toMatchObject([
      { code: "odd-glide-ratios", file: "glides.csv" },
    ]);
    expect(answerable(session(wrong))[0]).toMatchObject({ question: "glide", can: false });
    const { comparisons } = compareGlides([session(wrong)]).answer;
    expect(comparisons.map((one) => one.verdict)).toEqual(["refused"]);
  });

  it("stays a warning when only some runs are out of proportion", () => {
    const wrong = inTurns.map((one, i) => i < 2 ? { ...one, distance: one.distance / 10 } : one);
    expect(codes(wrong).filter((one) => one.startsWith("odd-glide"))).toEqual([
      "odd-glide-ratio",
      "odd-glide-ratio",
    ]);
  });

  it("asks once for the sign when every height lost stands below zero", () => {
    const found = checkSession(session(inTurns.map((one) => ({ ...one, drop: -0.2 }))));
    expect(found.filter((one) => one.column === "drop")).toMatchObject([
      { code: "sign-slip", count: 8, wanted: expect.stringContaining("0.2 m") },
    ]);
  });
});

describe("two columns under each other's names", () => {
  const asked = (runs: readonly Run[]) =>
    checkSession(session(runs)).filter((one) => one.code === "columns-swapped")
      .map((one) => one.column);

  it("are asked about once: launch and end speed, drop and distance", () => {
    expect(asked(inTurns.map((one) => ({ ...one, launch: one.end, end: one.launch })))).toEqual([
      "launch_speed",
    ]);
    expect(asked(inTurns.map((one) => ({ ...one, drop: one.distance, distance: one.drop }))))
      .toEqual(["drop"]);
  });

  it("are not asked about for one pumped run", () => {
    expect(asked(inTurns.map((one, i) => i === 0 ? { ...one, end: 4.4 } : one))).toEqual([]);
  });
});

describe("the order of the rows", () => {
  const inOneGo = [...inTurns].sort((a, b) => a.design < b.design ? -1 : 1);

  it("warns when each design was flown in one go", () => {
    expect(checkSession(session(inOneGo))).toMatchObject([{
      severity: "warning",
      code: "not-in-turns",
      row: 2,
      what: expect.stringContaining("first all runs of alder, then all of birch"),
    }]);
  });

  it("does not warn of a design that came back once", () => {
    expect(codes([...inOneGo.slice(1), inOneGo[0]!])).toEqual([]);
  });

  it("does not take two runs of each for a plan", () => {
    expect(codes([inOneGo[0]!, inOneGo[1]!, inOneGo[4]!, inOneGo[5]!])).toEqual([]);
  });
});

describe("a run entered twice under another name", () => {
  it("is told with both rows", () => {
    const twice = [...inTurns, { ...inTurns[2]!, run: "a9" }];
    expect(checkSession(session(twice))).toMatchObject([{
      severity: "warning",
      code: "doubled-run",
      row: 10,
      what: expect.stringMatching(/Run a9 .* run a2 in row 4/),
    }]);
  });

  it("is not seen in a run that differs in one digit", () => {
    expect(codes([...inTurns, { ...inTurns[2]!, run: "a9", distance: 8.21 }])).toEqual([]);
  });
});
