/**
 * Fresh and sea water at the surface: density, viscosity, vapour pressure.
 *
 * @module
 */

/** The two things that a thermometer and a salt meter tell. */
export interface WaterState {
  /** K, on the scale of 1990. */
  readonly temperature: number;
  /** Mass fraction of salt, kg/kg; 0 for fresh water, 0.03516504 for standard sea water. */
  readonly salinity: number;
}

/** What the flow needs to know. */
export interface Water {
  /** kg/m3 */
  readonly density: number;
  /** Dynamic viscosity, Pa s. */
  readonly viscosity: number;
  /** m2/s */
  readonly kinematicViscosity: number;
  /** Pa */
  readonly vapourPressure: number;
}

const ICE_POINT = 273.15;

/** Mass fraction of salt of a water of practical salinity 35 (Millero et al. 2008, reference composition). */
const STANDARD_SEA = 0.03516504;

/**
 * Practical salinity of a mass fraction of salt.
 *
 * The two scales differ by 0.47 %; most formulas of before 2010 are in practical salinity.
 *
 * Source: Millero, Feistel, Wright and McDougall 2008, reference composition: 35.16504 g/kg at practical salinity 35.
 *
 * @param salinity kg/kg
 * @returns practical salinity, 1
 *
 * @example
 * ```ts
 * import { practicalSalinity } from "lakeproof/model/water.ts";
 * if (Math.abs(practicalSalinity(0.03516504) - 35) > 1e-12) throw new Error("standard sea water");
 * ```
 */
export function practicalSalinity(salinity: number): number {
  return salinity / STANDARD_SEA * 35;
}

/** Celsius temperature and practical salinity, after the check that every formula here holds for them. */
function requireRange({ temperature, salinity }: WaterState): { t: number; s: number } {
  const t = temperature - ICE_POINT;
  const s = practicalSalinity(salinity);
  // A hair of tolerance, so that 40 degC written in kelvin is not refused for its last bit.
  if (!(t >= -1e-9 && t <= 40 + 1e-9)) {
    throw new RangeError(
      `Cannot describe water as its temperature must be 273.15 to 313.15 K (0 to 40 degC): ${temperature} K`,
    );
  }
  if (!(s >= 0 && s <= 42 + 1e-9)) {
    throw new RangeError(
      `Cannot describe water as its salinity must be 0 to 0.0422 kg/kg (0 to 42 practical): ${salinity} kg/kg`,
    );
  }
  return { t, s };
}

/**
 * Density of water at the surface.
 *
 * One standard atmosphere, no pressure of depth: a metre of depth adds 0.005 kg/m3. The ITTC's table for sea water stands
 * 0.045 kg/m3 higher, since it was computed for ten metres of depth.
 *
 * Source: EOS-80, UNESCO Technical Papers in Marine Science 38 (1981) and 44 (1983), at zero pressure, practical salinity 0 to
 * 42, 0 to 40 degC; temperature taken to the scale of 1968 by 1.00024.
 *
 * @param state temperature in K, salinity in kg/kg
 * @returns kg/m3
 * @throws RangeError outside the formula's range
 *
 * @example
 * ```ts
 * import { waterDensity } from "lakeproof/model/water.ts";
 * const density = waterDensity({ temperature: 288.15, salinity: 0 });
 * if (Math.abs(density - 999.1) > 0.005) throw new Error(`${density}`);
 * ```
 */
export function waterDensity(state: WaterState): number {
  const { t: t90, s } = requireRange(state);
  const t = 1.00024 * t90;
  const pure = 999.842594 +
    t * (6.793952e-2 +
        t * (-9.09529e-3 + t * (1.001685e-4 + t * (-1.120083e-6 + t * 6.536332e-9))));
  const linear = 0.824493 +
    t * (-4.0899e-3 + t * (7.6438e-5 + t * (-8.2467e-7 + t * 5.3875e-9)));
  const root = -5.72466e-3 + t * (1.0227e-4 - t * 1.6546e-6);
  return pure + s * (linear + Math.sqrt(s) * root + s * 4.8314e-4);
}

