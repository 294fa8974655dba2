/**
 * Invented: how the tows of Quillwater were run and measured: the sweeps, their scatter, the load cell and the other instruments.
 *
 * @module
 */
import { gravity } from "lakeproof/model/gravity.ts";
import { seededRandom } from "lakeproof/numeric/random.ts";
import { PLACE } from "./quillwater-craft.ts";
import { mastDrag, MORNING, RUNNING_DEPTH, type TowedCraft } from "./quillwater-tow-craft.ts";

/** Change the name and every reading changes; the foils stay. */
export const SEED = "Quillwater, tow boat";

/** Speeds aimed at, m/s. */
export const SPEEDS = [3.6, 4, 4.4, 4.8, 5.2, 5.6, 6, 6.4, 6.8];
const SWEEPS_EACH = 2;
const DEGREE = Math.PI / 180;

/** m/s of wind up the lake: ahead on the way down. */
export const WIND = 0.2;

/** What the morning does to the readings: standard deviations, as shares unless said otherwise. */
export const MORNING_SCATTER = {
  /** Wake, ripples and trim of one window. */
  window: 0.008,
  /** Where in the wake a sweep ran: one offset of the drag for all of its readings. */
  wake: 0.004,
  /** Of the set speed: the boat's throttle. */
  throttle: 0.012,
  /** m/s2 */
  speedChange: 0.003,
  /** m */
  depth: 0.015,
} as const;

/** The instruments' errors, standard unless said otherwise. Cell scale and zero are what calibrations.csv corrects. */
export const ERRORS = {
  /** N, by window. */
  tension: 0.4,
  cellScale: 0.015,
  /** N */
  cellZero: 0.8,
  /** N, from before to after. */
  cellDrift: 0.3,
  /** N, of a reading with a weight at rest. */
  cellAtRest: 0.08,
  /** Share: the kitchen scale that weighed the weights. */
  weights: 0.001,
  /** m/s, by window. */
  speed: 0.03,
  speedScale: 0.006,
  /** m/s */
  speedZero: 0.015,
  /** deg, by window and common. */
  angle: 0.5,
  level: 0.3,
  /** m, by window and common. */
  depth: 0.03,
  bands: 0.01,
  /** deg, by window and common. */
  pitch: 0.3,
  deck: 0.4,
  /** kg, limits. */
  mass: 0.5,
} as const;

/** Rows as written, by column. */
export type Rows = readonly Readonly<Record<string, string>>[];
type Random = ReturnType<typeof seededRandom>;

/** Rounds the way a person writes: to a step, with its decimals. */
function written(value: number, step: number, decimals: number): string {
  const text = (Math.round(value / step) * step).toFixed(decimals);
  return Number(text) === 0 ? (0).toFixed(decimals) : text;
}

/** A load cell with its own idea of a newton. */
export interface LoadCell {
  /** N shown for N pulled, at a share of the session; without scatter. */
  readonly shows: (pull: number, share: number) => number;
}

/** A cell with errors drawn anew. */
export function loadCell(chance: Random): LoadCell {
  const scale = 1 + ERRORS.cellScale * chance.normal();
  const zero = ERRORS.cellZero * chance.normal();
  const drift = ERRORS.cellDrift * chance.normal();
  // It warms in the sun: the zero moves more in the later half.
  return { shows: (pull, share) => pull * scale + zero + drift * share ** 1.3 };
}

/** Known weights on the cell before and after, and its zero with nothing on it. */
export function calibrationRows(cell: LoadCell, chance: Random): Rows {
  const kg = 1 + ERRORS.weights * chance.normal();
  const here = gravity(PLACE.latitude * DEGREE, PLACE.altitude);
  const row = (when: "before" | "after", applied: number | null) => ({
    instrument: "load cell",
    when,
    applied: applied === null ? "" : String(applied),
    applied_unit: applied === null ? "" : "kg",
    reading: written(
      cell.shows((applied ?? 0) * kg * here, when === "before" ? 0 : 1) +
        ERRORS.cellAtRest * chance.normal(),
      0.1,
      1,
    ),
    reading_unit: "N",
  });
  return [
    row("before", null),
    row("before", null),
    ...[2, 4, 6, 8, 10, 12].map((load) => row("before", load)),
    ...[4, 8, 12].map((load) => row("after", load)),
    row("after", null),
    row("after", null),
  ];
}

/** What log, protractor and bands on the mast get wrong in every reading; always the first numbers of their stream. */
function sharedErrors(errors: Random) {
  return {
    speedScale: 1 + ERRORS.speedScale * errors.normal(),
    speedZero: ERRORS.speedZero * errors.normal(),
    level: ERRORS.level * errors.normal(),
    bands: ERRORS.bands * errors.normal(),
  };
}

/** Speed shown over true speed of the one paddle log that the class has. */
export function paddleLogScale(seed: string = SEED): number {
  return sharedErrors(seededRandom(seed).stream("instruments")).speedScale;
}

