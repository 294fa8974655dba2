import { parse } from "csv-parse/sync";
import { describe, expect, it } from "vitest";
import { demoFiles } from "../../data/generate-demo.ts";

const folder = new URL("../../data/", import.meta.url);
const read = (path: string) => Deno.readTextFileSync(new URL(path, folder));

interface Run {
  readonly design: string;
  readonly block: string;
  readonly launch_speed: string;
  readonly end_speed: string;
  readonly distance: string;
  readonly ended: string;
  readonly leave_out: string;
}

const runs: Run[] = parse(read("quillwater-evening/glides.csv"), { columns: true });
const used = (design: string) =>
  runs.filter((one) => one.design === design && one.leave_out === "");
const mean = (values: readonly number[]) => values.reduce((a, b) => a + b, 0) / values.length;
const truth: {
  readonly invented: boolean;
  readonly ratios: readonly {
    readonly candidate: string;
    readonly launchSpeed: number;
    readonly drop: number;
    readonly ratio: number;
  }[];
} = JSON.parse(read("quillwater-evening-truth.json"));

describe("demo session of Quillwater", () => {
  it("is what its generator writes, byte for byte, and nothing else", () => {
    const made = demoFiles();
    for (const [path, text] of made) expect(read(path), path).toBe(text);
    const present = ["quillwater-evening/", "quillwater-evening/traces/"].flatMap((path) =>
      [...Deno.readDirSync(new URL(path, folder))].filter((entry) => entry.isFile)
        .map((entry) => `${path}${entry.name}`)
    );
    const wanted = [...made.keys()].filter((path) => path.startsWith("quillwater-evening/"));
    expect(present.sort()).toEqual(wanted.sort());
  });
  it("is marked invented, session and truth", () => {
    expect(JSON.parse(read("quillwater-evening/datapackage.json")).invented).toBe(true);
    expect(truth.invented).toBe(true);
  });
  it("has a better foil that went less far, since the other was launched faster", () => {
    const [alder, birch] = [used("alder"), used("birch")];
    const distance = (of: readonly Run[]) => mean(of.map((one) => Number(one.distance)));
    const launch = (of: readonly Run[]) => mean(of.map((one) => Number(one.launch_speed)));
    expect(distance(birch) / distance(alder)).toBeLessThan(0.9);
    expect(launch(alder) - launch(birch)).toBeGreaterThan(0.4);
    for (const one of truth.ratios.filter((ratio) => ratio.candidate === "birch")) {
      expect(one.ratio).toBeGreaterThan(1.18);
      expect(one.ratio).toBeLessThan(1.32);
    }
  });
  it("has a third design within five per cent of the baseline, too close to tell", () => {
    for (const one of truth.ratios.filter((ratio) => ratio.candidate === "cedar")) {
      expect(one.ratio).toBeGreaterThan(1.02);
      expect(one.ratio).toBeLessThan(1.05);
    }
  });
  it("has seven to nine runs a design, every design in both blocks", () => {
    for (const design of ["alder", "birch", "cedar"]) {
      expect(used(design).length).toBeGreaterThanOrEqual(7);
      expect(used(design).length).toBeLessThanOrEqual(9);
      expect(new Set(used(design).map((one) => one.block)).size).toBe(2);
    }
  });
  it("has touched and stopped runs, one left out by the class, one whose speed rose", () => {
    for (const end of ["stalled", "touched", "stopped early"]) {
      for (const design of ["alder", "birch", "cedar"]) {
        expect(used(design).some((one) => one.ended === end), `${design} ${end}`).toBe(true);
      }
    }
    expect(runs.filter((one) => one.leave_out !== "").length).toBe(1);
    expect(runs.filter((one) => Number(one.end_speed) > Number(one.launch_speed)).length).toBe(1);
  });
});
