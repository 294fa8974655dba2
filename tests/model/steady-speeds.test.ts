import { describe, expect, it } from "vitest";
import { flightInAir, flightInWater, type SteadyFlight } from "lakeproof/model/steady-craft.ts";
import { dips as dipsOf, type Least, scanSpeeds } from "lakeproof/model/steady-dips.ts";
import { slowestSpeed, speedsHeld } from "lakeproof/model/steady-speeds.ts";
import { LIGHT, SMALL, WIDE } from "../support/steady-examples.ts";

/* Parent of the values: tests/golden/steady-flight.py. */
const golden = JSON.parse(
  Deno.readTextFileSync(new URL("../golden/steady-flight.json", import.meta.url)),
);

/** Relative 1e-7 on forces at a given speed: phi holds 2e-8, sea water's printed density nine digits. */
const FORCE = 1e-7;
/** Relative 1e-6 on solved speeds: a dip is flat. */
const SPEED = 1e-6;

function near(own: number, value: number, tolerance: number) {
  expect(Math.abs(own / value - 1), `${own} beside ${value}`).toBeLessThan(tolerance);
}

function sameStates(flight: SteadyFlight, states: readonly Record<string, number>[]) {
  for (const want of states) {
    const own = flight.at(want["speed"]!)! as unknown as Record<string, number>;
    for (const [part, value] of Object.entries(want)) {
      if (value === 0) expect(own[part]).toBe(0);
      else near(own[part]!, value, FORCE);
    }
  }
}

function speedOf(flight: SteadyFlight, share = 1): number {
  const found = slowestSpeed(flight, share);
  if (found.kind !== "speed") throw new Error(found.kind);
  return found.speed;
}

const dips = (flight: SteadyFlight, stall: number, of: Least) =>
  dipsOf(scanSpeeds(flight, stall), of);

describe("a small wing in a lake", () => {
  const want = golden.small;
  const running = flightInWater(SMALL);
  const rising = flightInWater(SMALL, SMALL.takeoffDepth);
  const stall = speedOf(running);

  it("has the worked forces, part by part", () => {
    sameStates(running, want.states);
    sameStates(rising, [want.takeoffState]);
    // Weight, buoyancy at both depths, of the worked case: last printed digit.
    expect(running.weight).toBeCloseTo(863.341788, 6);
    expect(running.buoyancy).toBeCloseTo(20.3239292, 6);
    expect(rising.buoyancy).toBeCloseTo(23.2245023, 6);
  });
  it("stalls and takes off where the worked case does", () => {
    near(stall, want.stall, SPEED);
    near(speedOf(rising, 0.85), want.takeoff, SPEED);
    // The same, as printed elsewhere by another hand.
    near(stall, 3.24529562, SPEED);
    near(speedOf(rising, 0.85), 3.50067273, SPEED);
  });
  it("has its least drag and least power there too", () => {
    const [drag] = dips(running, stall, "total");
    near(drag!.speed, want.leastDragSpeed, SPEED);
    near(drag!.value, want.leastDrag, FORCE);
    near(drag!.speed, 4.933764, SPEED);
    near(running.load / drag!.value, 13.560043, SPEED);
    const [power] = dips(running, stall, "power");
    near(power!.speed, want.leastPowerSpeed, SPEED);
    near(power!.value, want.leastPower, FORCE);
    near(power!.speed, 3.8523116, SPEED);
    expect(drag!.atStall || power!.atStall).toBe(false);
    // Best of the wing alone, at its own best speed: from the same hand, eight printed digits.
    const [wing] = dips(running, stall, "wingDragOverLift");
    near(1 / wing!.value, 18.719669, SPEED);
    near(wing!.speed, 5.7276728, SPEED);
  });
  it("is held by 65 N over one stretch of speeds, by 60 N over none", () => {
    for (
      const [available, ends] of [
        [{ tension: 65 }, want.held65],
        [{ tension: 70 }, want.held70],
        [{ power: 280 }, want.held280W],
      ] as const
    ) {
      const held = speedsHeld(running, stall, available);
      expect(held.length).toBe(1);
      near(held[0]![0], ends[0], SPEED);
      near(held[0]![1], ends[1], SPEED);
    }
    expect(speedsHeld(running, stall, { tension: 60 })).toEqual([]);
  });
  it("takes off a little slower on a line that lifts, much faster on one that presses, never where that wins", () => {
    const at = (degrees: number) =>
      flightInWater({ ...SMALL, lineAngle: degrees * Math.PI / 180 }, SMALL.takeoffDepth);
    for (const [degrees, own] of [[10, want.up10], [-80, want.down80]] as const) {
      const speed = speedOf(at(degrees), 0.85);
      near(speed, own.takeoff, SPEED);
      near(at(degrees).at(speed)!.tension, own.tension, SPEED);
    }
    // From the same hand as above: 11.11 m/s and 4.8 kN at 85 degrees, printed so short.
    const steep = speedOf(at(-85), 0.85);
    expect(steep).toBeCloseTo(11.11, 2);
    expect(at(-85).at(steep)!.tension / 1000).toBeCloseTo(4.8, 1);
    expect(slowestSpeed(at(-89), 0.85)).toEqual({ kind: "none" });
  });
  it("floats where the water carries it all, and says so", () => {
    expect(slowestSpeed(flightInWater({ ...SMALL, wingVolume: 0.1 }))).toEqual({ kind: "floats" });
  });
});

