import { describe, expect, it } from "vitest";
import { answerable } from "lakeproof/check/answerable.ts";
import { checkValues } from "lakeproof/check/check-values.ts";
import { compareTows } from "lakeproof/decide/compare-tows.ts";
import { readSession } from "lakeproof/read/read-session.ts";
import { exampleTow } from "../support/towed-world.ts";

const { session } = exampleTow("two tows");
const impossible = (leaveOut: string | null) => ({
  ...session,
  tow: session.tow.map((one, i) => i === 3 ? { ...one, lineTension: 9999, leaveOut } : one),
});

describe("a value that can't be", () => {
  it("is an error in a row that counts, and a note in one that is left out", () => {
    const found = (leaveOut: string | null) =>
      checkValues(impossible(leaveOut)).map((one) => [one.severity, one.code, one.row]);
    expect(found(null)).toEqual([["error", "impossible-value", 5]]);
    expect(found("cell fell in")).toEqual([["note", "impossible-value", 5]]);
    expect(checkValues(session)).toEqual([]);
  });

  it("forbids no answer from a row that is left out", () => {
    const law = (leaveOut: string | null) =>
      compareTows(impossible(leaveOut)).answer.designs[0]!.law;
    expect(law("cell fell in")).not.toBeNull();
    expect(law(null)).toBeNull();
    const can = (leaveOut: string | null) =>
      answerable(impossible(leaveOut)).find((one) => one.question === "tow")!.can;
    expect([can("cell fell in"), can(null)]).toEqual([true, false]);
  });

  it("is read as a note from a file too, and the row stays in the table", () => {
    const read = (reason: string) =>
      readSession(
        "lake",
        new Map(
          Object.entries({
            "designs.csv": "design,span,area\nalder,0.95,0.15\n",
            "tow.csv": `point,design,speed,line_tension,leave_out\n1,alder,400,60,${reason}\n`,
          }).map(([file, text]) => [file, new TextEncoder().encode(text)]),
        ),
      );
    const severity = (reason: string) =>
      read(reason).findings.find((one) => one.code === "impossible-value")!.severity;
    expect(severity("log stuck")).toBe("note");
    expect(read("log stuck").tow).toMatchObject([{ speed: null, lineTension: 60 }]);
    expect(severity("-")).toBe("error");
    expect(severity("")).toBe("error");
  });
});

describe("rows of one point", () => {
  const read = (rows: string) =>
    readSession(
      "lake",
      new Map(
        Object.entries({
          "designs.csv": "design,span,area\nalder,0.95,0.15\n",
          "tow.csv": `point,time,design,speed,line_tension\n${rows}`,
        }).map(([file, text]) => [file, new TextEncoder().encode(text)]),
      ),
    );
  const codes = (rows: string) => read(rows).findings.map((one) => one.code);

  it("are samples where each has its time", () => {
    const rows = "1,0,alder,4,60\n1,0.1,alder,4,61\n";
    expect(codes(rows)).not.toContain("doubled-row");
    expect(read(rows).tow.map((one) => one.time)).toEqual([0, 0.1]);
  });

  it("are a fault where one has none", () => {
    expect(codes("1,0,alder,4,60\n1,,alder,4,61\n")).toContain("doubled-row");
    expect(codes("1,,alder,4,60\n1,0,alder,4,61\n")).toContain("doubled-row");
  });
});
