/**
 * One cell as a typed value in SI, or what is wrong with it.
 *
 * @module
 */
import { decimalToSi } from "../base/decimal-to-si.ts";
import { didYouMean } from "../base/did-you-mean.ts";
import { type Severity } from "../base/finding.ts";
import { likelyUnit } from "../base/likely-unit.ts";
import { LIMITS, standing } from "../base/limits.ts";
import { excerpt } from "../base/printable.ts";
import { findUnit, fromSi, toSi, type Unit } from "../base/units.ts";
import { type DecimalChoice, numberText } from "./decimal-mark.ts";
import { type MatchedColumn } from "./match-header.ts";
import { readDate } from "./read-date.ts";

/** What was wrong or odd about a cell. */
export interface CellFault {
  readonly severity: Severity;
  readonly code: string;
  readonly what: string;
  readonly wanted: string | null;
}

/** A cell, read. `value` is `null` where nothing (usable) stands there; an error in `fault` says that it is unusable. */
export interface ReadCell {
  readonly value: string | number | null;
  readonly fault: CellFault | null;
  /** Plain decimal text of a number, for tables whose unit stands in the row. */
  readonly decimal?: string;
}

/** Ways of writing "nothing here". */
const EMPTY_MARKS = ["-", "--", "–", "—", "?", "??", "n/a", "n.a.", "na", "null", "none"];
/** Texts that a spreadsheet shows where a formula failed. */
const SHEET_ERROR =
  /^#(?:VALUE!|REF!|DIV\/0!|NAME\?|NUM!|NULL!|N\/A|WERT!|BEZUG!|NV|ZAHL!)|^Err:\d+/i;

/** What a spreadsheet makes of a number such as 1.5 or 3-4 when it takes it for a day. */
const BECAME_A_DAY =
  /^\d{1,2}[.\-/ ]+(?:jan|feb|m[aä]r|apr|ma[iy]|jun|jul|aug|sep|o[ck]t|nov|de[cz])|^\d{1,2}([./-])\d{1,2}\1\d{2,4}$/i;

const bad = (code: string, what: string, wanted: string | null): ReadCell => ({
  value: null,
  fault: { severity: "error", code, what, wanted },
});

/** Three figures, as a person would write them. */
function threeFigures(value: number): string {
  return String(Number(value.toPrecision(3)));
}

/**
 * Reads one cell.
 *
 * @param raw as it stands in the file
 * @param matched its column
 * @param choice decimal mark of the file
 * @returns text, date, choice or SI number; `null` with a fault where it can't be used
 */
export function readCell(raw: string, matched: MatchedColumn, choice: DecimalChoice): ReadCell {
  const { column } = matched;
  const cell = raw.replace(/\u00a0/g, " ").trim();
  if (cell === "") return { value: null, fault: null };
  if (EMPTY_MARKS.includes(cell.toLowerCase())) {
    return {
      value: null,
      fault: {
        severity: "note",
        code: "empty-mark",
        what: `"${excerpt(cell)}" is read as not measured.`,
        wanted: "An empty cell where nothing was measured.",
      },
    };
  }
  if (SHEET_ERROR.test(cell)) {
    return bad(
      "spreadsheet-error",
      `"${excerpt(cell)}" is the mark of a formula that failed in the spreadsheet.`,
      "The value itself, or an empty cell.",
    );
  }
  if (column.kind === "text") return { value: cell.normalize("NFC"), fault: null };
  if (column.kind === "date") return dateCell(cell);
  if (column.kind === "choice") return choiceCell(cell, column.choices!);
  return numberCell(cell, matched, choice);
}

function dateCell(cell: string): ReadCell {
  const read = readDate(cell);
  if (read.ok) return { value: read.date, fault: null };
  const ambiguous = read.why === "ambiguous-date";
  return {
    value: null,
    fault: {
      severity: "warning",
      code: read.why,
      what: ambiguous
        ? `"${excerpt(cell)}" can mean two different days.`
        : `"${excerpt(cell)}" is no day that we can read.`,
      wanted: "A day as 2031-06-14 or 14.06.2031.",
    },
  };
}

