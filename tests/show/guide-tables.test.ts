import { describe, expect, it } from "vitest";
import { GLIDES, TABLES } from "lakeproof/base/tables.ts";
import { timedSpeedUncertainty } from "lakeproof/model/timed-speed.ts";
import { glossaryTable } from "lakeproof/show/glossary-table.ts";
import { courseFigure } from "lakeproof/show/figure-course.ts";
import { passOrderTable, towCautionTable, towGuideTable } from "lakeproof/show/tow-guide-table.ts";
import { timedSpeedTable } from "lakeproof/show/timed-speed-table.ts";

describe("the tables of the field guide", () => {
  it("give a timed speed's uncertainty for each spacing and frame rate", () => {
    const table = timedSpeedTable({ speed: 4, spacings: [2, 5], frameRates: [30, 120] });
    expect(table.rows.map((row) => row.length)).toEqual([3, 3]);
    expect(table.rows[1]![2]!.number).toBe(
      timedSpeedUncertainty({ spacing: 5, spacingUncertainty: 0.05, frameRate: 120, speed: 4 }),
    );
    expect(table.columns[1]!.label).toContain("30");
  });

  it("list every column of the contract, the required ones marked", () => {
    const table = glossaryTable(GLIDES);
    expect(table.rows.map((row) => row[0]!.text)).toEqual(GLIDES.columns.map((one) => one.name));
    expect(table.rows.filter((row) => row[1]!.text === "yes").map((row) => row[0]!.text)).toEqual(
      GLIDES.columns.filter((one) => one.required).map((one) => one.name),
    );
    expect(table.rows.find((row) => row[0]!.text === "ended")![2]!.text).toBe(
      "stalled, touched, stopped early",
    );
  });
});

describe("the sketch of the course", () => {
  const figure = courseFigure();

  it("names every reading that the tables ask for, in both widths", () => {
    for (const drawing of [figure.wide, figure.narrow]) {
      for (const word of ["launch speed", "end speed", "distance", "height lost", "splash"]) {
        expect(drawing).toContain(word);
      }
    }
  });

  it("comes out the same each time", () => {
    expect(courseFigure()).toEqual(figure);
  });
});

describe("the guide to towing", () => {
  const { rows } = towGuideTable();

  it("sends each reading to a column that is there", () => {
    const known = TABLES.flatMap((table) => table.columns.map((one) => one.name));
    for (const [what, , goesInto] of rows) {
      const names = goesInto!.text.replace(/^.*?: /, "").match(
        /[a-z]+(_[a-z]+)+|\b(speed|applied|sweep|block|depth|window|direction|design|note)\b/g,
      );
      expect(names, what!.text).not.toBeNull();
      for (const name of names!) expect(known, what!.text).toContain(name);
    }
  });

  it("tells weights, zeros, both ways, turns, wake, steady windows and the angle's sign", () => {
    const all = rows.flat().map((one) => one.text).join(" ");
    for (
      const word of [
        "known weights",
        "zero",
        "up, down, down, up",
        "first again",
        "wake",
        "5 s",
        "positive",
      ]
    ) {
      expect(all).toContain(word);
    }
  });

  it("puts local rules first among its cautions", () => {
    const cautions = towCautionTable().rows.map((row) => row[0]!.text);
    expect(cautions[0]).toMatch(/Local rules .* come first/);
    const all = cautions.join(" ");
    for (const word of ["licence", "second person", "quick release", "Helmet", "vest"]) {
      expect(all).toContain(word);
    }
  });

  it("orders passes so that designs take turns and the first goes last next time", () => {
    const table = passOrderTable({ designs: ["alder", "birch"], speeds: [4, 5], rounds: 2 });
    expect(table.rows.map((row) => `${row[0]!.text} ${row[1]!.text}`)).toEqual([
      "1 alder",
      "1 birch",
      "2 birch",
      "2 alder",
    ]);
    expect(() => passOrderTable({ designs: [], speeds: [4], rounds: 1 })).toThrow(/needed/);
  });
});
