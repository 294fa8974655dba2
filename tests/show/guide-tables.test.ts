import { describe, expect, it } from "vitest";
import { GLIDES } from "lakeproof/base/tables.ts";
import { timedSpeedUncertainty } from "lakeproof/model/timed-speed.ts";
import { glossaryTable } from "lakeproof/show/glossary-table.ts";
import { courseFigure } from "lakeproof/show/figure-course.ts";
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
