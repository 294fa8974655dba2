import { Resvg } from "@resvg/resvg-js";
import { describe, expect, it } from "vitest";
import type { Calibration, Session } from "lakeproof/base/session.ts";
import { withPlainColours } from "lakeproof/publish/page/figure-png.ts";
import { calibrationDrawn, figureCalibration } from "lakeproof/show/figure-calibration.ts";
import { lines, marks, paths, scaleOf } from "../support/drawn.ts";
import { expectGolden } from "../support/golden.ts";
import { exampleTow } from "../support/towed-world.ts";

const PAPER = "var(--paper, #ffffff)";
const INK = "var(--ink, #1a1e23)";

/** A cell that reads 2 % too much and 0.5 N off zero, with errors of a tenth of a newton by turns. */
function cell(when: "before" | "after", applied: number | null, row: number): Calibration {
  return {
    row,
    own: {},
    instrument: "load cell",
    when,
    applied,
    appliedUnit: applied === null ? null : "N",
    reading: 0.5 + 1.02 * (applied ?? 0) + (applied === null ? 0 : 0.1 * Math.cos(3 * row)),
    readingUnit: "N",
  };
}

const before = [null, 20, 40, 60, 80, 100, 120].map((load, i) => cell("before", load, i + 2));
const after = [40, 80, 120, null].map((load, i) => cell("after", load, i + 9));
const { session } = exampleTow("two tows");
const calibrated: Session = { ...session, calibrations: [...before, ...after] };

describe("calibration of a load cell", () => {
  const { wide, narrow, caption, table } = figureCalibration(calibrated);
  const [x, y] = [scaleOf(wide, "x"), scaleOf(wide, "y")];

  it("draws every known load with what the cell reads too much, full before and hollow after", () => {
    const dots = (fill: string) =>
      marks(wide, { fill, stroke: INK, "stroke-width": "1.5" }).map(([a, b]) => [x(a), y(b)])
        // Marks in the legend stand above the frame.
        .filter(([, over]) => over! < 4);
    for (const [rows, fill] of [[before, INK], [after, PAPER]] as const) {
      const loads = rows.filter((one) => one.applied !== null);
      const drawn = dots(fill).slice(0, loads.length);
      for (const [i, one] of loads.entries()) {
        // A hundredth of a unit is 0.003 N of load, 0.0002 N of reading.
        expect(drawn[i]![0]).toBeCloseTo(one.applied!, 1);
        expect(drawn[i]![1]).toBeCloseTo(one.reading - 0.5 - one.applied!, 2);
      }
    }
  });

  it("draws the line through them: 2 % too much, with a band around it that is narrowest in the middle", () => {
    const [line] = paths(wide, { stroke: INK, "stroke-width": "2" });
    const [from, to] = [line![0]!, line!.at(-1)!].map(([a, b]) => [x(a), y(b)]);
    // Nine loads with errors of 0.07 N over 120 N: 0.1 %.
    expect(Math.abs((to![1]! - from![1]!) / (to![0]! - from![0]!) - 0.02)).toBeLessThan(0.003);
    const { curve } = calibrationDrawn(calibrated);
    const widths = curve.map((one) => one.high - one.low);
    const middle = widths.indexOf(Math.min(...widths));
    expect(curve[middle]!.load).toBeGreaterThan(20);
    expect(curve[middle]!.load).toBeLessThan(100);
    expect(caption).toMatch(/The cell reads 2\.\d\d\s% too much/);
  });

  it("marks the pulls that were measured, and says when they lie beyond the loads", () => {
    const { pulls } = calibrationDrawn(calibrated);
    const upright = lines(wide, { "stroke-dasharray": "2 3" }).map((one) => x(one[0]));
    expect(upright[0]).toBeCloseTo(pulls![0], 1);
    expect(upright[1]).toBeCloseTo(pulls![1], 1);
    expect(caption).toContain("The pulls measured lie among the known loads.");
    const few = calibrated.calibrations.filter((one) => one.applied === null || one.applied <= 60);
    expect(figureCalibration({ ...calibrated, calibrations: few }).caption)
      .toContain("beyond the known loads");
  });

  it("tells residuals in newtons of load in its table", () => {
    const off = table!.rows.map((row) => row[3]!.number!);
    expect(off.length).toBe(9);
    // Least squares: they add up to nothing.
    expect(Math.abs(off.reduce((sum, one) => sum + one, 0))).toBeLessThan(1e-9);
    expect(Math.max(...off.map(Math.abs))).toBeLessThan(0.2);
  });

  it("looks as it did when it was last looked at", () => {
    expectGolden("calibration-wide", wide);
    expectGolden("calibration-narrow", narrow);
  });

  it("says that readings count as newtons where there is no calibration, and draws nothing odd", () => {
    for (const calibrations of [[], before.slice(0, 2), before.slice(0, 1)]) {
      const none = figureCalibration({ ...session, calibrations });
      expect(none.caption).toContain("its readings count as newtons");
      expect(none.wide + none.narrow).not.toMatch(/NaN|undefined|Infinity/);
      expect(() => new Resvg(withPlainColours(none.wide))).not.toThrow();
    }
    const empty = figureCalibration({ ...calibrated, tow: [] });
    expect(empty.wide).not.toMatch(/NaN|undefined|Infinity/);
  });
});
