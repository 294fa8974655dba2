/**
 * Dry air by height: temperature, pressure, density, viscosity.
 *
 * @module
 */

/** What the flow needs to know of air. */
export interface Air {
  /** K */
  readonly temperature: number;
  /** Pa */
  readonly pressure: number;
  /** kg/m3 */
  readonly density: number;
  /** Dynamic viscosity, Pa s. */
  readonly viscosity: number;
  /** m2/s */
  readonly kinematicViscosity: number;
}

/** J/(kg K), as the standard has it: 8314.32 J/(kmol K) over 28.96442 kg/kmol. */
const GAS_CONSTANT = 287.05287;

/** m: the Earth's radius in the standard's rule for geopotential height. */
const RADIUS = 6_356_766;

/** Values at the sea, K and Pa; fall of temperature, K/m; gravity, m/s2. */
const SEA = { temperature: 288.15, pressure: 101_325, lapse: 0.0065, gravity: 9.80665 } as const;

/**
 * Geopotential height: the height at which a constant gravity would have done the same work.
 *
 * Source: ISO 2533:1975, `H = r z/(r + z)` with r = 6356766 m.
 *
 * @param altitude m above the sea, by tape
 * @returns m, a little less (0.8 m at 2250 m)
 *
 * @example
 * ```ts
 * import { geopotentialHeight } from "lakeproof/model/air.ts";
 * if (Math.abs(geopotentialHeight(5000) - 4996.07) > 0.005) throw new Error("5 km");
 * ```
 */
export function geopotentialHeight(altitude: number): number {
  return RADIUS * altitude / (RADIUS + altitude);
}

/**
 * Dynamic viscosity of air.
 *
 * Source: Sutherland's formula with the constants of ISO 2533:1975, `1.458e-6 T^1.5/(T + 110.4)`; 100 to 1900 K.
 *
 * @param temperature K
 * @returns Pa s
 * @throws RangeError outside 100 to 1900 K
 *
 * @example
 * ```ts
 * import { airViscosity } from "lakeproof/model/air.ts";
 * if (Math.abs(airViscosity(288.15) - 1.7894e-5) > 5e-10) throw new Error("printed value at the sea");
 * ```
 */
export function airViscosity(temperature: number): number {
  if (!(temperature >= 100 && temperature <= 1900)) {
    throw new RangeError(
      `Cannot give the viscosity of air as its temperature must be 100 to 1900 K: ${temperature} K`,
    );
  }
  return 1.458e-6 * temperature ** 1.5 / (temperature + 110.4);
}

/**
 * The standard's air at a height: an agreed middle of the year and of the world, not the weather.
 *
 * Dry: humidity is left out, and takes up to one per cent off the density on a hot damp day. A day 10 K warmer than the standard's
 * takes 3.5 % off it.
 *
 * Source: ISO 2533:1975, Standard Atmosphere, lowest layer: temperature falls by 6.5 K a kilometre of geopotential height, pressure
 * follows from `dp = -rho g dH` and the gas law; -2 to 11 km.
 *
 * @param altitude m above the sea, by tape
 * @returns temperature, pressure, density, viscosities in SI
 * @throws RangeError outside -2 to 11 km of geopotential height
 *
 * @example
 * ```ts
 * import { air } from "lakeproof/model/air.ts";
 * const lake = air(2000);
 * if (Math.abs(lake.density - 1.00655) > 5e-6) throw new Error("printed value at 2 km");
 * ```
 */
export function air(altitude: number): Air {
  const height = geopotentialHeight(altitude);
  if (!(height >= -2000 && height <= 11_000)) {
    throw new RangeError(
      `Cannot describe air as its height must be -2 to 11 km above the sea: ${altitude} m`,
    );
  }
  const temperature = SEA.temperature - SEA.lapse * height;
  const pressure = SEA.pressure *
    (temperature / SEA.temperature) ** (SEA.gravity / (GAS_CONSTANT * SEA.lapse));
  const density = pressure / (GAS_CONSTANT * temperature);
  const viscosity = airViscosity(temperature);
  return { temperature, pressure, density, viscosity, kinematicViscosity: viscosity / density };
}
