import { describe, expect, it } from "vitest";
import { finding } from "lakeproof/base/finding.ts";
import { MEDIA } from "lakeproof/base/records.ts";
import { displayBundle } from "lakeproof/show/display-bundle.ts";
import { fitTable } from "lakeproof/show/fit-table.ts";
import { printable } from "lakeproof/base/printable.ts";
import { resultsTable, shortResultsTable } from "lakeproof/show/results-table.ts";
import { runsTable } from "lakeproof/show/runs-table.ts";
import { textTable, wrapped } from "lakeproof/show/text-table.ts";
import { verdictRecord } from "lakeproof/show/verdict-record.ts";
import {
  inventedCannotTell,
  inventedEvidence,
  inventedRefusal,
  withRun,
} from "../support/invented-evidence.ts";

const evidence = inventedEvidence();

describe("what a cell shows", () => {
  it("carries our record, HTML and plain text with the same numbers", () => {
    const bundle = displayBundle(verdictRecord(evidence));
    expect(Object.keys(bundle)).toEqual([MEDIA.answer, "text/html", "text/plain"]);
    for (const form of ["text/html", "text/plain"]) {
      expect(String(bundle[form]).replace(/\s+/g, " ")).toContain("from 1.043 to 1.339");
    }
  });

  it("draws the strip as a picture: a program that takes drawings out leaves no stray numbers", () => {
    const html = String(displayBundle(verdictRecord(evidence))["text/html"]);
    const [, drawing] = /<img alt="" src="data:image\/svg\+xml,([^"]*)">/.exec(html) ?? [];
    expect(decodeURIComponent(drawing!)).toMatch(/^<svg xmlns=.*birch further<.*<\/svg>$/);
    expect(html).not.toContain("<text");
  });

  it("sets no background and no text colour in HTML: the ground is not known", () => {
    const shown = [
      verdictRecord(evidence),
      resultsTable(evidence),
      runsTable(evidence),
      [finding({ severity: "note", code: "x", what: "Something." })],
      "Fit of alder\n  level 1.14",
    ].map((record) => String(displayBundle(record)["text/html"]));
    for (const html of shown) {
      expect(html).not.toMatch(/background|[;"\s]color\s*:|<script|\sid=|\son\w+=/);
    }
    expect(shown[0]).toContain("border: 1px solid");
    expect(String(displayBundle(verdictRecord(inventedCannotTell()))["text/html"]))
      .toContain("border: 1px dashed");
  });

  it("keeps names from data as text in every form", () => {
    const name = `<script>alert("1")</script>\u001b[2J`;
    const hostile = {
      ...evidence,
      answer: {
        ...evidence.answer,
        designs: evidence.answer.designs.map((one) => ({ ...one, design: name })),
        comparisons: evidence.answer.comparisons.map((one) => ({ ...one, candidate: name })),
      },
      designs: evidence.designs.map((one) => ({
        ...one,
        design: name,
        runs: one.runs.map((run) => ({ ...run, design: name, flag: name })),
      })),
    };
    const records = [
      verdictRecord(hostile),
      resultsTable(hostile),
      runsTable(hostile),
      fitTable(hostile),
      [finding({ severity: "error", code: "x", file: name, what: name, wanted: name })],
      name,
    ];
    for (const record of records) {
      const bundle = displayBundle(record);
      expect(bundle["text/html"]).not.toMatch(/<script/);
      expect(bundle["text/html"]).toContain("&lt;script&gt;");
      const forms = String(bundle["text/html"]) + bundle["text/plain"];
      expect(["\u0007", "\u001b"].filter((one) => forms.includes(one))).toEqual([]);
    }
  });

  it("says which runs were left out or stand out, and why", () => {
    const out = withRun(evidence, "birch", 0, { used: false, reason: "wrong board" });
    const flagged = withRun(out, "birch", 1, { flag: "looks pumped" });
    const remarks = runsTable(flagged).rows.map((row) => row.at(-1)!.text).filter((one) => one);
    expect(remarks).toEqual(["left out: wrong board", "looks pumped"]);
  });

  it("holds full numbers beside the rounded text", () => {
    const row = resultsTable(evidence).rows[1]!;
    expect(row.map((cell) => cell.text)).toEqual([
      "birch",
      "further than alder",
      "1.182",
      "1.043",
      "1.339",
      "99.4\u00a0%",
      "7.95",
      "7.31",
      "8.64",
      "12.97",
      "2.973",
      "7",
    ]);
    expect(row.slice(2, 5).map((cell) => cell.number)).toEqual([1.1820182, 1.0434176, 1.3390295]);
  });
});

describe("results of a design that can't be compared", () => {
  it("are not shown beside the baseline's", () => {
    for (const table of [resultsTable, shortResultsTable]) {
      const [alder, birch] = table(inventedRefusal()).rows;
      expect(alder!.map((cell) => cell.text)).toContain("11.76");
      const texts = birch!.map((cell) => cell.text);
      expect(texts).toContain("can't be answered");
      // Distance and glide ratio of the invented evidence.
      expect(texts.join(" ")).not.toMatch(/7\.95|13\.0/);
    }
  });
});

describe("plain text", () => {
  it("lines columns up whatever script a name is written in", () => {
    const cell = (text: string) => ({ text, number: null, mark: null });
    const text = textTable({
      name: "x",
      caption: "Caption.",
      columns: [
        { label: "design", unit: "", align: "left" },
        { label: "distance", unit: "m", align: "right" },
      ],
      rows: [[cell("楓"), cell("7.1")], [cell("alder"), cell("12.3")]],
    });
    expect(text).toBe(
      "Caption.\ndesign  distance (m)\n------  ------------\n楓               7.1\nalder           12.3\n",
    );
  });

  it("breaks lines at spaces and never between a number and its unit", () => {
    const lines = wrapped("word ".repeat(17) + "12\u00a0m end").split("\n");
    expect(lines).toEqual(["word ".repeat(17).trim(), "12\u00a0m end"]);
  });

  it("makes escape sequences and direction marks visible, and breaks no line", () => {
    expect(printable("a\u001b[31mb\u202ec\r\nd\u0007")).toBe("a?[31mb?c d?");
    expect(printable("\ud800x\uffff")).toBe("?x?");
    expect(printable("🙂 ok")).toBe("🙂 ok");
  });
});
