/**
 * What the reader of a page may move about some designs, and what the library computes from.
 *
 * @module
 */
import { printable } from "../base/printable.ts";
import type { LiveControl } from "../base/records.ts";
import type { Dimension } from "../base/tables.ts";
import { fromSi, toSi, unitNamed } from "../base/units.ts";
import type { Doubt } from "../fit/takeoff-doubts.ts";
import type { SteadyCraft } from "../model/steady-craft.ts";

/** A design as published. */
export interface LiveDesign {
  readonly design: string;
  /** In `designs.csv`, from 1. */
  readonly place: number;
  readonly craft: SteadyCraft;
  readonly doubts: readonly Doubt[];
  /** What the published answer says of it, in words. */
  readonly published: string;
}

/** All that the browser needs: numbers only, no seed and no clock. */
export interface LiveTask {
  /** One or more. */
  readonly designs: readonly LiveDesign[];
}

/** A control that moves one number of every craft alike. */
interface Common {
  readonly key: "mass" | "temperature" | "salinity" | "runningDepth";
  readonly label: string;
  readonly unit: string;
  readonly spokenUnit: string;
  readonly step: number;
  /** Where the control's unit is not the one of the library: its name and kind. */
  readonly shownIn: readonly [string, Dimension] | null;
  /** Ends that the control reaches at the most, in its unit. */
  ends(designs: readonly LiveDesign[], start: number): readonly [number, number];
}

/** Shallowest running depth in spans: a little above what the surface factor knows, so that the doubt of the depth stays inside. */
const SHALLOW = 0.05;

const COMMON: readonly Common[] = [
  {
    key: "mass",
    label: "Load, all that flies",
    unit: "kg",
    spokenUnit: "kilograms",
    step: 1,
    shownIn: null,
    ends: (_, start) => [0.5 * start, 1.6 * start],
  },
  {
    key: "temperature",
    label: "Water temperature",
    unit: "°C",
    spokenUnit: "degrees Celsius",
    step: 0.5,
    shownIn: ["degC", "temperature"],
    ends: () => [0, 35],
  },
  {
    key: "salinity",
    label: "Salinity",
    unit: "g/kg",
    spokenUnit: "grams per kilogram",
    step: 1,
    shownIn: ["g/kg", "salinity"],
    ends: () => [0, 40],
  },
  {
    key: "runningDepth",
    label: "Running depth",
    unit: "m",
    spokenUnit: "metres",
    step: 0.01,
    shownIn: null,
    ends: (designs, start) => [
      Math.max(0.05, ...designs.map((one) => SHALLOW * one.craft.span)),
      Math.max(start, ...designs.map((one) => one.craft.takeoffDepth)),
    ],
  },
];

/** Steps of an area, m2. */
const AREA_STEP = 0.001;

const areaName = (at: number) => `area-${at}`;

/** Fewest decimals that write both numbers. */
function decimalsFor(one: number, other: number): number {
  const exact = (value: number, decimals: number) =>
    Math.abs(Number(value.toFixed(decimals)) - value) < 1e-9;
  let decimals = 0;
  while (decimals < 4 && !(exact(one, decimals) && exact(other, decimals))) decimals++;
  return decimals;
}

/** A control that starts as published and whose ends lie whole steps away, both within the ends given if the start is. */
function control(
  words: Pick<LiveControl, "name" | "label" | "unit" | "spokenUnit">,
  start: number,
  step: number,
  [low, high]: readonly [number, number],
): LiveControl {
  const decimals = decimalsFor(start, step);
  const rounded = (value: number) => Number(value.toFixed(decimals));
  const steps = (room: number) => Math.max(0, Math.floor(room / step + 1e-9));
  return {
    ...words,
    decimals,
    step,
    from: rounded(start - steps(start - low) * step),
    to: rounded(start + steps(high - start) * step),
    start: rounded(start),
  };
}

/**
 * The controls of a task: load, water, depth, and one area a design, each over the range in which the model is of use.
 *
 * @param task one design or more
 * @returns controls in the order in which a page shows them
 */
export function liveControls({ designs }: LiveTask): LiveControl[] {
  const { craft } = designs[0]!;
  return [
    ...COMMON.map(({ key, label, unit, spokenUnit, step, shownIn, ends }) => {
      const start = shownIn === null ? craft[key] : fromSi(craft[key], unitNamed(...shownIn));
      return control({ name: key, label, unit, spokenUnit }, start, step, ends(designs, start));
    }),
    ...designs.map(({ design, craft: { area } }, at) =>
      control(
        {
          name: areaName(at),
          label: `Area of ${printable(design)}`,
          unit: "m²",
          spokenUnit: "square metres",
        },
        area,
        AREA_STEP,
        [0.6 * area, 1.6 * area],
      )
    ),
  ];
}

/**
 * The crafts with what was moved. Span and thickness over chord stay when an area is moved, so the wing's volume goes with its square.
 *
 * @param task designs as published
 * @param values what was moved, by the controls' names, in their units; all else stays as published, to the last bit
 * @returns one craft a design
 */
export function liveCrafts(
  { designs }: LiveTask,
  values: Readonly<Record<string, number>>,
): SteadyCraft[] {
  const common = COMMON.flatMap(({ key, shownIn }) => {
    const value = values[key];
    if (value === undefined) return [];
    return [[key, shownIn === null ? value : toSi(value, unitNamed(...shownIn))] as const];
  });
  return designs.map(({ craft }, at) => {
    const area = values[areaName(at)] ?? craft.area;
    const wingVolume = craft.wingVolume * (area / craft.area) ** 2;
    return { ...craft, ...Object.fromEntries(common), area, wingVolume };
  });
}
