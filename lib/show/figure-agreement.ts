/**
 * Figure: what tow and glides say of the same quantity, side by side, and both together where they agree.
 *
 * @module
 */
import * as Plot from "@observablehq/plot";
import { printable } from "../base/printable.ts";
import type { Quantity } from "../base/quantity.ts";
import type { FigureRecord } from "../base/records.ts";
import type { TowAgreement } from "../base/tow-traces.ts";
import type { TowEvidence } from "../decide/compare-tows.ts";
import { INK, PAPER } from "./design-style.ts";
import { cutToWidth, type DrawingSize, figureRecord } from "./drawing.ts";
import { intervalBars, meanMarks } from "./interval-marks.ts";
import { ratioAxis, ratioAxisMarks, ratioScale } from "./ratio-axis.ts";
import { rowFrame } from "./row-frame.ts";
import { towEntryName } from "./tow-entry-name.ts";
import { agreementTable, agreementWord, quantityName } from "./tow-traces-text.ts";

/** One quantity, everything over what the tow says. */
export interface AgreementRow {
  readonly design: string;
  readonly place: number;
  readonly quantity: string;
  readonly word: string;
  readonly sides: readonly {
    /** `plain` stands for glides without a speed trace. */
    readonly name: "tow" | "glides" | "plain" | "together";
    readonly value: number;
    readonly low: number;
    readonly high: number;
  }[];
}

/**
 * The numbers that the figure draws.
 *
 * @param evidence whole
 * @returns one entry a quantity
 */
export function agreementRows(evidence: TowEvidence): AgreementRow[] {
  const { answer, designs } = evidence;
  return answer.agreement.map((one: TowAgreement) => {
    const side = (name: AgreementRow["sides"][number]["name"], q: Quantity) => ({
      name,
      value: q.value / one.tow.value,
      low: q.low! / one.tow.value,
      high: q.high! / one.tow.value,
    });
    return {
      design: printable(towEntryName(evidence, one)),
      place: designs.find((own) => own.answer.design === one.design)!.place,
      quantity: quantityName(one),
      word: agreementWord(one),
      sides: [
        side("tow", one.tow),
        side(one.kind === "glides" ? "plain" : "glides", one.traces),
        ...(one.combined === null ? [] : [side("together", one.combined)]),
      ],
    };
  });
}

/** True for a line of glides of either kind: drawn hollow. */
const glided = ({ name }: AgreementRow["sides"][number]) => name === "glides" || name === "plain";

/** Height of a quantity with its words and three intervals, and of one interval, in units. */
const GROUP = 74, LINE = 17, WORDS = 22;

function plotOf(rows: readonly AgreementRow[], size: DrawingSize) {
  const { narrow, fontSize, width } = size;
  const margins = { top: 8, bottom: 46, left: narrow ? 66 : 76, right: 16 };
  const units = width - margins.left - margins.right;
  const all = rows.flatMap((row) => row.sides.flatMap((one) => [one.low, one.high]));
  const axis = ratioAxis(all, units, narrow ? 34 : 40);
  const within = (ratio: number) => Math.min(axis.high, Math.max(axis.low, ratio));
  const words = { fill: INK, stroke: PAPER, strokeWidth: 5, lineAnchor: "middle" as const };
  const placed = rows.flatMap((row, at) =>
    row.sides.map((side, line) => ({
      ...side,
      place: row.place,
      y: at * GROUP + WORDS + line * LINE,
      low: within(side.low),
      high: within(side.high),
    }))
  );
  const point = ({ value, y, place }: typeof placed[number]) => ({ x: within(value), y, place });
  return {
    ...rowFrame(size, Math.max(1, rows.length) * GROUP, margins),
    x: ratioScale(axis),
    marks: [
      ...ratioAxisMarks(axis, narrow ? "times the tow's" : "times what the tow says"),
      ...intervalBars(placed),
      ...meanMarks(placed.filter((one) => !glided(one)).map(point)),
      ...meanMarks(placed.filter((one) => glided(one)).map(point), true),
      Plot.text(placed, {
        frameAnchor: "left",
        textAnchor: "end",
        dx: -6,
        y: "y",
        text: "name",
        ...words,
      }),
      ...rows.map((row, at) =>
        Plot.text(
          [cutToWidth(
            `${row.design}, ${row.quantity}: ${row.word}`,
            width - 20,
            fontSize,
          )],
          {
            frameAnchor: "left",
            textAnchor: "start",
            dx: 8 - margins.left,
            y: [at * GROUP + 4],
            ...words,
          },
        )
      ),
    ],
  };
}

/**
 * Tow and glides of each design side by side, as multiples of what the tow says.
 *
 * @param evidence whole
 * @param name names the files; "agreement" unless said otherwise
 * @returns the figure, with the values as its table
 */
export function figureAgreement(evidence: TowEvidence, name = "agreement"): FigureRecord {
  const rows = agreementRows(evidence);
  const caption = rows.length === 0
    ? "No design has both a tow and glides, so nothing is drawn."
    : "Full marks are the tow and both together, hollow ones the glides, bars the 95\u00a0% intervals, all over what the " +
      "tow says. En is their difference over its own 95\u00a0% uncertainty: up to 1 they agree, and only then are they put together. Plain are glides without a speed trace, which tell the drag at one speed.";
  return figureRecord({
    name,
    title: "Tow and glides side by side",
    description: `${caption} ${
      rows.map((row) => `${row.design}, ${row.quantity}: ${row.word}.`).join(" ")
    }`,
    caption,
    breakout: false,
    table: { ...agreementTable(evidence), name: `${name}-numbers` },
  }, (size) => plotOf(rows, size));
}
