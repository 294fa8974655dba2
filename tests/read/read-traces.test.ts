import { createHash } from "node:crypto";
import { describe, expect, it } from "vitest";
import type { Session } from "lakeproof/base/session.ts";
import { makeDescriptor } from "lakeproof/read/make-descriptor.ts";
import { sessionWith } from "./invented-session.ts";

const SAMPLES = Array.from({ length: 12 }, (_, i) => [i / 4, 4.5 - 0.1 * i] as const);
const TEXT = "time,speed\n" + SAMPLES.map((one) => one.join(",") + "\n").join("");

const errors = (session: Session) => session.findings.filter((one) => one.severity === "error");

describe("a trace of a run", () => {
  it("is read in SI under the run's name, with its checksum", () => {
    const { traces, checksums, findings } = sessionWith({ "traces/2.csv": TEXT });
    expect(traces).toHaveLength(1);
    expect(traces[0]).toMatchObject({ run: "2", file: "traces/2.csv" });
    expect(traces[0]!.times).toEqual(SAMPLES.map((one) => one[0]));
    expect(traces[0]!.speeds).toEqual(SAMPLES.map((one) => one[1]));
    expect(checksums).toContainEqual({
      file: "traces/2.csv",
      sha256: createHash("sha256").update(TEXT).digest("hex"),
    });
    expect(findings.filter((one) => one.severity !== "note")).toEqual([]);
  });

  it("takes units from its header, and commas before decimals", () => {
    const text = "time [ms];speed [km/h]\n" +
      SAMPLES.map(([t, v]) => `${t * 1000};${(v * 3.6).toFixed(2).replace(".", ",")}\n`).join("");
    const [trace] = sessionWith({ "traces/2.csv": text }).traces;
    expect(trace?.times[1]).toBe(0.25);
    // A hundredth of a km/h was written.
    expect(Math.abs(trace!.speeds[3]! - SAMPLES[3]![1])).toBeLessThan(0.005 / 3.6 + 1e-12);
  });

  it.each([
    [
      "time that does not rise",
      "traces/2.csv",
      TEXT.replace("0.5,", "0.25,"),
      "time-not-rising",
      4,
    ],
    ["no such run", "traces/99.csv", TEXT, "trace-without-run", null],
    [
      "too few samples",
      "traces/2.csv",
      TEXT.split("\n").slice(0, 5).join("\n"),
      "short-trace",
      null,
    ],
    ["something that is no number", "traces/2.csv", TEXT.replace("4.5", "NaN"), "not-a-number", 2],
    ["no speed at all", "traces/2.csv", TEXT.replace("speed", "pace"), "missing-column", null],
  ])("with %s is told and not used", (_, file, text, code, row) => {
    const session = sessionWith({ [file]: text });
    expect(session.traces).toEqual([]);
    expect(errors(session)).toMatchObject([{ code, file, ...(row === null ? {} : { row }) }]);
  });

  it("with a fault in every row is told once, with their count", () => {
    const text = TEXT.replaceAll(/,4/g, ",4x").replaceAll(/,3/g, ",3x");
    const found = errors(sessionWith({ "traces/2.csv": text }));
    expect(found).toHaveLength(1);
    expect(found[0]).toMatchObject({ code: "not-a-number", row: 2, count: SAMPLES.length });
  });

  it("stands in the description of the tables, under a name that the standard allows", () => {
    const { resources } = JSON.parse(
      makeDescriptor(new Map([["traces/Run 2.csv", new TextEncoder().encode(TEXT)]]), {
        name: "lake",
      }),
    );
    expect(resources).toMatchObject([{
      name: "traces-run-2",
      path: "traces/Run 2.csv",
      schema: { fields: [{ name: "time", unit: "s" }, { name: "speed", unit: "m/s" }] },
    }]);
  });
});
