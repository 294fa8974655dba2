/**
 * Figure: where the doubt about each towed design comes from, source by source, and what would make it smaller.
 *
 * @module
 */
import * as Plot from "@observablehq/plot";
import { printable } from "../base/printable.ts";
import { namedTow } from "./tow-entry-name.ts";
import type { FigureRecord, TableRecord } from "../base/records.ts";
import { formatPercent } from "../base/rounding.ts";
import { listInWords } from "../base/sentence-words.ts";
import type { TowEvidence } from "../decide/compare-tows.ts";
import { adviceFor, sharedByAll, whatHelps } from "../decide/tow-advice.ts";
import { designColour, designStyle, INK, INK_SOFT } from "./design-style.ts";
import { cutToWidth, type DrawingSize, figureRecord } from "./drawing.ts";
import { rowFrame } from "./row-frame.ts";
import { designCell, formattedCell, textCell } from "./table-cells.ts";
import { left, right } from "./table-columns.ts";

/** One source with each design's share. */
export interface ShareRow {
  readonly source: string;
  /** True where all readings share the error, so that more of them do not help. */
  readonly shared: boolean;
  readonly shares: readonly { readonly design: string; readonly place: number; share: number }[];
}

/** Sources that make less than this everywhere are drawn together. */
const SMALL = 0.02;

const largest = (row: ShareRow) => Math.max(...row.shares.map((one) => one.share));

/**
 * The numbers that the figure draws.
 *
 * @param evidence of a comparison
 * @returns one entry a source, those of single readings first, each kind from its largest share down; small ones added up
 */
export function shareRows({ designs }: TowEvidence): ShareRow[] {
  const told = designs.filter((one) => one.answer.uncertaintyShares.length > 0);
  const sources = [
    ...new Set(told.flatMap((one) => one.answer.uncertaintyShares.map((each) => each.source))),
  ];
  const rows = sources.map((source): ShareRow => ({
    source,
    shared: sharedByAll([{ source, share: 0 }]).length > 0,
    shares: told.map(({ answer, name, place }) => ({
      design: printable(name),
      place,
      share: answer.uncertaintyShares.find((one) => one.source === source)?.share ?? 0,
    })),
  }));
  return [false, true].flatMap((shared) => {
    const kind = rows.filter((row) => row.shared === shared)
      .sort((one, other) => largest(other) - largest(one));
    const small = kind.filter((row) => largest(row) < SMALL);
    if (small.length < 2) return kind.filter((row) => largest(row) > 0);
    const sum: ShareRow = {
      source: `${small.length} smaller ones`,
      shared,
      shares: small[0]!.shares.map((one, i) => ({
        ...one,
        share: small.reduce((total, row) => total + row.shares[i]!.share, 0),
      })),
    };
    return [...kind.filter((row) => largest(row) >= SMALL), ...(largest(sum) > 0 ? [sum] : [])];
  });
}

const HEADS = {
  own: "each reading's own, and the planform's",
  shared: "shared by all readings",
} as const;

/** Units of the drawing: a head, a source's name, a bar, the gap below a source. */
const ROOM = { head: 28, name: 17, bar: 13, gap: 7 } as const;

function laidOut(rows: readonly ShareRow[]) {
  let y = 0;
  const heads: { readonly text: string; readonly y: number }[] = [];
  const names: { readonly text: string; readonly y: number }[] = [];
  const bars: { readonly y: number; readonly place: number; readonly share: number }[] = [];
  rows.forEach((row, i) => {
    if (i === 0 || rows[i - 1]!.shared !== row.shared) {
      heads.push({ text: row.shared ? HEADS.shared : HEADS.own, y: y + ROOM.head / 2 });
      y += ROOM.head;
    }
    names.push({ text: row.source, y: y + ROOM.name / 2 });
    y += ROOM.name;
    row.shares.forEach(({ place, share }) => {
      bars.push({ y: y + ROOM.bar / 2, place, share });
      y += ROOM.bar;
    });
    y += ROOM.gap;
  });
  return { heads, names, bars, inner: Math.max(40, y) };
}

