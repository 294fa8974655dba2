/**
 * Figure: speed of each glide against time, as read and as the fitted law has it.
 *
 * @module
 */
import * as Plot from "@observablehq/plot";
import { printable } from "../base/printable.ts";
import type { FigureRecord, TableRecord } from "../base/records.ts";
import { listInWords } from "../base/sentence-words.ts";
import type { TowEvidence } from "../decide/compare-tows.ts";
import { designColour, designStyle } from "./design-style.ts";
import { type DrawingSize, figureRecord } from "./drawing.ts";
import { runMarks } from "./interval-marks.ts";
import { extentOf, speedPlot } from "./speed-plot.ts";
import { designCell, numberCell, textCell } from "./table-cells.ts";
import { left, right } from "./table-columns.ts";

/** One glide with its fit. */
export interface DrawnTrace {
  readonly run: string;
  /** s since the first sample, m/s as read, m/s as fitted. */
  readonly samples: readonly (readonly [time: number, read: number, fitted: number])[];
}

/** A design's glides. */
export interface DrawnTraces {
  readonly design: string;
  readonly place: number;
  readonly traces: readonly DrawnTrace[];
}

/**
 * The numbers that the figure draws.
 *
 * @param evidence whole
 * @returns one entry a design whose traces carry a law
 */
export function drawnTraces({ designs, traced }: TowEvidence): DrawnTraces[] {
  return designs.flatMap(({ name, place }, at) => {
    const own = traced[at];
    if (own == null || own.series === null) return [];
    const { runs } = own.series.fit;
    const used = own.traces.filter((one) => one.reason === null);
    return [{
      design: printable(name),
      place,
      traces: used.map((one, i) => ({
        run: printable(one.trace.run),
        samples: one.times.map((time, k) =>
          [time - one.times[0]!, one.speeds[k]!, runs[i]!.speeds[k]!] as const
        ),
      })),
    }];
  });
}

function numbersTable(all: readonly DrawnTraces[], name: string): TableRecord {
  return {
    name: `${name}-samples`,
    caption: "Speeds of the glides, as read and as fitted.",
    columns: [
      left("design"),
      left("run"),
      right("time", "s"),
      right("speed", "m/s"),
      right("fitted", "m/s"),
    ],
    rows: all.flatMap(({ design, place, traces }) =>
      traces.flatMap(({ run, samples }) =>
        samples.map(([time, read, fitted]) => [
          designCell(design, place),
          textCell(run),
          numberCell(time, 2),
          numberCell(read, 2),
          numberCell(fitted, 3),
        ])
      )
    ),
  };
}

/** Samples of one run that are drawn at the most; more would hide each other. */
const MOST = 60;

function plotOf(all: readonly DrawnTraces[], size: DrawingSize) {
  const samples = all.flatMap((one) => one.traces.flatMap((trace) => trace.samples));
  const speeds = extentOf(samples.flatMap(([, read, fitted]) => [read, fitted]), [3, 5]);
  const room = 0.06 * Math.max(0.5, speeds[1] - speeds[0]);
  return speedPlot(size, {
    speeds: [0, Math.max(1, ...samples.map(([time]) => time))],
    values: [speeds[0] - room, speeds[1] + room],
    label: size.narrow ? "speed (m/s)" : "speed through the water (m/s)",
    across: "time since launch (s)",
    ends: all.map(({ design, place, traces }) => {
      const last = traces.map((one) => one.samples.at(-1)!)
        .reduce((one, other) => other[0] > one[0] ? other : one);
      return { design, place, end: last[2] };
    }),
    marks: [
      ...runMarks(
        all.flatMap(({ place, traces }) =>
          traces.flatMap(({ samples }) => {
            const every = Math.ceil(samples.length / MOST);
            return samples.filter((_, i) => i % every === 0).map(([x, y]) => ({
              x,
              y,
              place,
              used: true,
              flagged: false,
            }));
          })
        ),
        size.narrow ? 1.6 : 2,
      ),
      ...all.flatMap(({ place, traces }) =>
        traces.map(({ samples }) => {
          const { dash } = designStyle(place);
          return Plot.line(samples.map(([x, , y]) => ({ x, y })), {
            x: "x",
            y: "y",
            stroke: designColour(place),
            strokeWidth: 1.75,
            ...(dash === null ? {} : { strokeDasharray: dash }),
          });
        })
      ),
    ],
  });
}

function captionOf(all: readonly DrawnTraces[]): string {
  if (all.length === 0) return "No trace carries a law, so nothing is drawn.";
  const counts = all.map(({ design, traces }) =>
    `${traces.length} ${traces.length === 1 ? "glide" : "glides"} of ${design}`
  );
  const thinned = all.some((one) => one.traces.some((trace) => trace.samples.length > MOST));
  return `Marks are the speeds read in ${listInWords(counts)}, lines the glides that one law for ` +
    `each design makes of them. The steeper a line falls, the more it drags.${
      thinned ? " Of long traces only some samples are drawn; the table has all." : ""
    }`;
}

/**
 * Speeds of glides against time with the fitted decay.
 *
 * @param evidence whole
 * @param name names the files; "traces" unless said otherwise
 * @returns the figure, with all samples as its table
 */
export function figureTraces(evidence: TowEvidence, name = "traces"): FigureRecord {
  const all = drawnTraces(evidence);
  const caption = captionOf(all);
  return figureRecord({
    name,
    title: "Speed of the glides against time",
    description: caption,
    caption,
    breakout: false,
    table: numbersTable(all, name),
  }, (size) => plotOf(all, size));
}
