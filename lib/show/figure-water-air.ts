/**
 * Figure: the speeds of the same wing with the same load in water and in air, on one axis.
 *
 * @module
 */
import * as Plot from "@observablehq/plot";
import { printable } from "../base/printable.ts";
import type { Quantity } from "../base/quantity.ts";
import type { FigureRecord } from "../base/records.ts";
import { formatNumber } from "../base/rounding.ts";
import { listInWords } from "../base/sentence-words.ts";
import type { TakeoffSpeeds } from "../base/takeoff-answer.ts";
import type { TakeoffEvidence } from "../decide/estimate-takeoff.ts";
import { designColour, designStyle, INK, PAPER } from "./design-style.ts";
import { cutToWidth, type DrawingSize, figureRecord, textWidth } from "./drawing.ts";
import { intervalBars } from "./interval-marks.ts";
import { rowFrame } from "./row-frame.ts";
import { extentOf } from "./speed-plot.ts";
import { waterBesideAirTable } from "./takeoff-table.ts";

const SPEEDS = [
  ["stallSpeed", "stall speed"],
  ["takeoffSpeed", "takeoff speed"],
  ["leastPowerSpeed", "least-power speed"],
  ["leastDragSpeed", "least-drag speed"],
] as const satisfies readonly (readonly [keyof TakeoffSpeeds, string])[];

/** One interval of the figure. */
export interface SpeedRow {
  readonly design: string;
  readonly place: number;
  readonly medium: "water" | "air";
  readonly label: string;
  readonly speed: Quantity;
}

/**
 * The intervals that the figure draws, speed by speed.
 *
 * @param evidence whole
 * @returns water and air of each design under each speed
 */
function speedRows({ designs }: TakeoffEvidence): SpeedRow[] {
  return SPEEDS.flatMap(([key, label]) =>
    designs.flatMap(({ answer, prepared: { place } }) => {
      const design = printable(answer.design);
      const [water, air] = [answer[key], answer.inAir?.[key] ?? null];
      return [
        ...(water === null
          ? []
          : [{ design, place, medium: "water" as const, label, speed: water }]),
        ...(air === null ? [] : [{ design, place, medium: "air" as const, label, speed: air }]),
      ];
    })
  );
}

/** Units between the rows of one design, between designs, and above a group for its label. */
const ROW = 15, GAP = 8, HEAD = 28;

/** How many times as fast the same wing flies in air if density were all. */
function densityRatio({ answer }: TakeoffEvidence): number {
  const air = answer.designs.find((one) => one.inAir !== null)?.inAir?.density;
  const water = answer.setting?.density;
  return air === undefined || water === undefined ? 28.6 : Math.sqrt(water / air);
}

/** Round speeds for the axis on top, m/s in air. */
function airTicks(from: number, to: number, count: number): number[] {
  const rough = (to - from) / count;
  const step = [5, 10, 20, 50, 100, 200].find((one) => one >= rough) ?? 500;
  const first = Math.ceil(from / step);
  return Array.from({ length: Math.floor(to / step) - first + 1 }, (_, i) => (first + i) * step);
}

