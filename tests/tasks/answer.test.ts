import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { GlideAnswer } from "lakeproof/base/answers.ts";
import { UsageError } from "lakeproof/base/errors.ts";
import { answerGlide, type GlideFlags } from "lakeproof/tasks/answer-glide.ts";
import { quantityArgument } from "lakeproof/tasks/quantity-argument.ts";
import { sessionArgument } from "lakeproof/tasks/session-argument.ts";

const DEMO = "quillwater-evening";
const root = new URL("../../", import.meta.url);
let folder = "";

beforeAll(() => {
  folder = Deno.makeTempDirSync({ prefix: "lakeproof-answer-" });
});

afterAll(() => Deno.removeSync(folder, { recursive: true }));

/** A session folder with the demo's files, changed. */
function changed(name: string, change: (file: string, text: string) => string): string {
  const path = `${folder}/${name}`;
  Deno.mkdirSync(path);
  for (const { name: file, isFile } of Deno.readDirSync(new URL(`data/${DEMO}/`, root))) {
    if (!isFile) continue;
    const text = Deno.readTextFileSync(new URL(`data/${DEMO}/${file}`, root));
    Deno.writeTextFileSync(`${path}/${file}`, change(file, text));
  }
  return path;
}

async function answer(names: string[], flags: GlideFlags = {}): Promise<[GlideAnswer, number]> {
  const { text, code } = await answerGlide(names, { ...flags, json: true });
  return [JSON.parse(text), code];
}

async function task(...args: string[]): Promise<{ code: number; out: string; err: string }> {
  const child = new Deno.Command(Deno.execPath(), {
    args: ["run", "-A", "lib/tasks/answer.ts", ...args],
    cwd: root,
    env: { NO_COLOR: "1" },
    stdin: "null",
  });
  const { code, stdout, stderr } = await child.output();
  const text = (bytes: Uint8Array) => new TextDecoder().decode(bytes);
  return { code, out: text(stdout), err: text(stderr) };
}

