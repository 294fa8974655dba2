import { describe, expect, it } from "vitest";
import { weightInWater } from "lakeproof/model/buoyancy.ts";
import { dragBuildUp } from "lakeproof/model/planform-drag.ts";
import { strutVolume } from "lakeproof/model/strut-drag.ts";
import { stallSpeed } from "lakeproof/model/stall.ts";

/* Parent of the values: the same equations in Python (numpy 2.4, scipy 1.17), written apart, with phi from a 200-point
 * rule cut at exp(-36); invented craft. */
const common = {
  thicknessRatio: 0.12,
  spanEfficiency: 0.95,
  viscousLiftFactor: 0.01,
  liftCoefficientOfLeastDrag: 0.2,
  transitionReynolds: 2e5,
  airDragArea: 0.55,
};
const gravity = 9.8107021356;
const alone = { count: 0, chord: 0, thickness: 0 };
const SMALL = {
  craft: { ...common, span: 0.9, area: 0.15, struts: { count: 1, chord: 0.12, thickness: 0.0144 } },
  water: { density: 999.1010317, kinematicViscosity: 1.13857136e-6, gravity },
  mass: 88,
  wingVolume: 0.0016,
};
const WIDE = {
  craft: { ...common, span: 3.8, area: 0.55, struts: { count: 2, chord: 0.1, thickness: 0.012 } },
  water: { density: 1024.76174, kinematicViscosity: 1.050791959e-6, gravity },
  mass: 92,
  wingVolume: 0.007,
};
const AIR = { density: 1.225000018, kinematicViscosity: 1.460718573e-5, gravity };

function state(of: typeof SMALL, speed: number, depth: number, lineAngle = 0) {
  const wetVolume = of.wingVolume + strutVolume(of.craft.struts, depth);
  const net = weightInWater({ mass: of.mass, wetVolume, ...of.water });
  return dragBuildUp(of.craft, { ...of.water, depth })({ speed, weightInWater: net, lineAngle });
}

function inAir(of: typeof SMALL, speed: number) {
  const net = weightInWater({ mass: of.mass, wetVolume: of.wingVolume, ...AIR });
  const bare = { ...of.craft, struts: alone, airDragArea: 0 };
  return dragBuildUp(bare, { ...AIR, depth: Infinity })({ speed, weightInWater: net });
}

/** 1e-7 relative: the rule for phi holds 2e-8, and the parent prints nine digits. */
function close(own: number, value: number) {
  expect(Math.abs(own / value - 1)).toBeLessThan(1e-7);
}

describe("drag build-up of a small wing", () => {
  it("equals the worked forces at 3.5, 4.5 and 6 m/s", () => {
    const rows = [
      [
        3.5,
        0.918396067,
        1.20736784,
        0.00961468944,
        8.82555489,
        4.73734106,
        58.0014908,
        2.72075964,
        0.304545177,
        0.247189169,
        4.12671875,
        78.9635995,
      ],
      [
        4.5,
        0.55557293,
        1.18072367,
        0.00969968977,
        14.7181608,
        1.91846146,
        34.3130151,
        4.64183659,
        0.503431824,
        0.40861883,
        6.82171875,
        63.3252434,
      ],
      [
        6,
        0.312509773,
        1.15302606,
        0.00965858058,
        26.0547241,
        0.341470876,
        18.8483034,
        8.36860209,
        0.894989909,
        0.726433476,
        12.1275,
        67.3620239,
      ],
    ] as const;
    for (
      const [v, cl, phi, least, friction, viscous, induced, strut, spray, junction, air, sum]
        of rows
    ) {
      const own = state(SMALL, v, 0.4);
      close(own.liftCoefficient, cl);
      close(own.phi, phi);
      close(own.leastDragCoefficient, least);
      close(own.wingFriction, friction);
      close(own.viscousLift, viscous);
      close(own.inducedAndWave, induced);
      close(own.struts, strut);
      close(own.spray, spray);
      close(own.junction, junction);
      close(own.air, air);
      close(own.total, sum);
    }
  });
  it("equals the worked state at takeoff depth", () => {
    const own = state(SMALL, 3.50067273, 0.65);
    close(own.phi, 1.08799679);
    close(own.inducedAndWave, 51.887951);
    close(own.total, 74.513283);
  });
  it("equals the worked forces of the same wing in air", () => {
    for (const [v, drag] of [[100, 64.1181679], [130, 46.253606], [170, 41.9996552]] as const) {
      close(inAir(SMALL, v).total, drag);
      expect(inAir(SMALL, v).phi).toBe(1);
    }
  });
  it("is least where the worked case finds it", () => {
    const at = 4.933764;
    const least = state(SMALL, at, 0.4);
    close(least.total, 62.169262);
    // Best lift-to-drag of the craft, and of the wing alone at the same speed; seven printed digits.
    expect(least.lift / least.total).toBeCloseTo(13.560043, 5);
    expect(least.lift / least.wing).toBeCloseTo(17.839542, 5);
    expect(state(SMALL, at * 1.02, 0.4).total).toBeGreaterThan(least.total);
    expect(state(SMALL, at / 1.02, 0.4).total).toBeGreaterThan(least.total);
  });
});