function plotOf(rows: readonly SpeedRow[], ratio: number, size: DrawingSize) {
  const { narrow, fontSize } = size;
  const designs = [...new Set(rows.map((one) => one.design))];
  const labels = [...new Set(rows.map((one) => one.label))];
  const pair = 2 * ROW + GAP;
  const group = HEAD + designs.length * pair;
  const yOf = (label: string, design: string, medium: SpeedRow["medium"]) =>
    labels.indexOf(label) * group + HEAD + designs.indexOf(design) * pair +
    (medium === "air" ? ROW : 0);
  const names = designs.map((one) => cutToWidth(one, narrow ? 70 : 120, fontSize));
  const margins = {
    top: 58,
    bottom: 46,
    left: 14,
    right: 16 + Math.max(0, ...names.map((one) => textWidth(one, fontSize))),
  };
  const scaled = rows.map((one) => {
    const factor = one.medium === "air" ? 1 / ratio : 1;
    const by = (value: number | null) => value === null ? null : value * factor;
    return {
      x: one.speed.value * factor,
      low: by(one.speed.low),
      high: by(one.speed.high),
      y: yOf(one.label, one.design, one.medium),
      place: one.place,
      medium: one.medium,
    };
  });
  const [least, most] = extentOf(
    scaled.flatMap(({ x, low, high }) => [low ?? x, high ?? x]),
    [2, 6],
  );
  const pad = 0.04 * (most - least);
  const [low, high] = [least - pad, most + pad];
  const ticks = narrow ? 5 : 7;
  const onTop = airTicks(low * ratio, high * ratio, ticks);
  const dots = (medium: SpeedRow["medium"]) =>
    [...new Set(rows.map((one) => one.place))].map((place) =>
      Plot.dot(scaled.filter((one) => one.medium === medium && one.place === place), {
        x: "x",
        y: "y",
        r: narrow ? 4.5 : 5,
        symbol: designStyle(place).symbol,
        fill: medium === "water" ? designColour(place) : PAPER,
        stroke: medium === "water" ? PAPER : designColour(place),
        strokeWidth: medium === "water" ? 1 : 2,
      })
    );
  return {
    ...rowFrame(size, Math.max(1, labels.length) * group, margins),
    x: { domain: [low, high] },
    marks: [
      Plot.gridX({ ticks, stroke: INK, strokeOpacity: 0.1 }),
      Plot.axisX({ ticks, tickSize: 4, label: "in water (m/s), filled marks", labelOffset: 40 }),
      Plot.axisX(onTop.map((one) => one / ratio), {
        anchor: "top",
        tickSize: 4,
        label: "in air (m/s), hollow marks",
        labelOffset: 40,
        text: onTop.map(String),
      }),
      ...intervalBars(scaled),
      ...dots("water"),
      ...dots("air"),
      ...labels.map((label, at) =>
        Plot.text([label], {
          frameAnchor: "left",
          y: [at * group + 7],
          fill: INK,
          textAnchor: "start",
        })
      ),
      ...designs.map((design, at) =>
        Plot.text([names[at]!], {
          frameAnchor: "right",
          y: [yOf(labels[0]!, design, "water") + ROW / 2],
          dx: 8,
          fill: INK,
          textAnchor: "start",
        })
      ),
    ],
  };
}

/**
 * Speeds in water and in air, on two axes whose ratio is what density alone would make.
 *
 * @param evidence whole
 * @param name names the files; "water-air" unless said otherwise
 * @returns the figure, with both media side by side as its table
 */
export function figureWaterAir(evidence: TakeoffEvidence, name = "water-air"): FigureRecord {
  const rows = speedRows(evidence);
  const ratio = densityRatio(evidence);
  const ratios = evidence.answer.designs.flatMap(({ design, takeoffSpeed, inAir }) =>
    takeoffSpeed === null || inAir?.takeoffSpeed == null ? [] : [
      `${printable(design)} ${formatNumber(inAir.takeoffSpeed.value / takeoffSpeed.value, 1)}`,
    ]
  );
  const caption = rows.length === 0
    ? "No design flies under this load: there is nothing to draw."
    : `The same wing under the same load takes off in air so many times as fast as in water: ${
      listInWords(ratios)
    }. The upper axis is the lower one times ${
      formatNumber(ratio, 1)
    }, the square root of the two densities: if density were all, each hollow mark would stand right under its filled one. ` +
      "The water's buoyancy, the larger lift coefficient at a larger Reynolds number, and the drag of surface, struts and rider move it. Bars are " +
      "95 % intervals.";
  return figureRecord({
    name,
    title: "Speeds in water and in air",
    description: caption,
    caption,
    breakout: false,
    table: { ...waterBesideAirTable(evidence), name: `${name}-speeds` },
  }, (size) => plotOf(rows, ratio, size));
}