function choiceCell(cell: string, choices: readonly string[]): ReadCell {
  const plain = (text: string) => text.toLowerCase().replace(/[\s_-]+/g, "");
  const found = choices.find((one) => plain(one) === plain(cell));
  if (found !== undefined) return { value: found, fault: null };
  const meant = didYouMean(cell, choices);
  return bad(
    "unknown-choice",
    `"${excerpt(cell)}" is none of the words that may stand here.`,
    `${choices.join(", ")}, or nothing.${meant === null ? "" : ` Did you mean ${meant}?`}`,
  );
}

/** A number with a unit behind it in the same cell, as `14 km/h`. */
function unitBehind(cell: string): { readonly number: string; readonly unit: Unit } | null {
  const match = /^([+-]?[\d.,]*\d[.,]?)\s*(\D.*)$/.exec(cell);
  const unit = match === null ? null : findUnit(match[2]!);
  return unit === null ? null : { number: match![1]!, unit };
}

function numberCell(cell: string, matched: MatchedColumn, choice: DecimalChoice): ReadCell {
  const { column, own, unit } = matched;
  const name = own ? `u_${column.name}` : column.name;
  const inUnit = unit === null || unit.name === "1" ? "" : ` in ${unit.name}`;
  const wanted = `A number${inUnit}, or an empty cell where it was not measured.`;
  const read = numberText(cell, choice);
  if (!read.ok) {
    if (read.why === "ambiguous-number") {
      return bad(
        "ambiguous-number",
        `"${
          excerpt(cell)
        }" can be read two ways: the mark may stand before decimals or between thousands.`,
        "Digits with one decimal mark and nothing between thousands, the same way in the whole file.",
      );
    }
    if (read.why === "other-decimal-mark") {
      const word = choice.mark === "." ? "decimal points" : "decimal commas";
      const other = choice.mark === "." ? cell.replace(",", ".") : cell.replace(".", ",");
      return bad(
        "other-decimal-mark",
        `"${excerpt(cell)}" has another decimal mark than the rest of the file, which has ${word}.`,
        `Did you mean ${excerpt(other)}?`,
      );
    }
    const split = unitBehind(cell);
    if (split !== null && column.dimension === split.unit.dimension) {
      return bad(
        "unit-in-cell",
        `"${excerpt(cell)}" has its unit in the cell.`,
        `The number alone here, and the unit after the column's name: ${name} [${split.unit.name}].`,
      );
    }
    return bad(
      "not-a-number",
      `"${excerpt(cell)}" is no number.`,
      BECAME_A_DAY.test(cell)
        ? "The number again: the spreadsheet took it for a day. Set the column's format to number first."
        : wanted,
    );
  }
  const si = unit === null ? Number(read.decimal) : decimalToSi(read.decimal, unit, own);
  if (!Number.isFinite(si)) {
    return bad("not-a-number", `"${excerpt(cell)}" is beyond all measure.`, wanted);
  }
  if (own) {
    return si > 0 ? { value: si, fault: null, decimal: read.decimal } : bad(
      "impossible-value",
      `An uncertainty of ${excerpt(cell)} can't be.`,
      "More than 0, or an empty cell.",
    );
  }
  if (unit === null || standing(column.name, si) !== "impossible") {
    return { value: si, fault: null, decimal: read.decimal };
  }
  return bad(
    "impossible-value",
    `${excerpt(cell)}${unit.name === "1" ? "" : ` ${unit.name}`} can't be: ${
      LIMITS[column.name]!.why
    }.`,
    guess(Number(read.decimal), cell, matched) ?? wanted,
  );
}

/** A likelier unit for a number that can't be in the one it stands in. */
function guess(value: number, cell: string, matched: MatchedColumn): string | null {
  const { column, unit } = matched;
  if (value < 0 && standing(column.name, toSi(-value, unit!)) === "fits") {
    return `Did you mean ${excerpt(cell.replace(/^[-−–]\s*/, ""))}, without the minus?`;
  }
  const better = likelyUnit(column.name, value, unit!);
  if (better === null) return null;
  const meant = threeFigures(fromSi(toSi(value, better), unit!));
  const shown = unit!.name === "1" ? meant : `${meant} ${unit!.name}`;
  return `Did you mean ${better.name}? ${
    threeFigures(value)
  } ${better.name} is ${shown}. If the whole column is so, name it ${column.name} [${better.name}].`;
}
