/**
 * The strip of an answer box: ratio and interval on a logarithmic axis about 1, with words either side.
 *
 * @module
 */
import type { AnswerRecord } from "../../base/records.ts";
import { escapeHtml } from "./escape-html.ts";

const WIDTH = 288;
const HEIGHT = 68;
const EDGE = 14;
/** Height of the axis line in the drawing. */
const AXIS = 44;
/** Height of the interval's bar. */
const BAR = 26;

/** Half widths that the axis may have, as ratios, smallest first, with their ticks above 1. */
const AXES: readonly { readonly end: number; readonly ticks: readonly number[] }[] = [
  { end: 1.12, ticks: [1.1] },
  { end: 1.25, ticks: [1.2] },
  { end: 1.6, ticks: [1.25, 1.5] },
  { end: 2.2, ticks: [1.5, 2] },
  { end: 4.4, ticks: [2, 4] },
];

/** Letters that fit on either side of the middle. */
const LETTERS = 19;

/** A word or two, cut where they would run into the other side. */
function shortened(text: string): string {
  const letters = [...text];
  return letters.length <= LETTERS ? text : letters.slice(0, LETTERS - 1).join("") + "…";
}

const round = (value: number) => Number(value.toFixed(1));

/** A ratio below 1 as its ticks are written: 0.8 beside 1.25, 0.5 beside 2. */
function tickText(ratio: number): string {
  return String(Number(ratio.toPrecision(2)));
}

/**
 * The strip as an SVG element that takes its colour from the text around it.
 *
 * @param strip ratio with both ends of its interval, all above 0
 * @param sides words left and right of 1
 * @param id of the element, for its title
 * @returns an SVG element of 288 by 68 units
 */
export function answerStrip(
  strip: NonNullable<AnswerRecord["strip"]>,
  sides: readonly [string, string],
  id: string,
): string {
  const farthest = Math.max(
    Math.abs(Math.log(strip.low)),
    Math.abs(Math.log(strip.high)),
    Math.abs(Math.log(strip.value)),
  );
  const axis = AXES.find(({ end }) => farthest <= Math.log(end)) ?? AXES.at(-1)!;
  const half = Math.log(axis.end);
  const reach = WIDTH / 2 - EDGE;
  const place = (ratio: number) =>
    round(WIDTH / 2 + reach * Math.max(-1, Math.min(1, Math.log(ratio) / half)));
  const outside = (ratio: number) => Math.abs(Math.log(ratio)) > half;

  const parts: string[] = [
    `<path d="M${EDGE} ${AXIS}H${WIDTH - EDGE}" stroke="currentColor" stroke-width="1"/>`,
    `<path d="M${WIDTH / 2} 14V${AXIS}" stroke="currentColor" stroke-width="1.2" ` +
    `stroke-dasharray="3 3"/>`,
  ];
  for (const tick of [...axis.ticks.map((one) => 1 / one), 1, ...axis.ticks]) {
    const x = place(tick);
    parts.push(
      `<path d="M${x} ${AXIS}v4" stroke="currentColor" stroke-width="1"/>`,
      `<text x="${x}" y="${AXIS + 18}" text-anchor="middle">${tickText(tick)}</text>`,
    );
  }
  const [left, right] = sides;
  parts.push(
    `<text x="0" y="11">${left === "" ? "" : "← " + escapeHtml(shortened(left))}</text>`,
    `<text x="${WIDTH}" y="11" text-anchor="end">${
      right === "" ? "" : escapeHtml(shortened(right)) + " →"
    }</text>`,
    `<path d="M${place(strip.low)} ${BAR}H${place(strip.high)}" stroke="currentColor" ` +
      `stroke-width="2.5"/>`,
  );
  for (const [end, sign] of [[strip.low, 1], [strip.high, -1]] as const) {
    const x = place(end);
    parts.push(
      outside(end)
        ? `<path d="M${round(x + sign * 7)} ${BAR - 5}L${x} ${BAR}L${round(x + sign * 7)} ${
          BAR + 5
        }" fill="none" stroke="currentColor" stroke-width="2"/>`
        : `<path d="M${x} ${BAR - 6}v12" stroke="currentColor" stroke-width="2"/>`,
    );
  }
  parts.push(`<circle cx="${place(strip.value)}" cy="${BAR}" r="5.5" fill="currentColor"/>`);
  const number = (value: number) => value.toFixed(2);
  const title = `Ratio ${number(strip.value)}, interval ${number(strip.low)} to ${
    number(strip.high)
  }; 1 is equal`;
  return `<svg class="strip" viewBox="0 0 ${WIDTH} ${HEIGHT}" width="${WIDTH}" height="${HEIGHT}" ` +
    `role="img" aria-labelledby="${id}-title"><title id="${id}-title">${title}</title>${
      parts.join("")
    }</svg>`;
}
