/**
 * What a column and a table are, and short ways to write columns down.
 *
 * @module
 */

/** What kind of thing a column holds. Numbers carry a dimension that fixes which units may stand behind the name. */
export type ColumnKind = "text" | "number" | "date" | "choice";

/** What a number measures; decides which units fit. */
export type Dimension =
  | "speed"
  | "acceleration"
  | "length"
  | "area"
  | "volume"
  | "mass"
  | "force"
  | "power"
  | "time"
  | "angle"
  | "temperature"
  | "salinity"
  | "ratio";

/** One column of a table. */
export interface Column {
  /** Name in the file's header, without unit. */
  readonly name: string;
  readonly kind: ColumnKind;
  readonly required: boolean;
  /** For numbers only. */
  readonly dimension?: Dimension;
  /** Default unit of the file (not always SI), for numbers only; `1` for ratios. */
  readonly unit?: string;
  /** For choices only. */
  readonly choices?: readonly string[];
  /** One sentence for the glossary. */
  readonly means: string;
}

/** One table of a session folder. */
export interface TableContract {
  readonly file: string;
  /** Column whose values must not repeat. */
  readonly key: string | null;
  /** Column that, where it is filled, lets the key repeat: the rows of one key are then one series. */
  readonly series?: string;
  readonly columns: readonly Column[];
  readonly means: string;
}

/**
 * A column of free text.
 *
 * @param name in the header
 * @param means one sentence for the glossary
 * @param required whether the table is of no use without it
 * @returns the column
 */
export const text = (name: string, means: string, required = false): Column => ({
  name,
  kind: "text",
  required,
  means,
});

/**
 * A column of days.
 *
 * @param name in the header
 * @param means one sentence for the glossary
 * @returns the column, not needed
 */
export const date = (name: string, means: string): Column => ({
  name,
  kind: "date",
  required: false,
  means,
});

/**
 * A column of measured numbers.
 *
 * @param name in the header, without unit
 * @param dimension what is measured
 * @param unit default unit of the file
 * @param means one sentence for the glossary
 * @param required whether the table is of no use without it
 * @returns the column
 */
export const number = (
  name: string,
  dimension: Dimension,
  unit: string,
  means: string,
  required = false,
): Column => ({ name, kind: "number", dimension, unit, required, means });

/**
 * A column in which only some words may stand.
 *
 * @param name in the header
 * @param choices the words
 * @param means one sentence for the glossary
 * @returns the column, not needed
 */
export const choice = (name: string, choices: readonly string[], means: string): Column => ({
  name,
  kind: "choice",
  choices,
  required: false,
  means,
});

/** Last column of most tables. */
export const note = text("note", "Anything worth remembering.");
/** Where a row is taken out, with a reason. */
export const leaveOut = text(
  "leave_out",
  "Your reason, if you want this row left out; empty keeps it in.",
);