describe("task answer glide", () => {
  it("prints verdict, table, findings and assumptions, and says that the data are invented", async () => {
    const { text, code } = await answerGlide([DEMO], {});
    expect(code).toBe(0);
    for (
      const part of ["same launch", "95\u00a0%", "Findings", "Assumed", "The data are invented."]
    ) {
      expect(text).toContain(part);
    }
    expect(text).not.toMatch(/NaN|undefined|Infinity/);
  });

  it("gives the same bytes again", async () => {
    for (const flags of [{}, { json: true }]) {
      expect(await answerGlide([DEMO], flags)).toEqual(await answerGlide([DEMO], flags));
    }
  });

  it("carries every finding of reading and checking, checksums and versions in its JSON", async () => {
    const [found, code] = await answer([DEMO]);
    expect(code).toBe(0);
    expect(found.contract).toBe(1);
    expect(found.question).toBe("glide");
    expect(found.sessions).toEqual([DEMO]);
    expect(found.dataChecksums.map((one) => one.file)).toContain("glides.csv");
    expect(Object.keys(found.versions)).toContain("Deno");
    expect(found.comparisons.map((one) => one.candidate)).toEqual(["birch", "cedar"]);
    expect(found.runs.length).toBe(26);
    const { text } = await answerGlide([DEMO], {});
    const plain = text.replace(/\s+/g, " ");
    for (const { what } of found.findings) expect(plain).toContain(what.replace(/\s+/g, " "));
  });

  it("reads units on the command line: 4.5 m/s is 16.2 km/h", async () => {
    const [one] = await answer([DEMO], { launchSpeed: "4.5", drop: "0.2", mass: "85" });
    const [other] = await answer([DEMO], {
      launchSpeed: "16.2km/h",
      drop: "20 cm",
      mass: "85000g",
    });
    expect(one.launch).toEqual({ speed: 4.5, drop: 0.2, mass: 85 });
    expect(other).toEqual(one);
  });

  it("compares the designs that were named", async () => {
    const [found] = await answer([DEMO], { baseline: "cedar", candidate: ["birch"] });
    expect(found.comparisons.map((one) => [one.baseline, one.candidate]))
      .toEqual([["cedar", "birch"]]);
  });

  it("refuses with code 1 and whole JSON where each design flew on its own day", async () => {
    const own = changed(
      "own-days",
      (file, text) =>
        file !== "glides.csv" ? text : text.split("\n").map((line) => {
          const cells = line.split(",");
          if (cells.length > 3 && cells[0] !== "run") cells[2] = `day of ${cells[3]}`;
          return cells.join(",");
        }).join("\n"),
    );
    const flags = { baseline: "alder", candidate: ["birch"] };
    const [found, code] = await answer([own], flags);
    expect(code).toBe(1);
    expect(found.comparisons.map((one) => [one.verdict, one.ratio])).toEqual([["refused", null]]);
    expect(found.findings.some((one) => one.severity === "error" && one.wanted !== null))
      .toBe(true);
    const { text } = await answerGlide([own], flags);
    expect(text).toContain("can't answer whether birch or alder glides further");
  });

  it("answers no runs yet with code 1, in words and in JSON", async () => {
    const empty = changed(
      "empty",
      (file, text) => file === "glides.csv" ? text.split("\n")[0] + "\n" : text,
    );
    const [found, code] = await answer([empty]);
    expect(code).toBe(1);
    expect(found.launch).toBeNull();
    expect((await answerGlide([empty], {})).text).toContain("No answer yet");
  });

  it("claims nothing about runs where there are none", async () => {
    const path = changed(
      "none",
      (file, text) => file === "glides.csv" ? text.split("\n")[0] + "\n" : text,
    );
    const { text } = await answerGlide([path], {});
    expect(text).toContain("There is no run to rest on.\n");
    expect(text).not.toContain("launches and loads like these");
  });

  it("says in which cell the fault is that forbids an answer", async () => {
    const path = changed(
      "fault",
      (file, text) => file === "glides.csv" ? text.replace(",4.40,", ",ca 4.4,") : text,
    );
    const { text } = await answerGlide([path], {});
    expect(text.replace(/\s+/g, " ")).toContain(
      '- glides.csv, row 2, launch_speed: "ca 4.4" is no number.',
    );
  });

  it("gives JSON even where there is no such session", async () => {
    const [found, code] = await answer(["quilwater-evening"]);
    expect(code).toBe(1);
    expect(found.findings[0]!.what).toContain("Did you mean quillwater-evening?");
    await expect(answerGlide(["quilwater-evening"], {})).rejects.toThrow("no such folder");
  });

  it("prints hostile names as text: no control character reaches the terminal", async () => {
    const name = "bi\u001b[2Jrch\u202e";
    const hostile = changed("hostile", (_, text) => text.replaceAll("birch", name));
    const { text } = await answerGlide([hostile], {});
    const found = [...text].filter((letter) => /[\p{Cc}\p{Cf}]/u.test(letter) && letter !== "\n");
    expect(found).toEqual([]);
  });

  it("refuses numbers and designs that make no sense, as wrong usage", async () => {
    const wrong: GlideFlags[] = [
      { launchSpeed: "fast" },
      { launchSpeed: "14kg" },
      { drop: "1e999" },
      { mass: "0" },
      { baseline: "oak" },
      { baseline: "alder", candidate: ["alder"] },
      { launchSpeed: "40" },
      { drop: "20" },
      { mass: "900" },
    ];
    for (const flags of wrong) {
      await expect(answerGlide([DEMO], flags)).rejects.toThrow(UsageError);
    }
    await expect(answerGlide([DEMO], { launchSpeed: "40" })).rejects.toThrow("15km/h");
    await expect(answerGlide([DEMO], { launchSpeed: "-3" })).rejects.toThrow("--launch-speed -3");
    await expect(answerGlide([DEMO], { baseline: "alder", candidate: ["alder"] })).rejects.toThrow(
      "with itself",
    );
    await expect(answerGlide([DEMO, `data/${DEMO}`], {})).rejects.toThrow("named twice");
    const copy = changed("copy", (_, text) => text);
    await expect(answerGlide([DEMO, copy], {})).rejects.toThrow("each run would count twice");
  });
});

describe("the command line of task answer", () => {
  it("prints one JSON object on standard output and nothing else", async () => {
    const { code, out, err } = await task("glide", DEMO, "--json", "--candidate", "birch");
    expect([code, err]).toEqual([0, ""]);
    expect(JSON.parse(out).comparisons.length).toBe(1);
  });

  it("ends with code 2 and nothing on standard output for wrong usage", async () => {
    const results = await Promise.all([
      task("balance", DEMO),
      task("glyde", DEMO),
      task("glide"),
      task("glide", DEMO, "--fast"),
      task("takeoff", DEMO, "--drop", "0.2"),
    ]);
    expect(results.map((one) => [one.code, one.out])).toEqual(results.map(() => [2, ""]));
    expect(results[2]!.err).toContain("--help");
    expect(results[0]!.err).toContain('Cannot answer "balance" yet');
    expect(results[4]!.err).toContain("--drop with takeoff: it belongs to glide");
  });

  it("reads numbers with a decimal comma, and units of the right kind only", () => {
    expect(quantityArgument("14,4 km/h", "speed", "--x")).toBe(4);
    expect(quantityArgument("4", "speed", "--x")).toBe(4);
    expect(quantityArgument("1e1cm", "length", "--x")).toBe(0.1);
    expect(() => quantityArgument("4 m", "speed", "--x")).toThrow("km/h");
    expect(() => quantityArgument("", "speed", "--x")).toThrow(UsageError);
  });

  it("takes a relative path from where it was typed, and a name as it is", () => {
    expect(sessionArgument("quillwater", "/home/x")).toBe("quillwater");
    expect(sessionArgument("./mine", "/home/x")).toBe("/home/x/mine");
    expect(sessionArgument("/mine", "/home/x")).toBe("/mine");
    expect(sessionArgument("./mine", undefined)).toBe("./mine");
  });
});
