import { describe, expect, it } from "vitest";
import { waterNumbers } from "lakeproof/fit/takeoff-numbers.ts";
import { firstOrder, inWater } from "lakeproof/fit/takeoff-uncertainty.ts";
import { USUAL_DOUBTS } from "lakeproof/fit/takeoff-doubts.ts";
import { flightInWater } from "lakeproof/model/steady-craft.ts";
import { slowestSpeed } from "lakeproof/model/steady-speeds.ts";
import { USUAL_CRAFT } from "lakeproof/model/usual-craft.ts";
import { water } from "lakeproof/model/water.ts";

const NORMAL_95 = 1.96;

/** Takeoff speed with its 95 % interval, first order. */
function takeoff(mass: number, area: number, largestLiftCoefficient: number) {
  const craft = {
    ...USUAL_CRAFT,
    mass,
    area,
    // About the shapes that are built: aspect ratio 6.
    span: Math.sqrt(6 * area),
    wingVolume: 0.685 * 0.12 * area * Math.sqrt(area / 6),
    largestLiftCoefficient,
  };
  const numbers = waterNumbers(craft);
  const changes = firstOrder(craft, USUAL_DOUBTS, inWater);
  if (!numbers.ok || changes === null) throw new Error("no takeoff");
  const u = Math.hypot(...changes.takeoffSpeed);
  const { takeoffSpeed: value } = numbers;
  return { value, low: value * Math.exp(-NORMAL_95 * u), high: value * Math.exp(NORMAL_95 * u) };
}

describe("what builders report", () => {
  it("85 to 100 kg on 0.10 to 0.20 m2 take off at 2.5 to 5.2 m/s (common practice, no source)", () => {
    for (const mass of [85, 100]) {
      for (const area of [0.1, 0.2]) {
        for (const lift of [0.85, 1.1]) {
          // Monotone in all three, so the corners hold the rest.
          const { value } = takeoff(mass, area, lift);
          expect(value).toBeGreaterThan(2.5);
          expect(value).toBeLessThan(5.2);
        }
      }
    }
    // The ends of what riders report, 2.5 and 5 m/s, lie inside the intervals of the lightest and heaviest case.
    expect(takeoff(85, 0.2, 1.1).low).toBeLessThan(2.6);
    const heavy = takeoff(100, 0.1, 0.85);
    expect(heavy.low).toBeLessThan(5);
    expect(heavy.high).toBeGreaterThan(5);
  });
  it("struts of 0.7 to 0.9 m leave the wing deep enough at takeoff (common practice, no source)", () => {
    for (const strut of [0.7, 0.8, 0.9]) {
      const craft = { ...USUAL_CRAFT, takeoffDepth: strut - 0.08 };
      const numbers = waterNumbers(craft);
      // Deeper than two chords, where no loss of lift is known.
      expect(craft.takeoffDepth / (craft.area / craft.span)).toBeGreaterThan(2);
      expect(numbers.ok).toBe(true);
    }
  });
  it("a foam-cored wing of 3.8 m span and 0.15 m chord is close to afloat by itself (common practice, no source)", () => {
    const [span, chord] = [3.8, 0.15];
    const litres = (ratio: number) => 1000 * 0.685 * ratio * chord * chord * span;
    expect(litres(0.12)).toBeCloseTo(7.03, 2);
    expect([litres(0.1), litres(0.14)].map((one) => Math.round(one * 10) / 10)).toEqual([5.9, 8.2]);
    // Skins and core of 6 to 8 kg (common practice, no source) against its displacement.
    const displaced = litres(0.12) / 1000 * water({ temperature: 288.15, salinity: 0 }).density;
    expect(displaced).toBeGreaterThan(6);
    expect(displaced).toBeLessThan(8);
    const alone = { ...USUAL_CRAFT, mass: displaced * 0.999, wingVolume: litres(0.12) / 1000 };
    expect(slowestSpeed(flightInWater({ ...alone, strutCount: 0 })).kind).toBe("floats");
  });
});

describe("a handbook's best glide", () => {
  it("at full mass would need a span efficiency above 1: the printed speed belongs to a lighter aircraft", () => {
    // ASK 21 handbook figures: 17.0 m, 17.95 m2, 600 kg at most, best glide 34, told at 85 to 90 km/h.
    const efficiency = (speed: number) => {
      const weight = 600 * 9.80665;
      const pressure = 1.225 / 2 * speed ** 2 * 17.95;
      const lift = weight / pressure;
      // At the best, half the drag is due to lift: C_D0 = C_L^2/(pi AR e) = C_L/(2 L/D).
      return lift * lift / (Math.PI * (17 ** 2 / 17.95)) / (lift / (2 * 34));
    };
    expect(efficiency(25)).toBeCloseTo(1.15, 2);
    expect(efficiency(85 / 3.6)).toBeCloseTo(1.29, 2);
  });
});
