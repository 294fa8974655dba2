/**
 * One panel of curves over speed: what it holds, where it lies, its scales, axes and grid.
 *
 * @module
 */
import { escapeHtml } from "../base/escape-html.ts";
import { formatNumber } from "../base/rounding.ts";
import { INK } from "./design-style.ts";
import { type NiceAxis, niceAxis } from "./nice-axis.ts";

/** One place on a curve, with the ends of its band. */
export interface PanelPoint {
  /** m/s */
  readonly speed: number;
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

/** A curve of a design. */
export interface PanelCurve {
  readonly design: string;
  readonly place: number;
  /** `before` is a thin dotted line in soft ink: what the curve was before the reader moved anything. */
  readonly form: "now" | "before";
  /** In order of speed. */
  readonly points: readonly PanelPoint[];
}

/** A point that has a meaning of its own. */
export interface PanelMark {
  readonly place: number;
  /** `least` is the design's filled mark on its curve, `takeoff` a ring in its colour. */
  readonly kind: "least" | "takeoff";
  readonly speed: number;
  readonly value: number;
  /** Words beside it; `null` where designs stand too close for words. */
  readonly label: string | null;
}

/** One quantity over speed. */
export interface Panel {
  /** Quantity and unit. */
  readonly label: string;
  readonly curves: readonly PanelCurve[];
  readonly marks: readonly PanelMark[];
}

/** Where a panel lies, and its scales. */
export interface Frame {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly speeds: NiceAxis;
  readonly values: NiceAxis;
  x(speed: number): number;
  y(value: number): number;
}

/**
 * A length as it stands in a drawing.
 *
 * @param value units
 * @returns rounded to a hundredth
 */
export const units = (value: number) => String(Math.round(value * 100) / 100);

/**
 * The frame of a panel: values from zero up, both axes from tick to tick.
 *
 * @param panel what it must hold
 * @param speeds axis that all panels share
 * @param box edges in units
 * @param ticks the greatest number of steps of the values
 * @returns scales and edges
 */
export function frameOf(
  panel: Panel,
  speeds: NiceAxis,
  box: Omit<Frame, "speeds" | "values" | "x" | "y">,
  ticks: number,
): Frame {
  const all = [
    ...panel.curves.flatMap((one) => one.points.flatMap((at) => [at.value, at.high])),
    ...panel.marks.map((one) => one.value),
  ];
  const values = niceAxis(0, Math.max(1, ...all), ticks);
  const { left, right, top, bottom } = box;
  return {
    ...box,
    speeds,
    values,
    x: (speed) => left + (right - left) * (speed - speeds.from) / (speeds.to - speeds.from),
    y: (value) => bottom - (bottom - top) * value / values.to,
  };
}

/**
 * Axes and grid.
 *
 * @param frame of the panel
 * @param label of the values
 * @param speedLabel of the speeds; `null` where another panel below carries it
 * @returns SVG elements
 */
export function axes(frame: Frame, label: string, speedLabel: string | null): string[] {
  const { left, right, top, bottom, x, y, speeds, values } = frame;
  const line = (d: string) => `<path d="${d}"/>`;
  const text = (at: readonly [number, number], words: string) =>
    `<text x="${units(at[0])}" y="${units(at[1])}">${escapeHtml(words)}</text>`;
  return [
    `<g fill="none" stroke="${INK}" stroke-opacity="0.12">`,
    ...speeds.ticks.map((tick) => line(`M${units(x(tick))},${top}V${bottom}`)),
    ...values.ticks.map((tick) => line(`M${left},${units(y(tick))}H${right}`)),
    "</g>",
    `<g text-anchor="end">`,
    ...values.ticks.map((tick) =>
      text([left - 6, y(tick) + 4.5], formatNumber(tick, values.decimals))
    ),
    "</g>",
    `<g text-anchor="middle">`,
    ...speeds.ticks.map((tick) =>
      text([x(tick), bottom + 18], formatNumber(tick, speeds.decimals))
    ),
    "</g>",
    text([2, top - 14], `↑ ${label}`),
    ...(speedLabel === null ? [] : [
      `<text x="${right}" y="${bottom + 40}" text-anchor="end">${escapeHtml(speedLabel)} →</text>`,
    ]),
  ];
}