describe("the small wing in air", () => {
  const want = golden.smallInAir;
  const flight = flightInAir(SMALL, 0);
  const stall = speedOf(flight);

  it("has the worked forces and speeds", () => {
    sameStates(flight, want.states);
    near(stall, want.stall, SPEED);
    near(speedOf(flight, 0.85), want.takeoff, SPEED);
    const [drag] = dips(flight, stall, "total");
    near(drag!.speed, want.leastDragSpeed, SPEED);
    near(drag!.value, want.leastDrag, FORCE);
    const [power] = dips(flight, stall, "power");
    near(power!.speed, want.leastPowerSpeed, SPEED);
    near(power!.value, want.leastPower, FORCE);
  });
  it("stalls faster two kilometres up", () => {
    near(speedOf(flightInAir(SMALL, 2000)), want.stallAt2000, SPEED);
  });
});

describe("a wide wing on a line that slopes down", () => {
  const want = golden.wide;
  const running = flightInWater(WIDE);
  const stall = speedOf(running);

  it("has the worked forces, part by part", () => {
    sameStates(running, want.states);
    sameStates(flightInWater(WIDE, WIDE.takeoffDepth), [want.takeoffState]);
  });
  it("has the worked speeds; its least power is at stall", () => {
    near(stall, want.stall, SPEED);
    near(speedOf(flightInWater(WIDE, WIDE.takeoffDepth), 0.85), want.takeoff, SPEED);
    const [drag] = dips(running, stall, "total");
    near(drag!.speed, want.leastDragSpeed, SPEED);
    near(drag!.value, want.leastDrag, FORCE);
    const [power] = dips(running, stall, "power");
    expect(power!.atStall).toBe(true);
    near(power!.value, want.powerAtStall, SPEED);
  });
  it("has the worked speeds in air", () => {
    const flight = flightInAir(WIDE, 0);
    const own = speedOf(flight);
    near(own, golden.wideInAir.stall, SPEED);
    near(speedOf(flight, 0.85), golden.wideInAir.takeoff, SPEED);
    const [drag] = dips(flight, own, "total");
    near(drag!.speed, golden.wideInAir.leastDragSpeed, SPEED);
    near(drag!.value, golden.wideInAir.leastDrag, FORCE);
    near(dips(flight, own, "power")[0]!.value, golden.wideInAir.powerAtStall, SPEED);
  });
});

describe("a light rider on the wide wing", () => {
  const want = golden.lightWithHump;
  const flight = flightInWater(LIGHT);
  const stall = speedOf(flight);

  it("has a hump in its drag: two dips, and a pull between them holds two stretches of speeds", () => {
    near(stall, want.stall, SPEED);
    const found = dips(flight, stall, "total");
    expect(found.map((one) => one.atStall)).toEqual([true, false]);
    near(found[0]!.value, want.dragAtStall, FORCE);
    near(found[1]!.speed, want.dip, SPEED);
    near(found[1]!.value, want.dragAtDip, FORCE);
    near(flight.at(want.top)!.total, want.dragAtTop, FORCE);
    const held = speedsHeld(flight, stall, { tension: 32.5 });
    expect(held.length).toBe(2);
    near(held[0]![0], stall, SPEED);
    near(held[0]![1], want.held[0], SPEED);
    near(held[1]![0], want.held[1], SPEED);
    near(held[1]![1], want.held[2], SPEED);
  });
});