/**
 * Dynamic viscosity of water.
 *
 * Source: pure water IAPWS SR6-08 (2011) equation for viscosity at 0.1 MPa; times the salt factor of Sharqawy, Lienhard and
 * Zubair 2010, Desalination and Water Treatment 16:354, equations 22 and 23.
 *
 * @param state temperature in K (0 to 40 degC), salinity in kg/kg
 * @returns Pa s
 * @throws RangeError outside the range in which density is known as well
 *
 * @example
 * ```ts
 * import { waterViscosity } from "lakeproof/model/water.ts";
 * const viscosity = waterViscosity({ temperature: 293.15, salinity: 0 });
 * if (Math.abs(viscosity - 1.0016e-3) > 5e-8) throw new Error(`${viscosity}`);
 * ```
 */
export function waterViscosity(state: WaterState): number {
  const { t } = requireRange(state);
  const s = state.salinity;
  const first = 1.541 + 1.998e-2 * t - 9.52e-5 * t * t;
  const second = 7.974 - 7.561e-2 * t + 4.724e-4 * t * t;
  return pureWaterViscosity(state.temperature) * (1 + first * s + second * s * s);
}

/**
 * Dynamic viscosity of pure liquid water at 0.1 MPa.
 *
 * Source: IAPWS SR6-08 (2011), 253.15 to 383.15 K.
 *
 * @param temperature K
 * @returns Pa s
 * @throws RangeError outside 253.15 to 383.15 K
 *
 * @example
 * ```ts
 * import { pureWaterViscosity } from "lakeproof/model/water.ts";
 * if (Math.abs(pureWaterViscosity(298.15) - 8.89996774e-4) > 5e-13) throw new Error("IAPWS table 8");
 * ```
 */
export function pureWaterViscosity(temperature: number): number {
  if (!(temperature >= 253.15 && temperature <= 383.15)) {
    throw new RangeError(
      `Cannot give the viscosity of water as its temperature must be 253.15 to 383.15 K: ${temperature} K`,
    );
  }
  const reduced = temperature / 300;
  return 1e-6 * (280.68 * reduced ** -1.9 + 511.45 * reduced ** -7.7 +
    61.131 * reduced ** -19.6 + 0.45903 * reduced ** -40);
}

/**
 * Pressure at which water boils at its own temperature.
 *
 * Source: IAPWS SR1-86 (1992), saturation pressure, for fresh water; lowered by salt as `1/(1 + 0.57357 S/(1 - S))`, the factor in
 * use with ITTC 7.5-02-01-03 (2011).
 *
 * @param state temperature in K (0 to 40 degC), salinity in kg/kg
 * @returns Pa
 * @throws RangeError outside the range in which density is known as well
 *
 * @example
 * ```ts
 * import { vapourPressure } from "lakeproof/model/water.ts";
 * const pascal = vapourPressure({ temperature: 293.15, salinity: 0 });
 * if (Math.abs(pascal - 2339.19) > 0.006) throw new Error(`${pascal}`);
 * ```
 */
export function vapourPressure(state: WaterState): number {
  requireRange(state);
  const critical = { temperature: 647.096, pressure: 22.064e6 };
  const tau = 1 - state.temperature / critical.temperature;
  const exponent = -7.85951783 * tau + 1.84408259 * tau ** 1.5 - 11.7866497 * tau ** 3 +
    22.6807411 * tau ** 3.5 - 15.9618719 * tau ** 4 + 1.80122502 * tau ** 7.5;
  const pure = critical.pressure *
    Math.exp(critical.temperature / state.temperature * exponent);
  return pure / (1 + 0.57357 * state.salinity / (1 - state.salinity));
}

/**
 * Everything about the water at once.
 *
 * Source: the formulas of {@link waterDensity}, {@link waterViscosity} and {@link vapourPressure}.
 *
 * @param state temperature in K (0 to 40 degC), salinity in kg/kg (practical salinity 0 to 42)
 * @returns density, viscosity, kinematic viscosity, vapour pressure in SI
 * @throws RangeError outside the formulas' ranges
 *
 * @example
 * ```ts
 * import { water } from "lakeproof/model/water.ts";
 * const lake = water({ temperature: 288.15, salinity: 0 });
 * if (Math.abs(lake.kinematicViscosity - 1.1386e-6) > 5e-11) throw new Error("ITTC's value at 15 degC");
 * ```
 */
export function water(state: WaterState): Water {
  const density = waterDensity(state);
  const viscosity = waterViscosity(state);
  return {
    density,
    viscosity,
    kinematicViscosity: viscosity / density,
    vapourPressure: vapourPressure(state),
  };
}
