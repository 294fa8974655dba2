/**
 * Figure: drag of one design against speed with its parts stacked.
 *
 * @module
 */
import * as Plot from "@observablehq/plot";
import type { FigureRecord, TableRecord } from "../base/records.ts";
import type { DesignTow } from "../base/tow-answer.ts";
import type { TowEvidence } from "../decide/compare-tows.ts";
import { designColour, INK, INK_SOFT, PAPER } from "./design-style.ts";
import { type DragStack, dragStacks } from "./drag-stack.ts";
import { type DrawingSize, figureRecord, pushApart, textWidth } from "./drawing.ts";
import { runMarks } from "./interval-marks.ts";
import { excessSentence, partsSentence, wingSentence } from "./parts-sentence.ts";
import { bandMark, curveMark, extentOf, speedPlot } from "./speed-plot.ts";
import { numberCell } from "./table-cells.ts";
import { right } from "./table-columns.ts";

/** Ink of the layers from below, in turn: neighbours differ, in grey as well. */
const INKS = [0.4, 0.16, 0.3, 0.1] as const;

/** Names of the parts where there is little room. */
const SHORT: Readonly<Record<string, string>> = {
  "rider in the air": "rider",
  "struts and spray": "struts",
  "wing and junction": "wing +",
  "wing and struts": "wing +",
};

function layerMarks({ layers, place }: DragStack): Plot.Markish[] {
  return layers.flatMap(({ points }, at) => {
    const rest = at === layers.length - 1;
    return [
      Plot.areaY(points, {
        x: "speed",
        y1: "low",
        y2: "high",
        fill: rest ? designColour(place) : INK,
        fillOpacity: rest ? 0.28 : INKS[at % INKS.length]!,
      }),
      ...(rest ? [] : [
        Plot.line(points, { x: "speed", y: "high", stroke: PAPER, strokeWidth: 1.25 }),
      ]),
    ];
  });
}

function plotOf(stack: DragStack, top: number, size: DrawingSize): Plot.PlotOptions {
  const { curves, layers, expected, place } = stack;
  const { curve, marks } = curves;
  const drawn = curve.map(({ speed, drag, low, high }) => ({ x: speed, y: drag, low, high }));
  const frame = speedPlot(size, {
    speeds: extentOf([...curve, ...marks].map((one) => one.speed), [3, 5]),
    values: [0, top],
    label: size.narrow ? "drag (N)" : "drag of the whole craft (N)",
    ends: [],
    marks: [
      ...layerMarks(stack),
      ...(drawn.length === 0 ? [] : [
        Plot.line(expected, {
          x: "speed",
          y: "drag",
          stroke: INK_SOFT,
          strokeWidth: 1.75,
          strokeDasharray: "5 3",
        }),
        bandMark(drawn, place),
        curveMark(drawn, place),
      ]),
      ...runMarks(
        marks.filter((one) => one.drag <= top)
          .map((one) => ({ ...one, place, x: one.speed, y: one.drag })),
        size.narrow ? 3 : 3.5,
      ),
    ],
  });
  const names = layers.map(({ part }) => size.narrow ? SHORT[part] ?? part : part);
  const { height = 0, marginTop = 0, marginBottom = 0 } = frame;
  const inner = height - marginTop - marginBottom;
  const places = pushApart(
    layers.map(({ points }) => {
      const end = points.at(-1)!;
      return marginTop + inner * (1 - (end.low + end.high) / 2 / top);
    }),
    size.fontSize + 1,
    marginTop,
    height - marginBottom - 6,
  );
  return {
    ...frame,
    marginRight: 14 + Math.max(0, ...names.map((name) => textWidth(name, size.fontSize))),
    marks: [
      ...(frame.marks ?? []),
      ...names.map((name, at) =>
        Plot.text([name], {
          frameAnchor: "top-right",
          textAnchor: "start",
          lineAnchor: "middle",
          dx: 6,
          dy: places[at]! - marginTop,
          fill: INK,
        })
      ),
    ],
  };
}

function numbersTable({ layers, curves, expected, design }: DragStack, name: string): TableRecord {
  return {
    name: `${name}-curves`,
    caption: `Drag of ${design} by speed and part.`,
    columns: [
      right("speed", "m/s"),
      right("drag", "N"),
      ...layers.map(({ part }) => right(part, "N")),
      ...(expected.length === 0 ? [] : [right("by formula", "N")]),
    ],
    rows: (layers[0]?.points ?? []).map(({ speed }, at) => [
      numberCell(speed, 2),
      numberCell(curves.curve[at]!.drag, 1),
      ...layers.map(({ points }) => numberCell(points[at]!.high - points[at]!.low, 2)),
      ...(expected.length === 0 ? [] : [numberCell(expected[at]!.drag, 1)]),
    ]),
  };
}

function captionOf(stack: DragStack | undefined, answer: DesignTow | undefined): string {
  if (stack === undefined || answer === undefined) return "There is no reading to draw.";
  if (stack.layers.length === 0) {
    return `The drag of ${stack.design} is not split: no law fits these readings.`;
  }
  return [
    partsSentence(answer),
    wingSentence(answer),
    "Coloured is what is left when the grey parts are taken off, with fittings that nobody stated; marks are readings moved to the full lift, the band is the " +
    "95\u00a0% interval of the whole.",
    excessSentence(answer),
    stack.curves.marks.some((one) => !one.used) ? "Hollow marks count in no law." : "",
  ].filter((one) => one !== "").join(" ");
}

/**
 * Drag of one design against speed with its parts stacked. All designs of an answer share one scale, so that their figures can
 * be laid side by side.
 *
 * @param evidence whole
 * @param design its name; the first of the answer unless said otherwise
 * @param name names the files; "drag-parts-DESIGN" with the place of the design unless said otherwise
 * @returns the figure, with the parts by speed as its table
 */
export function figureDragParts(
  evidence: TowEvidence,
  design?: string,
  name?: string,
): FigureRecord {
  const stacks = dragStacks(evidence);
  const at = design === undefined
    ? 0
    : evidence.answer.designs.findIndex((one) => one.design === design);
  const stack = stacks[at];
  const answer = evidence.answer.designs[at];
  const named = name ?? `drag-parts-${stack?.place ?? 1}`;
  const top = 1.06 * Math.max(
    1,
    ...stacks.flatMap(({ curves: { curve, marks } }) => [
      ...curve.map((one) => one.high),
      ...marks.filter((one) => one.used || curve.length === 0).map((one) => one.drag),
    ]),
  );
  const caption = captionOf(stack, answer);
  const nothing: DragStack = {
    design: "",
    place: 1,
    layers: [],
    expected: [],
    curves: { design: "", place: 1, lift: null, curve: [], beyond: [], marks: [] },
  };
  return figureRecord({
    name: named,
    title: `Parts of the drag of ${stack?.design ?? "a design"} by speed`,
    description: caption,
    caption,
    breakout: false,
    table: numbersTable(stack ?? nothing, named),
  }, (size) => plotOf(stack ?? nothing, top, size));
}
