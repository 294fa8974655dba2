import { describe, expect, it } from "vitest";
import { parse } from "csv-parse/sync";
import type { Quantity } from "lakeproof/base/quantity.ts";
import { checkSession } from "lakeproof/check/check-session.ts";
import { compareTows } from "lakeproof/decide/compare-tows.ts";
import { readSession } from "lakeproof/read/read-session.ts";
import { towDemoFiles, towTruth } from "../../data/generate-tow-demo.ts";
import { mastDrag, RUNNING_DEPTH, TOWED, towedCraft } from "../../data/quillwater-tow-craft.ts";

const folder = new URL("../../data/", import.meta.url);
const read = (path: string) => Deno.readTextFileSync(new URL(path, folder));
const present = [...Deno.readDirSync(new URL("quillwater-tow/", folder))].map((one) => one.name);
const session = readSession(
  "quillwater-tow",
  new Map(
    present.map((name) => [name, Deno.readFileSync(new URL(`quillwater-tow/${name}`, folder))]),
  ),
);
const { answer } = compareTows(session);
const [pair] = answer.comparisons;
const truth = towTruth();

function expectHeld({ kind, low, high }: Quantity, value: number, what: string): void {
  expect(kind, what).toBe("interval");
  expect(low!, what).toBeLessThanOrEqual(value);
  expect(high!, what).toBeGreaterThanOrEqual(value);
}

describe("demo session of tows at Quillwater", () => {
  it("is what its generator writes, byte for byte, and nothing else", () => {
    const made = towDemoFiles();
    for (const [path, text] of made) expect(read(path), path).toBe(text);
    const wanted = [...made.keys()].filter((path) => path.startsWith("quillwater-tow/"));
    expect(present.map((name) => `quillwater-tow/${name}`).sort()).toEqual(wanted.sort());
  });

  it("is marked invented, session and truth", () => {
    expect(session.invented).toBe(true);
    expect(JSON.parse(read("quillwater-tow-truth.json")).invented).toBe(true);
  });

  it("has the wings of the glides", () => {
    const wings = (name: string): Record<string, string>[] =>
      parse(read(`${name}/designs.csv`), { columns: true });
    const glided = wings("quillwater-evening").filter((one) => one.design !== "cedar");
    expect(wings("quillwater-tow")).toEqual(glided);
  });

  it("tows each design at nine speeds up and down the lake, in sweeps that take turns", () => {
    const sweeps = [...new Set(session.tow.map((one) => `${one.sweep} ${one.design}`))];
    expect(sweeps).toEqual(["1 alder", "2 birch", "3 alder", "4 birch", "mast alone tare"]);
    for (const design of ["alder", "birch"]) {
      const passes = session.tow.filter((one) => one.design === design)
        .map((one) => `${one.setSpeed} ${one.direction}`);
      expect(passes.length).toBe(18);
      expect(new Set(passes).size).toBe(18);
    }
  });

  it("reads without a complaint", () => {
    expect([...session.findings, ...checkSession(session), ...answer.findings]).toEqual([]);
  });

  it("answers with intervals that hold the true best lift-to-drag, its speed and the ratio", () => {
    for (const { design, liftToDrag, speed } of truth.best) {
      const found = answer.designs.find((one) => one.design === design)!;
      expectHeld(found.bestLiftToDrag!, liftToDrag, `${design}: best lift-to-drag`);
      expectHeld(found.speedOfBestLiftToDrag!, speed, `${design}: its speed`);
    }
    expectHeld(pair!.bestLiftToDragRatio!, truth.bestLiftToDragRatio, "ratio");
  });

  it("tells the wing and the mast with intervals that hold the truth, the mast by its tare readings", () => {
    for (const design of TOWED) {
      const craft = towedCraft(design);
      const { parts } = answer.designs.find((one) => one.design === craft.name)!;
      expect(parts.map((one) => one.at)).toEqual(["slowest", "best", "fastest"]);
      for (const { speed, parts: [mast, ...others] } of parts) {
        expect(mast!.how).toBe("tare");
        expectHeld(mast!.drag, mastDrag(speed, RUNNING_DEPTH), `mast at ${speed} m/s`);
        expectHeld(others.at(-1)!.drag, craft.wing(speed), `wing of ${craft.name} at ${speed} m/s`);
      }
    }
  });

  it("answers with drags whose intervals hold the truth at every speed towed", () => {
    for (const design of TOWED) {
      const craft = towedCraft(design);
      for (
        const { speed, drag } of answer.designs.find((one) => one.design === craft.name)!.dragAt
      ) {
        expectHeld(drag, craft.drag(speed), `${craft.name} at ${speed} m/s`);
      }
    }
  });

  it("finds birch to drag less where it truly does, and nowhere more", () => {
    const [[from, to]] = truth.candidateLessDrag as [[number, number]];
    expect(pair!.candidateLessDrag.length).toBe(1);
    const [low, high] = pair!.candidateLessDrag[0]!;
    // Readings stray from the set speeds by 1.2 % of throttle and the log's errors: 0.1 m/s at the fast end.
    expect(low).toBeGreaterThan(from - 0.1);
    expect(high).toBeLessThan(to + 0.1);
    expect(high - low).toBeGreaterThan(2);
    expect(pair!.candidateMoreDrag).toEqual([]);
  });

  it("needs its calibration: without it the lift-to-drag is off by the cell's scale", () => {
    const { answer: raw } = compareTows({ ...session, calibrations: [] });
    const ratio = raw.designs[0]!.bestLiftToDrag!.value! /
      answer.designs[0]!.bestLiftToDrag!.value!;
    // The cell shows 3 % too much, and about 1 N (1.5 %) on top of 65; the planform takes some of it back.
    expect(ratio).toBeLessThan(0.97);
    expect(ratio).toBeGreaterThan(0.94);
  });
});
