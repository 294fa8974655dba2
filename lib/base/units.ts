/**
 * Units as people write them, with their factors to SI: the only place of conversion.
 *
 * Factors are kept as whole-number fractions, so that decimal text can be converted exactly: see `decimal-to-si.ts`.
 *
 * @module
 */
import type { Dimension } from "./tables.ts";

/** One unit: `SI value = (value + shift) x numerator / denominator`. */
export interface Unit {
  /** The name we print, plain ASCII. */
  readonly name: string;
  readonly dimension: Dimension;
  readonly numerator: bigint;
  readonly denominator: bigint;
  /** Decimal text added before scaling; only temperatures have one. */
  readonly shift: string;
  /** Other ways of writing it. */
  readonly spellings: readonly string[];
  /** Where the factor is from. */
  readonly source: string;
}

/** SI unit of each dimension: what every typed row holds. Salinity is a mass fraction, kg of salt a kg of water. */
export const SI_UNITS: Readonly<Record<Dimension, string>> = {
  speed: "m/s",
  acceleration: "m/s2",
  length: "m",
  area: "m2",
  volume: "m3",
  mass: "kg",
  force: "N",
  power: "W",
  time: "s",
  angle: "rad",
  temperature: "K",
  salinity: "1",
  ratio: "1",
};

const SI = "BIPM, SI Brochure, 9th ed. 2019";
const NIST = "NIST SP 811 (2008), appendix B.8";

const unit = (
  dimension: Dimension,
  name: string,
  factor: readonly [number | bigint, number | bigint],
  source: string,
  spellings: readonly string[] = [],
  shift = "0",
): Unit => ({
  name,
  dimension,
  numerator: BigInt(factor[0]),
  denominator: BigInt(factor[1]),
  shift,
  spellings,
  source,
});

/** Every unit that a table may use. Within a dimension the first is the SI one. */
export const UNITS: readonly Unit[] = [
  unit("speed", "m/s", [1, 1], SI, ["mps", "ms-1", "m s-1", "meter/s", "metre/s"]),
  unit("speed", "km/h", [5, 18], SI, ["kmh", "kph", "kmph", "km/hr", "kmh-1", "km h-1"]),
  unit("speed", "kn", [463, 900], `${NIST}: knot = 1852 m/h`, [
    "kt",
    "kts",
    "knot",
    "knots",
    "kns",
  ]),
  unit("speed", "mph", [44704, 100000], NIST, ["mi/h", "mile/h", "miles/h"]),
  unit("speed", "ft/s", [3048, 10000], NIST, ["fps", "ft/sec", "feet/s"]),
  unit("speed", "cm/s", [1, 100], SI, []),

  unit("acceleration", "m/s2", [1, 1], SI, ["m/s/s", "ms-2", "m s-2", "mps2"]),
  unit("acceleration", "cm/s2", [1, 100], SI, ["cm/s/s"]),
  unit("acceleration", "ft/s2", [3048, 10000], NIST, ["ft/s/s"]),

  unit("length", "m", [1, 1], SI, ["meter", "metre", "meters", "metres", "mtr"]),
  unit("length", "mm", [1, 1000], SI, ["millimeter", "millimetre", "millimeters", "millimetres"]),
  unit("length", "cm", [1, 100], SI, ["centimeter", "centimetre", "centimeters", "centimetres"]),
  unit("length", "dm", [1, 10], SI, []),
  unit("length", "km", [1000, 1], SI, []),
  unit("length", "in", [254, 10000], NIST, ["inch", "inches", '"', "''"]),
  unit("length", "ft", [3048, 10000], NIST, ["foot", "feet", "'"]),

  unit("area", "m2", [1, 1], SI, ["sqm", "sq m", "qm"]),
  unit("area", "dm2", [1, 100], SI, ["sqdm", "sq dm"]),
  unit("area", "cm2", [1, 10000], SI, ["sqcm", "sq cm", "qcm"]),
  unit("area", "mm2", [1, 1000000], SI, ["sqmm", "sq mm"]),
  unit("area", "in2", [64516, 100000000], NIST, ["sqin", "sq in", "inch2"]),
  unit("area", "ft2", [9290304, 100000000], NIST, ["sqft", "sq ft", "foot2"]),

  unit("volume", "m3", [1, 1], SI, ["cbm"]),
  unit("volume", "l", [1, 1000], SI, ["liter", "litre", "liters", "litres", "ltr", "dm3"]),
  unit("volume", "ml", [1, 1000000], SI, ["cm3", "ccm", "cc", "milliliter", "millilitre"]),
  unit("volume", "in3", [16387064n, 1000000000000n], NIST, ["cuin", "cu in"]),
  unit("volume", "ft3", [28316846592n, 1000000000000n], NIST, ["cuft", "cu ft"]),

  unit("mass", "kg", [1, 1], SI, ["kilo", "kilos", "kilogram", "kilograms", "kgs"]),
  unit("mass", "g", [1, 1000], SI, ["gram", "grams", "gr"]),
  unit("mass", "lb", [45359237n, 100000000n], NIST, ["lbs", "pound", "pounds", "lbm"]),

  unit("force", "N", [1, 1], SI, ["newton", "newtons"]),
  unit("force", "kN", [1000, 1], SI, ["kilonewton"]),
  unit("force", "kgf", [980665, 100000], NIST, ["kp", "kilopond"]),
  unit("force", "lbf", [44482216152605n, 10000000000000n], NIST, ["lbsf", "poundforce"]),

  unit("power", "W", [1, 1], SI, ["watt", "watts"]),
  unit("power", "kW", [1000, 1], SI, ["kilowatt", "kilowatts"]),

  unit("time", "s", [1, 1], SI, ["sec", "secs", "second", "seconds"]),
  unit("time", "ms", [1, 1000], SI, ["millisecond", "milliseconds", "msec"]),
  unit("time", "min", [60, 1], SI, ["minute", "minutes", "mins"]),
  unit("time", "h", [3600, 1], SI, ["hour", "hours", "hr"]),

  unit("angle", "rad", [1, 1], SI, ["radian", "radians"]),
  // The factor pi/180 is no fraction: see toSi.
  unit("angle", "deg", [1, 180], SI, ["°", "degree", "degrees", "degs"]),

  unit("temperature", "K", [1, 1], SI, ["kelvin"]),
  unit("temperature", "degC", [1, 1], SI, ["°C", "C", "celsius", "deg C"], "273.15"),
  unit("temperature", "degF", [5, 9], NIST, ["°F", "F", "fahrenheit", "deg F"], "459.67"),

  unit("salinity", "1", [1, 1], SI, ["kg/kg"]),
  unit("salinity", "g/kg", [1, 1000], SI, ["psu", "ppt", "‰", "pss", "g/l"]),
  unit("salinity", "%", [1, 100], SI, ["percent", "pct"]),

  unit("ratio", "1", [1, 1], SI, ["ratio", "-", "none"]),
  unit("ratio", "%", [1, 100], SI, ["percent", "pct", "per cent"]),
];

