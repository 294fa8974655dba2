/**
 * What a page says of a setting that its reader chose.
 *
 * @module
 */
import type { LiveControl } from "../base/records.ts";
import { escapeHtml } from "../base/escape-html.ts";
import { formatNumber, NO_BREAK_SPACE } from "../base/rounding.ts";
import { atSentenceStart } from "../base/sentence-words.ts";
import type { LiveFlight, LiveQuantity, LiveState } from "./live-state.ts";

/** Decimals of a value: by its interval if it has one, else three digits. */
function decimalsOf({ value, low, high }: LiveQuantity): number {
  const size = low === null || high === null ? Math.abs(value) / 100 : (high - low) / 4;
  return size > 0 ? Math.max(0, -Math.floor(Math.log10(size))) : 0;
}

function quantity(one: LiveQuantity, unit: string): string {
  const decimals = decimalsOf(one);
  const value = `${formatNumber(one.value, decimals)}${NO_BREAK_SPACE}${unit}`;
  if (one.low === null || one.high === null) return value;
  return `${value} (${formatNumber(one.low, decimals)} to ${formatNumber(one.high, decimals)})`;
}

function leastWords(
  { speed, value, atStall }: LiveFlight["leastDrag"],
  what: string,
  unit: string,
): string {
  const words = `${what} ${quantity(value, unit)}`;
  return atStall ? `${words} right at the stall` : `${words} at ${quantity(speed, "m/s")}`;
}

/**
 * One design at the setting.
 *
 * @param state of the design
 * @returns a sentence
 */
export function liveSentence(state: LiveState): string {
  const name = atSentenceStart(state.design);
  if (!state.flies) return `${name}: nothing lifts it here; ${state.reason}.`;
  return `${name} takes off at ${quantity(state.takeoffSpeed, "m/s")} with ` +
    `${quantity(state.forceAtTakeoff, "N")} on the line and stalls below ` +
    `${quantity(state.stallSpeed, "m/s")}; ` +
    `${leastWords(state.leastDrag, "least drag", "N")}, ` +
    `${leastWords(state.leastPower, "least power", "W")}.`;
}

/** What a control stands at, as printed. */
export function controlText(control: LiveControl, value: number): string {
  const unit = control.unit === "" ? "" : `${NO_BREAK_SPACE}${control.unit}`;
  return formatNumber(value, control.decimals) + unit;
}

/**
 * What a page says below the controls.
 *
 * @param controls with their labels
 * @param values where they stand, in their units
 * @param states of the designs
 * @param moved whether anything differs from the published setting
 * @returns HTML of paragraphs
 */
export function liveSummary(
  controls: readonly LiveControl[],
  values: Readonly<Record<string, number>>,
  states: readonly LiveState[],
  moved: boolean,
): string {
  const changed = controls.filter((one) => values[one.name] !== one.start);
  const setting = changed.map((one) =>
    `${one.label} ${controlText(one, values[one.name]!)} (published: ${
      controlText(one, one.start)
    })`
  );
  const head = moved ? `${setting.join("; ")}.` : "As published.";
  return [head, ...states.map(liveSentence)].map((one) => `<p>${escapeHtml(one)}</p>`).join("");
}
