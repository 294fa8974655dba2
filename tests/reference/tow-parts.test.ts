import { describe, expect, it } from "vitest";
import type { Design } from "lakeproof/base/session.ts";
import { dragAt } from "lakeproof/decide/drag-at-speed.ts";
import type { DragSplit } from "lakeproof/decide/drag-split.ts";
import { strutShape } from "lakeproof/decide/tow-tare.ts";
import { fitTare, type TareFit, type TareReading } from "lakeproof/fit/tare-fit.ts";
import { fitTowSeries } from "lakeproof/fit/tow-series.ts";
import { studentInterval } from "lakeproof/infer/mean-interval.ts";
import { strutDrag } from "lakeproof/model/strut-drag.ts";
import { golden, goldenData, goldenErrors } from "../golden/tow-data.ts";
import parts from "../golden/tow-parts.json" with { type: "json" };

// Parent: tests/golden/tow-parts.py (numpy, scipy; versions in the JSON), from the printed formulas of Blasius, Prandtl and
// Schlichting, and Hoerner, Fluid-Dynamic Drag (1965), with its own least squares for the tare readings.

const DEGREE = Math.PI / 180;
const water = { density: golden.density, kinematicViscosity: parts.viscosity };
const medium = { ...water, gravity: golden.gravity, sentences: { water: [], gravity: [] } };

/** Both sides settle to 1e-9 or better. */
function expectClose(actual: number, expected: number, what: string): void {
  expect(Math.abs(actual / expected - 1), `${what}: ${actual} for ${expected}`).toBeLessThan(1e-6);
}

type Shared = keyof typeof golden.shared;

function readings(error?: Shared, sign: 1 | -1 = 1): TareReading[] {
  const off = (one: Shared) => one === error ? sign * golden.shared[one] : 0;
  return parts.readings.map((row) => {
    const [speed, pull, degrees, depth] = row as [number, number, number, number];
    return {
      speed: speed * (1 - off("speed scale")) - off("speed zero"),
      tension: pull * (1 - off("cell scale")) - off("cell zero"),
      angle: degrees * DEGREE - off("angle zero"),
      inertia: 0,
      depth,
      depthUncertainty: parts.depthUncertainty,
      uncertainty: {
        speed: { fixed: 0, share: 0.01 },
        tension: { fixed: 0.8, share: 0.015 },
        angle: 0.5 * DEGREE,
      },
    };
  });
}

const formula = strutShape(parts.struts, medium);

function tared(error?: Shared, sign: 1 | -1 = 1, scatterScale?: number): TareFit {
  const fit = fitTare(
    readings(error, sign),
    (speed, depth) => formula(speed, depth!),
    scatterScale === undefined ? {} : { scatterScale },
  );
  if (!fit.ok) throw new Error(fit.reason);
  return fit;
}

const series = fitTowSeries(goldenData("alder"), goldenErrors("alder"));
if (!series.ok) throw new Error(series.reason);

function split(withTare: boolean): DragSplit {
  const fit = tared();
  const { area, span } = golden.designs.alder;
  const spec: Design = {
    row: 2,
    own: {},
    design: "alder",
    span,
    area,
    wetVolume: golden.designs.alder.volume,
    thicknessRatio: null,
    section: null,
    largestLiftCoefficient: null,
    strutCount: parts.struts.count,
    strutChord: parts.struts.chord,
    strutThickness: parts.struts.thickness,
    strutLength: null,
    boardDraught: null,
    extraDragArea: null,
    note: null,
  };
  const shifts = (Object.keys(golden.shared) as Shared[]).map((error) =>
    [
      error,
      [tared(error, 1, fit.scatterScale), tared(error, -1, fit.scatterScale)],
    ] as const
  );
  return {
    spec,
    medium,
    series: series as Extract<typeof series, { ok: true }>,
    tare: withTare
      ? { fit, shifts: new Map(shifts), readings: parts.readings.length, from: 3.61, to: 6.66 }
      : null,
    depth: parts.depth,
    depthUncertainty: parts.meanDepthUncertainty,
    depthOff: new Map(),
    rider: { area: 0.55, doubt: 0.3, how: "formula" },
    rest: "wing",
  };
}

describe("parts of a towed drag, against numpy and scipy from the printed formulas", () => {
  it("friction with form, spray and junction of struts", () => {
    for (const { speed, depth, friction, spray, junction } of parts.formulas) {
      const found = strutDrag(parts.struts, { ...water, speed, depth });
      expectClose(found.friction, friction, `friction at ${speed} m/s`);
      expectClose(found.spray, spray, `spray at ${speed} m/s`);
      expectClose(found.junction, junction, `junction at ${speed} m/s`);
    }
  });

  it("tare readings: factor, exponent, covariance, degrees of freedom", () => {
    const { factor, exponent, covariance, fromData, scale, freedom } = parts.tare;
    const fit = tared();
    expectClose(fit.factor, factor, "factor");
    expectClose(fit.exponent, exponent, "exponent");
    expectClose(fit.scatterScale, scale, "scale");
    expectClose(fit.degreesOfFreedom!, freedom, "degrees of freedom");
    for (
      const [found, wanted] of [[fit.covariance, covariance], [
        fit.dataCovariance,
        fromData,
      ]] as const
    ) {
      expectClose(found.factor, wanted[0]![0]!, "variance of ln factor");
      expectClose(found.both, wanted[0]![1]!, "covariance");
      expectClose(found.exponent, wanted[1]![1]!, "variance of the exponent");
    }
  });

  for (
    const [how, withTare, wanted] of [
      ["tared", true, parts.tared],
      ["by formula", false, parts.byFormula],
    ] as const
  ) {
    it(`wing as the rest and its lift-to-drag, struts ${how}`, () => {
      for (const one of wanted) {
        const found = dragAt(split(withTare), one.speed)!;
        const at = `at ${one.speed} m/s`;
        expectClose(found.total, one.total, `whole ${at}`);
        const values = Object.values(one.parts) as number[];
        expectClose(
          found.taken.reduce((sum, part) => sum + part.value, 0),
          values.reduce((sum, value) => sum + value, 0),
          `taken off ${at}`,
        );
        const struts = found.taken[0]!;
        expectClose(Math.sqrt(struts.variance), one.strutsUncertainty, `struts' uncertainty ${at}`);
        expectClose(found.rest, one.wing, `wing ${at}`);
        expectClose(Math.sqrt(found.restVariance), one.wingUncertainty, `wing's uncertainty ${at}`);
        expectClose(found.degreesOfFreedom!, one.wingFreedom, `degrees of freedom ${at}`);
        const { value, variance, degreesOfFreedom } = found.dragToLift;
        expectClose(1 / value, one.liftToDrag, `wing L/D ${at}`);
        const ends = studentInterval({
          value,
          standardUncertainty: Math.sqrt(variance),
          degreesOfFreedom: degreesOfFreedom!,
        });
        expectClose(1 / ends.high!, one.low, `its low end ${at}`);
        expectClose(1 / ends.low!, one.high, `its high end ${at}`);
      }
    });
  }
});