function plain(text: string): string {
  return text.replace(/[º˚]/g, "°").normalize("NFKC").replace(/[\s^*·_]+/g, "").replace(
    /[−–]/g,
    "-",
  ).replace(/⁄/g, "/");
}

/**
 * The unit that a text means, if it is one.
 *
 * Exact spelling wins; otherwise upper and lower case, spaces, `^` and raised digits do not matter (`Km / h`, `m²`, `m^2`).
 *
 * @param text as written, for instance between the square brackets of a header
 * @param dimension look only among units of this kind; without it the first unit that fits
 * @returns the unit, or `null`
 * @example
 * ```ts
 * import { findUnit } from "lakeproof/base/units.ts";
 * import { equal } from "node:assert/strict";
 * equal(findUnit("m²", "area")?.name, "m2");
 * ```
 */
export function findUnit(text: string, dimension?: Dimension): Unit | null {
  const wanted = plain(text);
  const among = dimension === undefined ? UNITS : UNITS.filter((u) => u.dimension === dimension);
  const spelt = (u: Unit) => [u.name, ...u.spellings].map(plain);
  return among.find((u) => spelt(u).includes(wanted)) ??
    among.find((u) => spelt(u).some((s) => s.toLowerCase() === wanted.toLowerCase())) ?? null;
}

/**
 * The unit of a known name, as the tables name their defaults.
 *
 * @param name as `UNITS` has it
 * @param dimension what it measures
 * @returns the unit
 * @throws RangeError when there is none: a fault of ours, not of the data
 */
export function unitNamed(name: string, dimension: Dimension): Unit {
  const found = findUnit(name, dimension);
  if (found === null) throw new RangeError(`Cannot convert ${dimension}: no unit called ${name}`);
  return found;
}

/** The numerator over the denominator as a plain number, for spreads and differences: no shift of the zero. */
function factorOf(from: Unit): number {
  const fraction = Number(from.numerator) / Number(from.denominator);
  return from.name === "deg" ? Math.PI / 180 : fraction;
}

/**
 * A value in SI.
 *
 * @param value in `from`; for a temperature a reading on its scale
 * @param from unit that the value stands in
 * @returns SI
 */
export function toSi(value: number, from: Unit): number {
  if (from.name === "deg") return value * Math.PI / 180;
  return (value + Number(from.shift)) * Number(from.numerator) / Number(from.denominator);
}

/**
 * A value of SI in another unit; undoes {@link toSi}.
 *
 * @param value SI
 * @param to the unit wanted
 * @returns the value in it
 */
export function fromSi(value: number, to: Unit): number {
  if (to.name === "deg") return value * 180 / Math.PI;
  return value * Number(to.denominator) / Number(to.numerator) - Number(to.shift);
}

/**
 * A spread or difference (an uncertainty) in SI: scaled, its zero not shifted.
 *
 * @param value in `from`
 * @param from its unit
 * @returns SI
 */
export function spreadToSi(value: number, from: Unit): number {
  return value * factorOf(from);
}
