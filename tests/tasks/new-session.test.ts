import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { TABLES } from "lakeproof/base/tables.ts";
import { answerable } from "lakeproof/check/answerable.ts";
import { checkSession } from "lakeproof/check/check-session.ts";
import { compareGlides } from "lakeproof/decide/compare-glides.ts";
import { parseNotebook } from "lakeproof/publish/notebook.ts";
import { parseDescriptor } from "lakeproof/read/descriptor-schema.ts";
import { openSession } from "lakeproof/read/open-session.ts";
import { verdictRecord } from "lakeproof/show/verdict-record.ts";
import { answerTextOf } from "lakeproof/show/answer-text.ts";
import { makeSession, newSessionFiles, requireName } from "lakeproof/tasks/new-session.ts";
import { newTables } from "lakeproof/tasks/new-tables.ts";
import { readSession } from "lakeproof/read/read-session.ts";

let root = "";
beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), "lakeproof-"));
});
afterEach(() => rmSync(root, { recursive: true }));

describe("a new session", () => {
  it("has every table, a glossary, a descriptor and a notebook, and nothing beside them", () => {
    makeSession(root, "lake-june");
    expect(readdirSync(join(root, "data"))).toEqual(["lake-june"]);
    expect(readdirSync(join(root, "data", "lake-june")).sort()).toEqual(
      ["GLOSSARY.md", "datapackage.json", ...TABLES.map((one) => one.file)].sort(),
    );
    expect(readdirSync(join(root, "notebooks"))).toEqual(["lake-june.ipynb"]);
  });

  it("is valid, and answers plainly that there are no runs yet", async () => {
    const { folder } = makeSession(root, "lake-june");
    const session = await openSession(folder);
    const findings = [...session.findings, ...checkSession(session)];
    expect(findings.filter((one) => one.code !== "example-row")).toEqual([]);
    expect(answerable(session)[0]).toMatchObject({ can: false, has: "No runs yet." });
    const text = answerTextOf(verdictRecord(compareGlides([session])));
    expect(text).toMatch(/no run(?:s)? yet/i);
  });

  it("shows example rows that read without a fault once they are the user's own", () => {
    const own = [...newTables()].map(([file, text]) =>
      [file, new TextEncoder().encode(text.replaceAll("example row", "mine"))] as const
    );
    const session = readSession("own", new Map(own));
    expect(session.glides).toHaveLength(1);
    expect(session.instruments).toHaveLength(1);
    const all = [...session.findings, ...checkSession(session)];
    expect(all.filter((one) => one.code !== "no-descriptor")).toEqual([]);
  });

  it("has a descriptor that holds and names the unit of each column", () => {
    const parsed = parseDescriptor(newSessionFiles("lake-june").get("datapackage.json")!);
    expect(parsed.ok).toBe(true);
    if (!parsed.ok) return;
    expect(parsed.descriptor.contract).toBe(1);
    const glides = parsed.descriptor.resources.find((one) => one.name === "glides")!;
    expect(glides.schema!.fields.find((one) => one.name === "launch_speed")!.unit).toBe("m/s");
  });

  it("has a notebook that opens the session by its name", () => {
    const { notebook } = makeSession(root, "lake-june");
    const parsed = parseNotebook(readFileSync(notebook, "utf8"));
    const code = parsed.cells.filter((one) => one.cell_type === "code").map((one) => one.source);
    expect(code[0]).toMatch(/^(?:\/\/.*\n)*import /);
    expect(code.join("\n")).toContain('openSession("lake-june")');
  });

  it("never overwrites a session or a notebook, and leaves nothing behind", () => {
    makeSession(root, "lake-june");
    writeFileSync(join(root, "notebooks", "other.ipynb"), "{}");
    expect(() => makeSession(root, "lake-june")).toThrow("data/lake-june is there already");
    expect(() => makeSession(root, "other")).toThrow("notebooks/other.ipynb is there already");
    expect(readdirSync(join(root, "data"))).toEqual(["lake-june"]);
    expect(readdirSync(join(root, "notebooks")).sort()).toEqual(["lake-june.ipynb", "other.ipynb"]);
  });

  it.each([["Lake June", "lake-june"], ["../x", "x"], ["é", "e"]])(
    "a name like %s is refused with one that would do",
    (name, better) => expect(() => requireName(name)).toThrow(`Did you mean ${better}?`),
  );

  it.each(["", ".", "con", "-a", "a-", "a/b", "x".repeat(70)])(
    "a name like '%s' is refused",
    (name) => {
      expect(() => requireName(name)).toThrow("Cannot make a session");
    },
  );
});