describe("drag build-up of a wide wing on a line that pulls down", () => {
  it("equals the worked forces at 1.7 to 4 m/s", () => {
    const rows = [
      [1.7, 1.02397538, 3.09106874, 6.59760312, 5.52944965, 33.6870629, 0.734913707, 47.7080251],
      [2.2, 0.61094862, 3.94201578, 12.1061894, 2.30343526, 25.6124256, 1.13801591, 43.1010832],
      [3, 0.328565479, 3.70889363, 23.8944812, 0.419224686, 12.9601004, 2.41443132, 43.2975666],
      [4, 0.185353801, 3.011218, 43.5257494, 0.00967220368, 5.95309465, 4.57987195, 60.4849732],
    ] as const;
    for (const [v, cl, phi, friction, viscous, induced, struts, total] of rows) {
      const own = state(WIDE, v, 0.3, -8 * Math.PI / 180);
      close(own.liftCoefficient, cl);
      close(own.phi, phi);
      close(own.wingFriction, friction);
      // 1e-6: a difference of nearly equal lift coefficients, squared.
      expect(Math.abs(own.viscousLift / viscous - 1)).toBeLessThan(1e-6);
      close(own.inducedAndWave, induced);
      close(own.struts, struts);
      close(own.total, total);
    }
  });
  it("holds the balance of forces on the line", () => {
    const own = state(WIDE, 2.5, 0.3, 0.2);
    const net = weightInWater({
      mass: WIDE.mass,
      wetVolume: WIDE.wingVolume + strutVolume(WIDE.craft.struts, 0.3),
      ...WIDE.water,
    });
    expect(own.lift + own.total * Math.tan(0.2)).toBeCloseTo(net, 9);
  });
});