function plotOf(rows: readonly ShareRow[], size: DrawingSize): Plot.PlotOptions {
  const { fontSize, narrow, width } = size;
  const { heads, names, bars, inner } = laidOut(rows);
  const designs = rows[0]?.shares ?? [];
  const most = Math.max(0.1, ...bars.map((one) => one.share));
  const [marginLeft, marginRight] = [narrow ? 12 : 18, 52];
  const room = (width - marginLeft) / Math.max(1, designs.length) - 34;
  const starts = designs.map((_, i) => i * (Math.min(room, 150) + 34));
  return {
    ...rowFrame(size, inner, { top: 30, bottom: 16, left: marginLeft, right: marginRight }),
    x: { domain: [0, most], axis: null },
    marks: [
      Plot.ruleX([0], { stroke: INK, strokeWidth: 1 }),
      ...designs.flatMap(({ design, place }, i) => [
        Plot.dot([i], {
          frameAnchor: "top-left",
          dx: starts[i]! + 6,
          dy: -18,
          r: 4.5,
          symbol: designStyle(place).symbol,
          fill: designColour(place),
        }),
        Plot.text([cutToWidth(design, Math.min(room, 150), fontSize)], {
          frameAnchor: "top-left",
          textAnchor: "start",
          lineAnchor: "middle",
          dx: starts[i]! + 16,
          dy: -18,
          fill: INK,
        }),
      ]),
      Plot.text(heads, {
        y: "y",
        text: "text",
        frameAnchor: "left",
        textAnchor: "start",
        dx: 4,
        fontWeight: 600,
        fill: INK,
      }),
      Plot.text(names, {
        y: "y",
        text: (one: { readonly text: string }) =>
          cutToWidth(one.text, width - marginLeft - 12, fontSize),
        frameAnchor: "left",
        textAnchor: "start",
        dx: 4,
        fill: INK_SOFT,
      }),
      ...[...new Set(bars.map((one) => one.place))].flatMap((place) => {
        const mine = bars.filter((one) => one.place === place);
        return [
          Plot.rect(mine, {
            x1: 0,
            x2: "share",
            y1: (one: { readonly y: number }) => one.y - 4.5,
            y2: (one: { readonly y: number }) => one.y + 4.5,
            fill: designColour(place),
          }),
          Plot.dot(mine, {
            x: "share",
            y: "y",
            dx: 9,
            r: 3.5,
            symbol: designStyle(place).symbol,
            fill: designColour(place),
          }),
          Plot.text(mine, {
            x: "share",
            y: "y",
            dx: 16,
            textAnchor: "start",
            fontSize: fontSize - 2,
            fill: INK,
            text: (one: { readonly share: number }) => formatPercent(one.share),
          }),
        ];
      }),
    ],
  };
}

function numbersTable(rows: readonly ShareRow[], name: string): TableRecord {
  return {
    name: `${name}-numbers`,
    caption: "Share of each source in the variance, and what would make it smaller.",
    columns: [
      left("design"),
      left("source"),
      left("kind"),
      right("share"),
      left("what would help"),
    ],
    rows: (rows[0]?.shares ?? []).flatMap(({ design, place }, i) =>
      rows.map((row) => [
        designCell(design, place),
        textCell(row.source),
        textCell(row.shared ? "shared by all readings" : "own"),
        formattedCell(formatPercent(row.shares[i]!.share), row.shares[i]!.share),
        textCell(row.source.endsWith("smaller ones") ? "" : adviceFor(row.source)),
      ])
    ),
  };
}

function captionOf(evidence: TowEvidence): string {
  const told = evidence.answer.designs.map((one) => namedTow(evidence, one)).filter((one) =>
    one.uncertaintyShares.length > 0
  );
  if (told.length === 0) return "There is no law, so there is no doubt to share out.";
  const sums = told.map((one) => {
    const shared = sharedByAll(one.uncertaintyShares).reduce((sum, each) => sum + each.share, 0);
    return `${printable(one.design)} ${formatPercent(shared)}`;
  });
  const helps = told.map((one) =>
    `for ${printable(one.design)}, ${listInWords(whatHelps(one.uncertaintyShares))}`
  );
  const same = new Set(told.map((one) => whatHelps(one.uncertaintyShares).join())).size === 1;
  const what = told.every((one) => one.bestLiftToDrag?.kind === "interval")
    ? "best lift-to-drag"
    : "best lift-to-drag, or of the drag in the middle of the speeds where the best was not towed";
  return [
    `Shares of the variance of the ${what}. More readings make only the upper group smaller; the lower one all readings ` +
    `share: ${listInWords(sums)}.`,
    same
      ? `What would help most: ${listInWords(whatHelps(told[0]!.uncertaintyShares))}.`
      : `What would help most: ${helps.join("; ")}.`,
  ].join(" ");
}

/**
 * Share of each source of error in the answer.
 *
 * @param evidence whole
 * @param name names the files; "uncertainty-shares" unless said otherwise
 * @returns the figure, with the shares as its table
 */
export function figureUncertaintyShares(
  evidence: TowEvidence,
  name = "uncertainty-shares",
): FigureRecord {
  const rows = shareRows(evidence);
  const caption = captionOf(evidence);
  return figureRecord({
    name,
    title: "Where the doubt about drag comes from",
    description: caption,
    caption,
    breakout: false,
    table: numbersTable(rows, name),
  }, (size) => plotOf(rows, size));
}
