/**
 * What a page says of a setting that its reader chose.
 *
 * @module
 */
import { escapeHtml } from "../base/escape-html.ts";
import type { LiveControl } from "../base/records.ts";
import type { Quantity } from "../base/quantity.ts";
import { formatInterval, formatNumber, formatQuantity, NO_BREAK_SPACE } from "../base/rounding.ts";
import { atSentenceStart } from "../base/sentence-words.ts";
import { NORMAL_95 } from "../fit/takeoff-band.ts";
import type { FirstOrderValue, TakeoffLeast } from "../fit/takeoff-curve.ts";
import type { LiveTask } from "./live-task.ts";
import { designColour } from "./design-style.ts";
import type { LiveState } from "./live-state.ts";
import { markSvg } from "./mark-svg.ts";

/**
 * A value with its first-order interval as a quantity, so that it is printed as all others are.
 *
 * @param of value and ends
 * @param unit SI
 * @returns a quantity; its standard uncertainty is that of the logarithm times the value
 */
export function firstOrderQuantity(
  { value, low, high }: FirstOrderValue,
  unit: string,
): Quantity {
  return {
    value,
    standardUncertainty: value * Math.log(high / low) / (2 * NORMAL_95),
    degreesOfFreedom: null,
    low,
    high,
    level: 0.95,
    kind: "interval",
    unit,
  };
}

function quantity(of: FirstOrderValue, unit: string): string {
  const whole = firstOrderQuantity(of, unit);
  return `${formatQuantity(whole)} (${formatInterval(whole, { unit: false })})`;
}

const leastWords = ({ speed, value, atStall }: TakeoffLeast, unit: string) =>
  atStall
    ? `${quantity(value, unit)} right at the stall`
    : `${quantity(value, unit)} at ${quantity(speed, "m/s")}`;

/**
 * One design at a setting.
 *
 * @param state of the design
 * @returns a sentence or two with first-order 95 % intervals in brackets
 */
export function liveSentence({ design, result }: LiveState): string {
  const name = atSentenceStart(design);
  if (!result.ok) return `${name}: nothing lifts it here, as ${result.reason}.`;
  return `${name} takes off at ${quantity(result.takeoffSpeed, "m/s")} with ` +
    `${quantity(result.towForceAtTakeoff, "N")} of pull; it stalls at ` +
    `${quantity(result.stallSpeed, "m/s")}. ` +
    `Least drag: ${leastWords(result.leastDrag, "N")}; ` +
    `least power: ${leastWords(result.leastPower, "W")}.`;
}

/**
 * What a control stands at.
 *
 * @param control with its unit
 * @param value in that unit
 * @returns as printed
 */
export function controlText(control: LiveControl, value: number): string {
  const unit = control.unit === "" ? "" : `${NO_BREAK_SPACE}${control.unit}`;
  return formatNumber(value, control.decimals) + unit;
}

/** Where the controls of a page stand, and what came of it. */
export interface LiveMoved {
  readonly task: LiveTask;
  readonly controls: readonly LiveControl[];
  /** What was moved, by the controls' names, in their units; none for the published setting. */
  readonly values: Readonly<Record<string, number>>;
  readonly states: readonly LiveState[];
}

/**
 * What a page says below the controls: at the published setting what was published, with the intervals by drawing; else what the
 * library computes now, with first-order intervals.
 *
 * @param moved where the controls stand
 * @returns HTML of paragraphs
 */
export function liveSummary({ task, controls, values, states }: LiveMoved): string {
  const moved = controls.filter((one) => values[one.name] !== undefined).map((one) =>
    `${one.label} ${controlText(one, values[one.name]!)} instead of ${controlText(one, one.start)}`
  );
  const isMoved = moved.length > 0;
  const head = isMoved
    ? `Moved: ${moved.join("; ")}. In brackets: 95\u00a0% intervals, first order.`
    : "As published. In brackets: 95\u00a0% intervals of the published answer.";
  return [
    `<p>${escapeHtml(head)}</p>`,
    ...states.map((one, at) => {
      const words = isMoved ? liveSentence(one) : task.designs[at]!.published;
      return `<p>${markSvg(one.place, designColour(one.place), "mark")} ${
        escapeHtml([words, ...one.warnings].join(" "))
      }</p>`;
    }),
  ].join("");
}