describe("drag build-up", () => {
  it("adds up, and takes extra drag area, wind and junction as said", () => {
    const around = { ...SMALL.water, depth: 0.4 };
    const flight = { speed: 4, weightInWater: 840 };
    const plain = dragBuildUp(SMALL.craft, around)(flight);
    const sum = plain.wingFriction + plain.viscousLift + plain.inducedAndWave + plain.struts +
      plain.spray + plain.junction + plain.extra + plain.air;
    expect(plain.total).toBeCloseTo(sum, 10);
    const more = dragBuildUp({ ...SMALL.craft, extraDragArea: 1e-3 }, around)(flight);
    expect(more.total - plain.total).toBeCloseTo(around.density * 16 / 2 * 1e-3, 9);
    const windy = dragBuildUp(SMALL.craft, around)({ ...flight, headwind: 4 });
    expect(windy.air / plain.air).toBeCloseTo(4, 12);
    const blown = dragBuildUp(SMALL.craft, around)({ ...flight, headwind: -8 });
    expect(blown.air / plain.air).toBeCloseTo(-1, 12);
    const thin = { ...SMALL.craft, struts: { count: 1, chord: 0.12, thickness: 0.006 } };
    expect(dragBuildUp(thin, around)(flight).junction).toBe(0);
  });
  it("refuses a steep line down at low speed, no size, no speed, NaN", () => {
    const around = { ...SMALL.water, depth: 0.4 };
    const fly = dragBuildUp(SMALL.craft, around);
    expect(() => fly({ speed: 3, weightInWater: 840, lineAngle: -89 * Math.PI / 180 })).toThrow(
      RangeError,
    );
    expect(() => fly({ speed: 0, weightInWater: 840 })).toThrow(RangeError);
    expect(() => fly({ speed: 4, weightInWater: NaN })).toThrow(RangeError);
    expect(() => dragBuildUp({ ...SMALL.craft, area: 0 }, around)).toThrow(RangeError);
    expect(() => dragBuildUp({ ...SMALL.craft, thicknessRatio: NaN }, around)).toThrow(RangeError);
  });
});

describe("stall and takeoff speed", () => {
  const scaling = (of: typeof SMALL) => ({
    kinematicViscosity: of.water.kinematicViscosity,
    chord: of.craft.area / of.craft.span,
    reference: 4e5,
    exponent: 0.1,
  });
  const task = (of: typeof SMALL, depth: number, largestLiftCoefficient: number) => ({
    weightInWater: weightInWater({
      mass: of.mass,
      wetVolume: of.wingVolume + strutVolume(of.craft.struts, depth),
      ...of.water,
    }),
    density: of.water.density,
    area: of.craft.area,
    largestLiftCoefficient,
  });
  it("equals the worked case with Reynolds scaling", () => {
    // 1e-8: nine printed digits of a solved root.
    expect(stallSpeed(task(SMALL, 0.4, 1.05), scaling(SMALL))).toBeCloseTo(3.24529562, 7);
    expect(stallSpeed({ ...task(SMALL, 0.65, 1.05), usableShare: 0.85 }, scaling(SMALL)))
      .toBeCloseTo(3.50067273, 7);
  });
  it("is the textbook's where nothing scales", () => {
    // 9810 N, 16.2 m2, 1.225 kg/m3, 1.6; 900 N, 0.12 m2, 0.9 in sea and fresh water: lift equation.
    const of = (weightInWater: number, area: number, density: number, c: number) =>
      stallSpeed({ weightInWater, area, density, largestLiftCoefficient: c });
    expect(of(9810, 16.2, 1.225, 1.6)).toBeCloseTo(24.8579, 4);
    expect(of(900, 0.12, 1025, 0.9)).toBeCloseTo(4.0324, 4);
    expect(of(900, 0.12, 999.1026, 0.9)).toBeCloseTo(4.0843, 4);
  });
  it("falls a little with slope, and with exponent zero ignores viscosity", () => {
    const one = task(SMALL, 0.4, 1.05);
    expect(stallSpeed({ ...one, slope: 0.1 }) / stallSpeed(one)).toBeCloseTo(1.01 ** -0.25, 12);
    expect(stallSpeed(one, { ...scaling(SMALL), exponent: 0 })).toBeCloseTo(stallSpeed(one), 12);
  });
  it("refuses what floats and what is not a number", () => {
    const one = task(SMALL, 0.4, 1.05);
    expect(() => stallSpeed({ ...one, weightInWater: -3 })).toThrow(RangeError);
    expect(() => stallSpeed({ ...one, largestLiftCoefficient: NaN })).toThrow(RangeError);
    expect(() => stallSpeed({ ...one, slope: NaN })).toThrow(RangeError);
  });
});
