/**
 * The strip under a verdict: ratio and interval on a logarithmic axis about 1, in the colour of the text around it.
 *
 * @module
 */
import type { AnswerRecord } from "../base/records.ts";
import { formatNumber } from "../base/rounding.ts";
import { escapeHtml } from "../base/escape-html.ts";

const WIDTH = 288;
const HEIGHT = 68;
const EDGE = 14;
const BAR = 26;
const AXIS = 44;

/** Half widths of the axis, as ratios, with their ticks above 1. */
const AXES: readonly { readonly end: number; readonly ticks: readonly number[] }[] = [
  { end: 1.25, ticks: [1.2] },
  { end: 1.6, ticks: [1.25, 1.5] },
  { end: 2.2, ticks: [1.5, 2] },
  { end: 4.4, ticks: [2, 4] },
];

/**
 * The strip as SVG; an end that the axis does not reach is an arrow head.
 *
 * @param strip ratio and ends of its interval, above 0
 * @param sides words left and right of the line at 1
 * @returns an SVG element, 288 units wide
 */
export function answerStrip(
  strip: NonNullable<AnswerRecord["strip"]>,
  sides: readonly [string, string],
): string {
  const logs = [strip.low, strip.value, strip.high].map((one) => Math.abs(Math.log(one)));
  const axis = AXES.find(({ end }) => Math.max(...logs) <= Math.log(end)) ?? AXES.at(-1)!;
  const share = (ratio: number) => Math.log(ratio) / Math.log(axis.end);
  const place = (ratio: number) => {
    const within = Math.max(-1, Math.min(1, share(ratio)));
    return Number((WIDTH / 2 + within * (WIDTH / 2 - EDGE)).toFixed(1));
  };
  const line = (d: string, width: number, more = "") =>
    `<path d="${d}" fill="none" stroke="currentColor" stroke-width="${width}"${more}/>`;
  const text = (x: number, y: number, anchor: string, words: string) =>
    `<text x="${x}" y="${y}" text-anchor="${anchor}" fill="currentColor">${
      escapeHtml(words)
    }</text>`;
  const end = (ratio: number, inward: number) => {
    const x = place(ratio);
    return Math.abs(share(ratio)) > 1
      ? line(`M${x + 7 * inward} ${BAR - 5}L${x} ${BAR}L${x + 7 * inward} ${BAR + 5}`, 2)
      : line(`M${x} ${BAR - 6}v12`, 2);
  };
  const ticks = [...axis.ticks.map((tick) => 1 / tick), 1, ...axis.ticks];
  return [
    `<svg width="${WIDTH}" height="${HEIGHT}" viewBox="0 0 ${WIDTH} ${HEIGHT}" font-size="13" ` +
    `aria-hidden="true">`,
    line(`M${EDGE} ${AXIS}H${WIDTH - EDGE}`, 1),
    line(`M${WIDTH / 2} 14V${AXIS}`, 1.2, ` stroke-dasharray="3 3"`),
    ...ticks.map((tick) => line(`M${place(tick)} ${AXIS}v4`, 1)),
    ...ticks.map((tick) =>
      text(place(tick), AXIS + 18, "middle", String(Number(formatNumber(tick, 2))))
    ),
    text(0, 11, "start", sides[0]),
    text(WIDTH, 11, "end", sides[1]),
    line(`M${place(strip.low)} ${BAR}H${place(strip.high)}`, 2.5),
    end(strip.low, 1),
    end(strip.high, -1),
    `<circle cx="${place(strip.value)}" cy="${BAR}" r="5.5" fill="currentColor"/>`,
    "</svg>",
  ].join("");
}
