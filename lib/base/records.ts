/**
 * What a notebook cell shows, as data: the publisher builds the page from these, and other notebook programs show the
 * plain and HTML forms that stand beside them.
 *
 * @module
 */

/** Media types of our own; each stands beside standard ones in the same output. */
export const MEDIA = {
  figure: "application/vnd.lakeproof.figure+json",
  table: "application/vnd.lakeproof.table+json",
  answer: "application/vnd.lakeproof.answer+json",
  findings: "application/vnd.lakeproof.findings+json",
  live: "application/vnd.lakeproof.live+json",
} as const;

/** The mark that stands for a design: its place in `designs.csv`, from 1. */
export interface DesignMark {
  readonly design: string;
  /** 1 to 6 have a colour, shape and dash of their own; past 6 is grey. */
  readonly place: number;
}

/** A finished figure in two widths. */
export interface FigureRecord {
  /** Names the files; lower case, digits and hyphens. */
  readonly name: string;
  /** Four to eight words: the accessible name. */
  readonly title: string;
  /** One to three sentences with the numbers that matter. */
  readonly description: string;
  /** What to see, not what is drawn. */
  readonly caption: string;
  /** Complete SVG text, 560 or 720 units wide. */
  readonly wide: string;
  /** Complete SVG text, 344 units wide. */
  readonly narrow: string;
  /** True for panels side by side that may break out of the column. */
  readonly breakout: boolean;
  /** The numbers behind the drawing. */
  readonly table: TableRecord | null;
}

/** A column of a table. */
export interface TableColumn {
  readonly label: string;
  /** Shown in the head in normal weight; empty for none. */
  readonly unit: string;
  readonly align: "left" | "right";
}

/** A cell: text as a person reads it, the full number for files, a design's mark where it is a row's head. */
export interface TableCell {
  readonly text: string;
  readonly number: number | null;
  readonly mark: DesignMark | null;
}

/** A table with a caption. */
export interface TableRecord {
  readonly name: string;
  readonly caption: string;
  readonly columns: readonly TableColumn[];
  readonly rows: readonly (readonly TableCell[])[];
}

/** The short answer: verdict sentence, ratio sentence, what it rests on, and the whole answer as JSON. */
export interface AnswerRecord {
  /** Names the files and the paths that prose refers to. */
  readonly name: string;
  /** The worst or leading verdict, for the look of the box; `told` where nothing is compared. */
  readonly verdict:
    | "candidate-better"
    | "baseline-better"
    | "cannot-tell-yet"
    | "refused"
    | "told";
  /** The question in words, for the index. */
  readonly question: string;
  /** One sentence; the bottom line. */
  readonly headline: string;
  /** The design that is ahead, if any. */
  readonly ahead: DesignMark | null;
  /** Sentences with the numbers. */
  readonly details: readonly string[];
  /** What the answer rests on, and what was left out. */
  readonly rests: string;
  /** Ratio with interval for the strip; `null` when refused. */
  readonly strip: { readonly low: number; readonly value: number; readonly high: number } | null;
  /** Words on either side of the strip's line at 1: [left, right]. */
  readonly sides: readonly [string, string];
  /** For the index: designs, runs, days. */
  readonly tag: string;
  /** The contract's JSON object. */
  readonly answer: unknown;
}

/** A number that the reader of a page may move, in the unit in which it is shown. */
export interface LiveControl {
  /** What the library calls it. */
  readonly name: string;
  readonly label: string;
  /** As printed behind the number; empty for none. */
  readonly unit: string;
  /** As read aloud. */
  readonly spokenUnit: string;
  readonly decimals: number;
  /** A whole number of steps from `from` to `start`, and from `from` to `to`. */
  readonly from: number;
  readonly to: number;
  readonly step: number;
  /** As published. */
  readonly start: number;
}

/** A figure that the reader of a page may move: as published it stands still, and the library in the page draws it anew. */
export interface LiveRecord {
  /** The published setting: all that a page shows without a script, and what its files hold. */
  readonly figure: FigureRecord;
  /** What the controls are for, in a few words. */
  readonly legend: string;
  readonly controls: readonly LiveControl[];
  /** What the library computes from, as JSON. */
  readonly task: unknown;
}
