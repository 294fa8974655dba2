import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import type { GlideAnswer, GlideComparison } from "lakeproof/base/answers.ts";
import { compareGlides } from "lakeproof/decide/compare-glides.ts";
import { parseNotebook } from "lakeproof/publish/notebook.ts";
import { openSession } from "lakeproof/read/open-session.ts";
import { writeUp } from "lakeproof/show/write-up/write-up.ts";
import { makeSession } from "lakeproof/tasks/new-session.ts";
import { draftWriteUp, makeWriteUp } from "lakeproof/tasks/new-write-up.ts";

let root = "";
beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), "lakeproof-"));
});
afterEach(() => rmSync(root, { recursive: true }));

const SESSIONS = ["quillwater-evening", "quillwater-tow"];

const proseOf = (cells: readonly { readonly source: string }[]) =>
  cells.map((one) => one.source).join("\n\n");

describe("a write-up drafted from sessions", () => {
  it("is a notebook whose every number is filled and whose every claim holds", async () => {
    const path = await makeWriteUp(root, "our-article", SESSIONS);
    const text = proseOf(parseNotebook(readFileSync(path, "utf8")).cells);
    expect(text.match(/\]\(#value:/g)!.length).toBeGreaterThan(15);
    expect(text.match(/\]\(#claim:/g)!.length).toBeGreaterThan(4);
    expect(text).not.toMatch(/\[\s*\]\(#/);
    expect(text).toContain("[birch goes further than alder](#claim:");
  });

  it("goes from question to references, with cautions, limits and how to run it again between", async () => {
    const { cells } = await draftWriteUp("Which wing", SESSIONS);
    const heads = proseOf(cells).match(/^## .*$/gm);
    expect(heads).toEqual([
      "## What was built",
      "## How it was tested",
      "## How it is worked out",
      "## What came out",
      "## What could be wrong",
      "## Data and code, to run it again",
      "## References",
    ]);
    expect(proseOf(cells)).toContain("> **Caution");
    expect(proseOf(cells)).toContain("The data are invented");
  });

  it("has short code cells, each with a summary", async () => {
    const { cells } = await draftWriteUp("Which wing", SESSIONS);
    for (const cell of cells.filter((one) => one.cell_type === "code")) {
      expect(cell.source.split("\n").length).toBeLessThanOrEqual(20);
      expect(cell.source).toMatch(/^\/\/ \S/);
    }
  });

  it("never overwrites, and refuses a session that holds nothing to write about", async () => {
    await makeWriteUp(root, "our-article", SESSIONS.slice(0, 1));
    await expect(makeWriteUp(root, "our-article", SESSIONS)).rejects.toThrow("there already");
    const { folder } = makeSession(root, "lake-june");
    await expect(makeWriteUp(root, "empty", [folder])).rejects.toThrow(/Cannot draft a write-up/);
  });

  it("shows a name letter by letter, whatever stands in it", async () => {
    const { answer } = compareGlides([await openSession("quillwater-evening")]);
    const odd = "b*i*rch [2](x)";
    const renamed: GlideAnswer = {
      ...answer,
      comparisons: answer.comparisons.map((one) => ({ ...one, candidate: odd })),
    };
    const text = proseOf(writeUp({
      title: "T",
      sessions: ["s"],
      invented: false,
      glide: { session: "s", answer: renamed },
      tow: null,
      takeoff: null,
    }));
    expect(text).toContain("b\\*i\\*rch \\[2\\]\\(x\\)");
    expect(text).toContain("#value:glide/comparisons/0/ratio");
  });

  it("says what each verdict allows and no more", async () => {
    const { answer } = compareGlides([await openSession("quillwater-evening")]);
    const words = (verdict: GlideComparison["verdict"]) =>
      proseOf(writeUp({
        title: "T",
        sessions: ["s"],
        invented: false,
        glide: {
          session: "s",
          answer: { ...answer, comparisons: [{ ...answer.comparisons[0]!, verdict }] },
        },
        tow: null,
        takeoff: null,
      }));
    expect(words("baseline-better")).toContain("birch falls short of alder");
    expect(words("cannot-tell-yet")).toContain("can't be told yet");
    expect(words("refused")).toContain("birch [can't be compared with alder]");
    for (const verdict of ["baseline-better", "cannot-tell-yet", "refused"] as const) {
      expect(words(verdict)).not.toContain(
        "goes further than alder](#claim:glide/comparisons[birch]/verdict=candidate",
      );
    }
  });
});
