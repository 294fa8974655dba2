import { describe, expect, it } from "vitest";
import { compareTows } from "lakeproof/decide/compare-tows.ts";
import { excessSentence, partsSentence, wingSentence } from "lakeproof/show/parts-sentence.ts";
import { towPartsTable, towWingTable } from "lakeproof/show/tow-parts-table.ts";
import { towText } from "lakeproof/show/tow-text.ts";
import { taredWorld, untared } from "../support/tared-world.ts";
import { exampleTow } from "../support/towed-world.ts";

const { session } = taredWorld("struts alone");
const tared = compareTows(session);
const formula = compareTows(untared(session));
const unknown = compareTows(exampleTow("two tows").session);

describe("tables of parts", () => {
  it("have a cell for every column, whatever could be split", () => {
    for (const evidence of [tared, formula, unknown]) {
      for (const table of [towPartsTable, towWingTable]) {
        const { columns, rows } = table(evidence);
        expect(rows.length).toBeGreaterThan(0);
        for (const row of rows) expect(row.length).toBe(columns.length);
      }
    }
  });

  it("list every subtraction with value, standard uncertainty, share, how and source", () => {
    const { rows } = towPartsTable(formula);
    const { parts } = formula.answer.designs[0]!;
    expect(rows.length).toBe(parts.reduce((sum, one) => sum + one.parts.length, 0));
    const [first] = rows;
    const struts = parts[0]!.parts[0]!;
    expect(first!.map((cell) => cell.text)).toEqual([
      ...["alder", "slowest towed", parts[0]!.speed.toFixed(2), "struts"],
      expect.any(String),
      expect.any(String),
      ...[
        expect.any(String),
        "formula",
        "Hoerner 1965: section drag 2 C_F (1 + 2 t/c + 60 (t/c)^4), friction coefficient C_F, thickness t, chord c; good to 40 %",
      ],
    ]);
    expect(first![4]!.number).toBe(struts.drag.value);
    expect(first![5]!.number).toBe(struts.drag.standardUncertainty);
    const shares = rows.slice(0, 5).reduce((sum, row) => sum + row[6]!.number!, 0);
    expect(shares).toBeCloseTo(1, 12);
    expect(towPartsTable(tared).rows[0]!.at(-1)!.text).toMatch(/^21 readings of the struts alone/);
  });

  it("leave the wing's cells empty where it can't be told apart", () => {
    const [row] = towWingTable(unknown).rows;
    expect(row!.slice(2).map((cell) => cell.number)).toEqual(row!.slice(2).map(() => null));
    expect(towWingTable(tared).rows[0]!.every((cell) => cell.text !== "–")).toBe(true);
  });
});

describe("sentences on parts", () => {
  it("name the parts at the best speed, what remains, and what would narrow it", () => {
    const [by] = formula.answer.designs, [with_] = tared.answer.designs;
    expect(partsSentence(by!)).toMatch(
      /^Parts of the drag of alder at its best speed, 4\.41\u00a0m\/s \(± standard uncertainty\): 53\.8\u00a0N in all, less struts /,
    );
    expect(partsSentence(by!)).toContain("(by formula)");
    expect(partsSentence(with_!)).toContain("(tared)");
    const doubt = partsSentence(by!).match(/most of that from: ([a-z ]+)\./)![1];
    expect(["struts", "rider in the air"]).toContain(doubt);
    expect(wingSentence(with_!)).toMatch(
      /^The wing of alder alone, .*no whole craft reaches it\.$/,
    );
  });

  it("say nothing of a wing that can't be told apart, and call the rest by its name", () => {
    const [one] = unknown.answer.designs;
    expect(wingSentence(one!)).toBe("");
    expect(partsSentence(one!)).toContain("leave the wing and struts with");
    const none = compareTows({ ...session, tow: [] }).answer.designs;
    expect(none).toEqual([]);
  });

  it("say of what was measured beyond the formulas whether it is more than their doubt", () => {
    const [one] = tared.answer.designs;
    expect(excessSentence(one!)).toContain("no more than its doubt.");
    const heavier = {
      ...one!,
      parts: one!.parts.map((each) => ({
        ...each,
        expectedOfWing: {
          ...each.expectedOfWing!,
          excess: { ...each.expectedOfWing!.excess, value: 30, low: 10, high: 50 },
        },
      })),
    };
    expect(excessSentence(heavier)).toMatch(
      /beyond that: 30.0\u00a0N \(10.0 to 50.0\), more than formulas/,
    );
    expect(excessSentence(unknown.answer.designs[0]!)).toBe("");
  });

  it("stand in the text of the command line", () => {
    const text = towText(tared, true).replace(/\s+/g, " ");
    expect(text).toContain("Parts of the drag of alder at its best speed");
    expect(text).toContain("The wing of alder alone");
  });
});
