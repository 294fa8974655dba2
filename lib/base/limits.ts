/**
 * What a number in each column can be: one table of what is impossible and what is odd, with the reason.
 *
 * Beyond `possible` the cell is refused; beyond `usual` it is read and a warning says why it looks odd. Bounds are in SI
 * and are themselves allowed. They are wide on purpose: a slip of unit or of the decimal mark lands outside, a bold
 * design does not.
 *
 * @module
 */

/** Bounds of one column, SI. */
export interface Limits {
  readonly possible: readonly [number, number];
  /** Whether the lower bound itself is impossible (a distance of 0 is no glide). */
  readonly aboveLow: boolean;
  readonly usual: readonly [number, number];
  /** Why, in words for the builder. */
  readonly why: string;
}

const between = (
  possible: readonly [number, number],
  usual: readonly [number, number],
  why: string,
  aboveLow = false,
): Limits => ({ possible, usual, why, aboveLow });

const speed = between(
  [0, 25],
  [1.5, 9],
  "gliding and towed wings of this kind fly between about 2 and 9 m/s; none reaches 25 m/s (90 km/h)",
  true,
);
const mass = between(
  [20, 400],
  [40, 160],
  "rider, board and wing together weigh 40 to 160 kg",
  true,
);
const depth = between([0, 3], [0.05, 1.2], "the wing runs 0.05 to 1.2 m below the surface");

/** Limits by column name; the same quantity has the same limits in every table. Common practice, no source. */
export const LIMITS: Readonly<Record<string, Limits>> = {
  span: between([0.2, 8], [0.4, 4.5], "wings that carry a person span 0.4 to 4.5 m"),
  area: between([0.005, 4], [0.04, 0.6], "wings that carry a person have 0.04 to 0.6 m2"),
  wet_volume: between(
    [0, 0.2],
    [0.0003, 0.03],
    "a wing with its strut pushes 0.3 to 30 litres aside",
  ),
  thickness_ratio: between(
    [0, 0.5],
    [0.05, 0.25],
    "sections are 5 to 25 % thick; write 0.12, or put [%] after the column's name",
    true,
  ),
  largest_lift_coefficient: between([0, 4], [0.6, 2.2], "plain sections stall at 0.6 to 2.2", true),
  strut_count: between([0, 6], [1, 3], "a craft has one to three struts"),
  strut_chord: between([0.01, 0.6], [0.04, 0.25], "struts are 40 to 250 mm deep front to back"),
  strut_thickness: between([0.001, 0.1], [0.005, 0.04], "struts are 5 to 40 mm thick"),
  strut_length: between([0.05, 3], [0.3, 1.3], "struts are 0.3 to 1.3 m long"),
  board_draught: between([0, 1], [0, 0.25], "boards float 0 to 0.25 m deep"),
  extra_drag_area: between([0, 0.1], [0, 0.005], "what hangs beside the wing has 0 to 0.005 m2"),

  launch_speed: speed,
  end_speed: speed,
  speed,
  set_speed: speed,
  reference_launch_speed: speed,
  drop: between([-2, 5], [0, 2], "a glide loses 0 to 2 m of height between its two readings"),
  reference_drop: between([0, 5], [0, 2], "a glide loses 0 to 2 m of height"),
  distance: between([0, 2000], [1, 300], "glides of this kind go 1 to 300 m", true),
  duration: between([0, 600], [0.4, 120], "glides of this kind last 0.4 to 120 s", true),
  carried_mass: mass,
  reference_mass: mass,
  depth,
  running_depth: depth,

  speed_change: between([-5, 5], [-0.5, 0.5], "a steady window drifts less than 0.5 m/s2"),
  line_tension: between([-50, 5000], [0, 1000], "a towed craft of this size pulls 0 to 1000 N"),
  line_angle: between(
    [-Math.PI / 2, Math.PI / 2],
    [-0.35, 0.7],
    "lines run -20 to 40 degrees steep",
  ),
  pitch: between([-Math.PI / 2, Math.PI / 2], [-0.35, 0.35], "boards pitch less than 20 degrees"),
  window: between([0, 600], [1, 120], "steady windows last 1 to 120 s", true),

  time: between([-1e11, 1e11], [-1e11, 1e11], "a logger's clock counts seconds"),

  water_temperature: between(
    [273.15, 313.15],
    [273.15, 306.15],
    "open water is 0 to 40 degrees Celsius",
  ),
  salinity: between(
    [0, 0.042],
    [0, 0.042],
    "seas hold up to 42 g of salt a kg, and the formulas for water go no further",
  ),
  latitude: between(
    [-Math.PI / 2, Math.PI / 2],
    [-1.3, 1.3],
    "latitude runs from -90 to 90 degrees",
  ),
  altitude: between([-450, 7000], [-450, 4000], "lakes lie -450 to 7000 m above the sea"),
  wind_speed: between([0, 60], [0, 15], "nobody measures glides in more than 15 m/s of wind"),
  air_drag_area: between([0.01, 3], [0.2, 1.2], "riders and boards have 0.2 to 1.2 m2 in the air"),
  current: between([-10, 10], [-2, 2], "currents worth measuring in stay under 2 m/s"),
};

/** How a value stands to its column's limits. */
export type Standing = "fits" | "odd" | "impossible";

/**
 * Whether a value can stand in a column.
 *
 * @param column name without unit; one without limits always fits
 * @param value SI
 * @returns whether it fits, is odd, or can't be
 * @example
 * ```ts
 * import { standing } from "lakeproof/base/limits.ts";
 * import { equal } from "node:assert/strict";
 * equal(standing("launch_speed", 4.5), "fits");
 * equal(standing("launch_speed", 55.6), "impossible");
 * ```
 */
export function standing(column: string, value: number): Standing {
  const limits = LIMITS[column];
  if (limits === undefined) return "fits";
  const [low, high] = limits.possible;
  if (value < low || value > high || (limits.aboveLow && value === low)) return "impossible";
  return value < limits.usual[0] || value > limits.usual[1] ? "odd" : "fits";
}