/** Every reading in the order taken: sweep by sweep, designs in turn, passes up and down the lake in turn. */
export function towRows(crafts: readonly TowedCraft[], cell: LoadCell, chance: Random): Rows {
  const errors = chance.stream("instruments");
  const { speedScale, speedZero, level, bands } = sharedErrors(errors);
  const weighed = ERRORS.mass * (2 * errors.uniform() - 1);
  // A stream of its own: the column came later, and the others must not move.
  const phone = chance.stream("phone on the deck");
  const deck = ERRORS.deck * phone.normal();
  const count = SWEEPS_EACH * crafts.length * SPEEDS.length;
  const rows: Record<string, string>[] = [];
  for (let sweep = 0; sweep < SWEEPS_EACH * crafts.length; sweep++) {
    const craft = crafts[sweep % crafts.length]!;
    const wake = MORNING_SCATTER.wake * chance.normal();
    // A design's second sweep runs each speed the other way.
    const turned = Math.floor(sweep / crafts.length);
    SPEEDS.forEach((setSpeed, place) => {
      const down = (place + turned) % 2 === 1;
      const speed = setSpeed * (1 + MORNING_SCATTER.throttle * chance.normal());
      const angle = Math.min(10, Math.max(5, 8.5 - 0.7 * (setSpeed - 3.6) + 0.6 * chance.normal()));
      const depth = RUNNING_DEPTH + MORNING_SCATTER.depth * chance.normal();
      const speedChange = MORNING_SCATTER.speedChange * chance.normal();
      const state = {
        speed,
        lineAngle: angle * DEGREE,
        depth,
        headwind: down ? WIND : -WIND,
        speedChange,
        moment: Math.exp(wake + MORNING_SCATTER.window * chance.normal()),
      };
      const pull = craft.tension(state);
      const shown = cell.shows(pull, rows.length / (count - 1)) +
        ERRORS.tension * errors.normal();
      rows.push({
        point: String(rows.length + 1),
        date: MORNING.date,
        block: MORNING.block,
        sweep: String(sweep + 1),
        design: craft.name,
        set_speed: setSpeed.toFixed(1),
        direction: down ? "down" : "up",
        speed: written(speed * speedScale + speedZero + ERRORS.speed * errors.normal(), 0.01, 2),
        speed_over: "water",
        speed_change: written(speedChange, 0.001, 3),
        line_tension: written(shown, 0.1, 1),
        line_angle: written(angle + level + ERRORS.angle * errors.normal(), 0.1, 1),
        depth: written(depth + bands + ERRORS.depth * errors.normal(), 0.01, 2),
        pitch: written(
          craft.pitch(state, pull) + deck + ERRORS.pitch * phone.normal(),
          0.1,
          1,
        ),
        carried_mass: written(craft.mass + weighed, 0.1, 1),
        window: String(8 + Math.floor(5 * chance.uniform())),
      });
    });
  }
  return rows;
}

/** Speeds aimed at with the mast alone, m/s. */
const TARE_SPEEDS = [3.6, 4.2, 4.8, 5.4, 6, 6.8];

/**
 * Readings of the mast alone, after the last sweep: hung from a beam, so that the line is nearly level and nobody stands on it.
 *
 * @param count rows before them
 * @param cell the same load cell, warm
 * @param chance the same morning; the numbers of these rows come from a stream of their own
 * @returns rows
 */
export function tareRows(count: number, cell: LoadCell, chance: Random): Rows {
  const { speedScale, speedZero, level, bands } = sharedErrors(chance.stream("instruments"));
  const own = chance.stream("mast alone");
  return TARE_SPEEDS.map((setSpeed, place) => {
    const speed = setSpeed * (1 + MORNING_SCATTER.throttle * own.normal());
    const angle = 1.5 + 0.3 * own.normal();
    const depth = RUNNING_DEPTH + MORNING_SCATTER.depth * own.normal();
    const pull = mastDrag(speed, depth) / Math.cos(angle * DEGREE) *
      Math.exp(MORNING_SCATTER.window * own.normal());
    return {
      point: String(count + place + 1),
      date: MORNING.date,
      block: MORNING.block,
      sweep: "mast alone",
      design: "tare",
      set_speed: setSpeed.toFixed(1),
      direction: place % 2 === 1 ? "down" : "up",
      speed: written(speed * speedScale + speedZero + ERRORS.speed * own.normal(), 0.01, 2),
      speed_over: "water",
      line_tension: written(cell.shows(pull, 1) + ERRORS.tension * own.normal(), 0.1, 1),
      line_angle: written(angle + level + ERRORS.angle * own.normal(), 0.1, 1),
      depth: written(depth + bands + ERRORS.depth * own.normal(), 0.01, 2),
      window: String(8 + Math.floor(5 * own.uniform())),
    };
  });
}
