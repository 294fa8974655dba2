/**
 * The records of ours in a cell's output, with their shape looked at: a cell can show anything under our media types.
 *
 * @module
 */
import type { Finding } from "../../base/finding.ts";
import {
  type AnswerRecord,
  type FigureRecord,
  type LiveRecord,
  MEDIA,
  type TableRecord,
} from "../../base/records.ts";
import type { Json, MimeBundle } from "../notebook.ts";

/** A record by its kind. */
export type Shown =
  | { readonly kind: "answer"; readonly record: AnswerRecord }
  | { readonly kind: "figure"; readonly record: FigureRecord }
  | { readonly kind: "live"; readonly record: LiveRecord }
  | { readonly kind: "table"; readonly record: TableRecord }
  | { readonly kind: "findings"; readonly record: readonly Finding[] };

type Fields = { readonly [field: string]: Json };
type Check = (value: Json | undefined) => boolean;

const text: Check = (value) => typeof value === "string";
const finite: Check = (value) => typeof value === "number" && Number.isFinite(value);
const or = (a: Check): Check => (value) => value === null || a(value);
const list = (a: Check): Check => (value) => Array.isArray(value) && value.every(a);
const fields = (checks: Readonly<Record<string, Check>>): Check => (value) =>
  typeof value === "object" && value !== null && !Array.isArray(value) &&
  Object.entries(checks).every(([name, check]) => check((value as Fields)[name]));
const word = (...words: string[]): Check => (value) => words.includes(value as string);

const mark = fields({
  design: text,
  place: (value) => typeof value === "number" && Number.isInteger(value) && value >= 1,
});

const table = fields({
  name: text,
  caption: text,
  columns: list(fields({ label: text, unit: text, align: word("left", "right") })),
  rows: list(list(fields({ text, number: or(finite), mark: or(mark) }))),
});

const figure = fields({
  name: text,
  title: text,
  description: text,
  caption: text,
  wide: text,
  narrow: text,
  breakout: (value) => typeof value === "boolean",
  table: or(table),
});

const live = fields({
  figure,
  legend: text,
  controls: list(fields({
    name: text,
    label: text,
    unit: text,
    spokenUnit: text,
    decimals: finite,
    from: finite,
    to: finite,
    step: finite,
    start: finite,
  })),
  task: fields({}),
});

const positive: Check = (value) => finite(value) && (value as number) > 0;

const answer = fields({
  name: text,
  verdict: word("candidate-better", "baseline-better", "cannot-tell-yet", "refused", "told"),
  question: text,
  headline: text,
  ahead: or(mark),
  details: list(text),
  rests: text,
  strip: or(fields({ low: positive, value: positive, high: positive })),
  sides: (value) => Array.isArray(value) && value.length === 2 && value.every(text),
  tag: text,
  answer: (value) => value !== undefined,
});

const findings = list(fields({
  severity: word("error", "warning", "note"),
  code: text,
  file: or(text),
  row: or(finite),
  column: or(text),
  count: finite,
  what: text,
  wanted: or(text),
}));

const CHECKS = { answer, figure, live, table, findings } as const;

/**
 * Our record in an output, if there is one.
 *
 * @param data the output's forms by media type
 * @returns the record; `null` when the output is not ours
 * @throws Error when a record of ours lacks what its kind must have
 */
export function shownRecord(data: MimeBundle): Shown | null {
  for (const kind of ["answer", "figure", "live", "table", "findings"] as const) {
    const record = data[MEDIA[kind]];
    if (record === undefined) continue;
    if (!CHECKS[kind](record)) {
      throw new Error(
        `Cannot show a record as ${MEDIA[kind]} must hold every field of its kind: ` +
          JSON.stringify(record).slice(0, 200),
      );
    }
    return { kind, record } as unknown as Shown;
  }
  return null;
}
