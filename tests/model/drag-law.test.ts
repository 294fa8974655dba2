import { describe, expect, it } from "vitest";
import {
  bestLiftToDrag,
  dragForce,
  dragLawOfPolar,
  leastDrag,
  leastDragSpeed,
  leastPowerSpeed,
} from "lakeproof/model/drag-law.ts";

const law = { a: 0.6, d: 10, e: 2000 };

describe("drag law", () => {
  it("has the textbook's best lift-to-drag and lift coefficient", () => {
    // Worked example of a light aircraft, C_D0 0.025, AR 7.37, e 0.8 (Anderson, Introduction to Flight; from memory): 13.6.
    const polar = {
      leastDragCoefficient: 0.025,
      liftDragFactor: 1 / (Math.PI * 7.37 * 0.8),
      liftCoefficientOfLeastDrag: 0,
    };
    const task = { lift: 13122, density: 1.225, area: 16.165 };
    const own = dragLawOfPolar(polar, task);
    expect(bestLiftToDrag(own, task.lift)).toBeCloseTo(13.6099, 4);
    const v = leastDragSpeed(own);
    expect(2 * task.lift / (task.density * v * v * task.area)).toBeCloseTo(0.68049, 4);
  });
  it("finds least drag and least power of a worked case", () => {
    expect(leastDragSpeed(law)).toBeCloseTo(7.598357, 6);
    expect(leastDrag(law)).toBeCloseTo(79.282032, 6);
    expect(leastPowerSpeed(law)).toBeCloseTo(5.538149, 6);
  });
  it("has its least power at the least-drag speed over 3^(1/4) when d is zero", () => {
    const plain = { ...law, d: 0 };
    expect(leastPowerSpeed(plain) * 3 ** 0.25).toBeCloseTo(leastDragSpeed(plain), 12);
  });
  it("is flat at both speeds, whatever the sign of d", () => {
    for (const d of [-30, 0, 12, 5000]) {
      const one = { ...law, d };
      const power = (v: number) => dragForce(one, v) * v;
      const [v, p] = [leastDragSpeed(one), leastPowerSpeed(one)];
      const step = 1e-4;
      // Central differences: their own error is of the order of the step squared.
      expect(Math.abs(dragForce(one, v + step) - dragForce(one, v - step))).toBeLessThan(1e-8);
      expect(Math.abs(power(p * (1 + step)) - power(p * (1 - step)))).toBeLessThan(
        1e-6 * power(p),
      );
    }
  });
  it("equals the polar at any speed and moves with phi", () => {
    const polar = {
      leastDragCoefficient: 0.011,
      liftDragFactor: 0.05,
      liftCoefficientOfLeastDrag: 0.2,
    };
    const task = { lift: 820, density: 999.1, area: 0.15 };
    const own = dragLawOfPolar(polar, task);
    for (const v of [2.5, 4, 7]) {
      const q = task.density * v * v / 2;
      const cl = task.lift / (q * task.area);
      const drag = q * task.area * (0.011 + 0.05 * (cl - 0.2) ** 2);
      expect(dragForce(own, v) / drag - 1).toBeCloseTo(0, 12);
    }
    expect(dragForce(own, 4, 1.5) - dragForce(own, 4)).toBeCloseTo(0.5 * own.e / 16, 10);
  });
  it("refuses no speed, no minimum, no density", () => {
    expect(() => dragForce(law, 0)).toThrow(RangeError);
    expect(() => dragForce(law, NaN)).toThrow(RangeError);
    expect(() => leastDragSpeed({ ...law, a: 0 })).toThrow(RangeError);
    expect(() => leastPowerSpeed({ ...law, e: -1 })).toThrow(RangeError);
    expect(() => bestLiftToDrag({ ...law, d: -100 }, 800)).toThrow(RangeError);
    expect(() =>
      dragLawOfPolar({
        leastDragCoefficient: 0.01,
        liftDragFactor: 0.05,
        liftCoefficientOfLeastDrag: 0,
      }, {
        lift: 1,
        density: 0,
        area: 1,
      })
    ).toThrow(RangeError);
  });
});
