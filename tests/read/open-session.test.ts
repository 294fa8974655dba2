import { chmodSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { DataError } from "lakeproof/base/errors.ts";
import { filesRead, openSession, sessionNames } from "lakeproof/read/open-session.ts";
import { FILES } from "./invented-session.ts";

let folder = "";
beforeEach(() => {
  folder = join(mkdtempSync(join(tmpdir(), "lakeproof-")), "lake");
  mkdirSync(folder);
  for (const [file, text] of Object.entries(FILES)) writeFileSync(join(folder, file), text);
});
afterEach(() => rmSync(join(folder, ".."), { recursive: true }));

describe("a session folder on disk", () => {
  it("opens by path, and its files are listed as read", async () => {
    const session = await openSession(folder);
    expect(session.name).toBe("lake");
    expect(session.glides).toHaveLength(6);
    expect(filesRead()).toContain(join(folder, "glides.csv"));
    expect(session.checksums.map((one) => one.file)).toEqual([
      "designs.csv",
      "glides.csv",
      "conditions.csv",
      "instruments.csv",
    ]);
  });

  it("opens by name from wherever the program stands in the project", async () => {
    expect(sessionNames()).toContain("quillwater-evening");
    expect((await openSession("quillwater-evening")).invented).toBe(true);
  });

  it("is refused only when it is not there, with the name that was meant", async () => {
    await expect(openSession("quilwater-evening")).rejects.toThrow(
      "Did you mean quillwater-evening?",
    );
    await expect(openSession(join(folder, "nowhere"))).rejects.toBeInstanceOf(DataError);
    await expect(openSession("")).rejects.toBeInstanceOf(DataError);
  });

  it("leaves subfolders, hidden files and lock files of spreadsheets alone", async () => {
    mkdirSync(join(folder, "raw"));
    writeFileSync(join(folder, "raw", "log.csv"), "x");
    chmodSync(join(folder, "raw"), 0);
    writeFileSync(join(folder, ".hidden.csv"), "x");
    writeFileSync(join(folder, "~$glides.xlsx"), "x");
    const session = await openSession(folder);
    chmodSync(join(folder, "raw"), 0o755);
    expect(session.findings.map((one) => one.code)).toEqual(["no-descriptor"]);
  });

  it("has its traces read, and nothing else in their folder", async () => {
    mkdirSync(join(folder, "traces"));
    writeFileSync(join(folder, "traces", "1.csv"), "time,speed\n0,4\n");
    writeFileSync(join(folder, "traces", "1.txt"), "x");
    const { findings, checksums } = await openSession(folder);
    expect(findings.map((one) => one.code)).toContain("short-trace");
    expect(checksums.map((one) => one.file)).toContain("traces/1.csv");
    expect(checksums.map((one) => one.file)).not.toContain("traces/1.txt");
  });

  it("with a workbook gets told how to save its sheets", async () => {
    writeFileSync(join(folder, "all.xlsx"), "x");
    const session = await openSession(folder);
    expect(session.findings.find((one) => one.code === "workbook")!.wanted).toContain(
      "CSV (UTF-8)",
    );
  });
});
