/**
 * What the reader of a page may move about a craft, and what the library computes from.
 *
 * @module
 */
import type { LiveControl } from "../base/records.ts";
import { fromSi, toSi, unitNamed } from "../base/units.ts";
import type { Dimension } from "../base/tables.ts";
import type { Craft } from "../model/planform-drag.ts";

/** A design as it was measured. */
export interface LiveDesign {
  readonly design: string;
  /** In `designs.csv`, from 1. */
  readonly place: number;
  readonly craft: Craft;
  /** m3 */
  readonly wetVolume: number;
  /** Of the wing, at the Reynolds number of `LIFT_REFERENCE`, 1. */
  readonly largestLiftCoefficient: number;
  /** m: wing under the surface with the board just clear. */
  readonly takeoffDepth: number;
}

/** What may be moved, SI. */
export interface LiveSetting {
  /** kg, all that flies. */
  readonly mass: number;
  /** K */
  readonly temperature: number;
  /** kg/kg */
  readonly salinity: number;
  /** m of the wing below the surface while it runs. */
  readonly depth: number;
  /** m2, one a design, in the order of the designs. */
  readonly areas: readonly number[];
}

/** All that the browser needs: no clock, no seed. */
export interface LiveTask {
  readonly designs: readonly LiveDesign[];
  /** m/s2 */
  readonly gravity: number;
  /** As published. */
  readonly published: LiveSetting;
}

/** The longest a control may be, in steps to either side. */
interface Reach {
  readonly low: number;
  readonly high: number;
  readonly step: number;
  readonly decimals: number;
}

interface ControlWords {
  readonly name: string;
  readonly label: string;
  readonly unit: string;
  readonly spokenUnit: string;
}

/** A control whose start is as published, to the bit of its decimals, and whose ends lie whole steps away. */
function control(words: ControlWords, start: number, reach: Reach): LiveControl {
  const { low, high, step, decimals } = reach;
  const rounded = (value: number) => Number(value.toFixed(decimals));
  const at = rounded(start);
  const down = Math.max(0, Math.floor((at - low) / step + 1e-9));
  const up = Math.max(0, Math.floor((high - at) / step + 1e-9));
  return {
    ...words,
    decimals,
    step,
    from: rounded(at - down * step),
    to: rounded(at + up * step),
    start: at,
  };
}

const AREA = "area-";

/** Where the control's unit is not the one of the library. */
const UNITS: Readonly<Record<string, readonly [string, Dimension]>> = {
  temperature: ["degC", "temperature"],
  salinity: ["g/kg", "salinity"],
};

function shown(name: string, value: number): number {
  const unit = UNITS[name];
  return unit === undefined ? value : fromSi(value, unitNamed(...unit));
}

/**
 * The controls of a task: load, water, depth, and one area a design, each with the range in which the model is of use.
 *
 * @param task designs and the setting as published
 * @returns in the order in which a page shows them
 */
export function liveControls({ designs, published }: LiveTask): LiveControl[] {
  const { mass, temperature, salinity, depth } = published;
  const widest = Math.max(...designs.map((one) => one.craft.span));
  // The surface factor is known from a hundredth of the span on; a little more, so that the doubt of the depth stays inside.
  const shallow = Math.max(0.05, 0.05 * widest);
  const deep = Math.max(depth, ...designs.map((one) => one.takeoffDepth));
  return [
    control(
      { name: "mass", label: "Load, all that flies", unit: "kg", spokenUnit: "kilograms" },
      mass,
      { low: 0.5 * mass, high: 1.6 * mass, step: 1, decimals: 1 },
    ),
    control(
      {
        name: "temperature",
        label: "Water temperature",
        unit: "°C",
        spokenUnit: "degrees Celsius",
      },
      shown("temperature", temperature),
      { low: 0, high: 35, step: 0.5, decimals: 1 },
    ),
    control(
      { name: "salinity", label: "Salinity", unit: "g/kg", spokenUnit: "grams per kilogram" },
      shown("salinity", salinity),
      { low: 0, high: 40, step: 1, decimals: 1 },
    ),
    control(
      { name: "depth", label: "Running depth of the wing", unit: "m", spokenUnit: "metres" },
      depth,
      { low: shallow, high: deep + 0.1, step: 0.01, decimals: 3 },
    ),
    ...published.areas.map((area, at) =>
      control(
        {
          name: `${AREA}${at}`,
          label: `Area of ${designs[at]!.design}`,
          unit: "m²",
          spokenUnit: "square metres",
        },
        area,
        { low: 0.6 * area, high: 1.6 * area, step: 0.001, decimals: 4 },
      )
    ),
  ];
}

/**
 * The setting that some controls stand at; one that was not moved keeps its published value to the last bit.
 *
 * @param task as published
 * @param controls of the task
 * @param values by the controls' names, in their units
 * @returns the setting, SI
 */
export function liveSetting(
  task: LiveTask,
  controls: readonly LiveControl[],
  values: Readonly<Record<string, number>>,
): LiveSetting {
  const moved = (name: string, published: number): number => {
    const value = values[name];
    const start = controls.find((one) => one.name === name)?.start;
    if (value === undefined || value === start) return published;
    const unit = UNITS[name];
    return unit === undefined ? value : toSi(value, unitNamed(...unit));
  };
  const { mass, temperature, salinity, depth, areas } = task.published;
  return {
    mass: moved("mass", mass),
    temperature: moved("temperature", temperature),
    salinity: moved("salinity", salinity),
    depth: moved("depth", depth),
    areas: areas.map((area, at) => moved(`${AREA}${at}`, area)),
  };
}
