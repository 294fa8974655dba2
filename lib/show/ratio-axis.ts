/**
 * Axis of a ratio: logarithmic, so that twice as far and half as far stand equally far from 1.
 *
 * @module
 */
import * as Plot from "@observablehq/plot";
import { formatNumber } from "../base/rounding.ts";
import { INK } from "./design-style.ts";

/** An axis with its ticks; 1 is always on it. */
export interface RatioAxis {
  readonly low: number;
  readonly high: number;
  readonly ticks: readonly number[];
}

const LADDERS: readonly (readonly number[])[] = [
  [0.8, 0.85, 0.9, 0.95, 1, 1.05, 1.1, 1.15, 1.2, 1.25],
  [0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1, 1.1, 1.2, 1.4, 1.6, 1.8, 2, 2.5],
  [0.25, 0.33, 0.5, 0.67, 0.8, 1, 1.25, 1.5, 2, 3, 4],
  [0.1, 0.2, 0.5, 1, 2, 5, 10],
  [0.001, 0.01, 0.1, 1, 10, 100, 1000],
];

/** No axis is wider than this either way; what lies outside is drawn at its edge. */
const WIDEST = 1000;

/**
 * The axis that holds all values.
 *
 * @param values ratios, above 0
 * @param units length of the axis in units of the drawing
 * @param room units that a tick with its label wants
 * @returns ends and ticks; 1 is always among them
 */
export function ratioAxis(values: readonly number[], units: number, room: number): RatioAxis {
  const logs = values.map(Math.log);
  const [least, most] = [Math.min(0, ...logs), Math.max(0, ...logs)];
  const margin = Math.max(0.04, 0.07 * (most - least));
  const edge = Math.log(WIDEST);
  const low = Math.exp(Math.max(-edge, least - margin));
  const high = Math.exp(Math.min(edge, most + margin));
  const place = (ratio: number) => units * Math.log(ratio / low) / Math.log(high / low);
  for (const ladder of LADDERS) {
    const inside = ladder.filter((tick) => tick >= low && tick <= high);
    const close = inside.some((tick, at) => at > 0 && place(tick) - place(inside[at - 1]!) < room);
    const [first, last] = [ladder[0]!, ladder[ladder.length - 1]!];
    if (!close && (first <= low * 1.3 || last >= high / 1.3) && inside.length > 1) {
      return { low, high, ticks: inside };
    }
  }
  return { low, high, ticks: thinned(LADDERS[1]!, low, high, place, room) };
}

/** Ticks of a ladder that leave each other room, those nearest to 1 first. */
function thinned(
  ladder: readonly number[],
  low: number,
  high: number,
  place: (ratio: number) => number,
  room: number,
): number[] {
  const kept: number[] = [1];
  const nearest = [...ladder].sort((a, b) => Math.abs(Math.log(a)) - Math.abs(Math.log(b)));
  for (const tick of nearest) {
    if (tick < low || tick > high) continue;
    if (kept.every((one) => Math.abs(place(one) - place(tick)) >= room)) kept.push(tick);
  }
  return kept.sort((a, b) => a - b);
}

/**
 * The axis as the plotting library's scale; {@link ratioAxisMarks} draw it.
 *
 * @param axis of the figure
 * @returns a logarithmic scale from its low to its high end
 */
export function ratioScale(axis: RatioAxis) {
  return { type: "log" as const, domain: [axis.low, axis.high], axis: null };
}

/**
 * Lines and labels of the ticks, and the upright line at 1.
 *
 * @param axis of the figure
 * @param label below the ticks
 * @returns marks, to be drawn before all others
 */
export function ratioAxisMarks(axis: RatioAxis, label: string): Plot.Markish[] {
  return [
    Plot.gridX(axis.ticks, { stroke: INK, strokeOpacity: 0.1 }),
    Plot.axisX(axis.ticks, { text: tickText, tickSize: 4, label, labelOffset: 40 }),
    Plot.ruleX([1], { stroke: INK, strokeWidth: 1.5 }),
  ];
}

/** A tick's label: 0.5, 1, 1.25. */
function tickText(tick: number): string {
  return String(Number(formatNumber(tick, 3)));
}
