/**
 * What a page says of a setting that its reader chose.
 *
 * @module
 */
import { escapeHtml } from "../base/escape-html.ts";
import type { LiveControl } from "../base/records.ts";
import { decimalsOfUncertainty, formatNumber, NO_BREAK_SPACE } from "../base/rounding.ts";
import { atSentenceStart } from "../base/sentence-words.ts";
import type { FirstOrderValue, TakeoffLeast } from "../fit/takeoff-curve.ts";
import { designColour } from "./design-style.ts";
import type { LiveState } from "./live-state.ts";
import { markSvg } from "./mark-svg.ts";

/** A value with the ends of its interval, rounded as everywhere in the library. */
function quantity({ value, low, high }: FirstOrderValue, unit: string): string {
  const decimals = high > low ? decimalsOfUncertainty((high - low) / 4) : 2;
  const text = (number: number) => formatNumber(number, decimals);
  return `${text(value)}${NO_BREAK_SPACE}${unit} (${text(low)} to ${text(high)})`;
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
    `${quantity(result.towForceAtTakeoff, "N")} on the line and stalls below ` +
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

/**
 * What a page says below the controls.
 *
 * @param controls with their labels
 * @param values what was moved, by the controls' names, in their units; none for the published setting
 * @param states of the designs
 * @returns HTML of paragraphs
 */
export function liveSummary(
  controls: readonly LiveControl[],
  values: Readonly<Record<string, number>>,
  states: readonly LiveState[],
): string {
  const moved = controls.filter((one) => values[one.name] !== undefined).map((one) =>
    `${one.label} ${controlText(one, values[one.name]!)} instead of ${controlText(one, one.start)}`
  );
  const head = moved.length === 0 ? "As published." : `Moved: ${moved.join("; ")}.`;
  return [
    `<p>${escapeHtml(head)}</p>`,
    ...states.map((one) =>
      `<p>${markSvg(one.place, designColour(one.place), "mark")} ${
        escapeHtml(liveSentence(one))
      }</p>`
    ),
  ].join("");
}
