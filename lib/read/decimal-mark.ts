/**
 * Whether a file writes its decimals with a point or a comma: decided once for the whole file, never cell by cell.
 *
 * @module
 */

/** The mark before the decimals. */
export type DecimalMark = "." | ",";

/** What one written number says about its file. */
export type NumberForm =
  /** Digits only: says nothing. */
  | "whole"
  /** Can only be read with a decimal point. */
  | "point"
  /** Can only be read with a decimal comma. */
  | "comma"
  /** `1.234`: one and a bit with a point, over a thousand with a comma. */
  | "point-or-thousands"
  /** `1,234`: one and a bit with a comma, over a thousand with a point. */
  | "comma-or-thousands"
  /** No number. */
  | "none";

const SPACES = /[\u0020\u00a0\u2009\u202f'’]/g;
const EXPONENT = /[eE][+-]?\d+$/;

/** A written number without the spaces that group its digits; other spaces stay and spoil it. */
function ungroup(text: string): string {
  const minus = text.trim().replace(/^[−–]/, "-");
  const grouped = /^[+-]?\d{1,3}(?:[\u0020\u00a0\u2009\u202f'’]\d{3})+(?:[.,]\d+)?$/.test(minus);
  return grouped ? minus.replace(SPACES, "") : minus;
}

/**
 * What a cell's text says about the decimal mark of its file.
 *
 * @param cell as it stands in the file, trimmed
 * @returns the mark that it shows, a mark that may as well part thousands, `whole` for digits alone, `none` for no number
 */
export function numberForm(cell: string): NumberForm {
  const text = ungroup(cell).replace(/^[+-]/, "");
  const bare = text.replace(EXPONENT, "");
  if (/^\d+$/.test(bare)) return "whole";
  if (/^(?:\d*\.\d+|\d+\.)$/.test(bare)) {
    return bare === text && /^[1-9]\d{0,2}\.\d{3}$/.test(bare) ? "point-or-thousands" : "point";
  }
  if (/^(?:\d*,\d+|\d+,)$/.test(bare)) {
    return bare === text && /^[1-9]\d{0,2},\d{3}$/.test(bare) ? "comma-or-thousands" : "comma";
  }
  if (/^\d{1,3}(?:\.\d{3})+,\d+$/.test(bare) || /^\d{1,3}(?:\.\d{3}){2,}$/.test(bare)) {
    return "comma";
  }
  if (/^\d{1,3}(?:,\d{3})+\.\d+$/.test(bare) || /^\d{1,3}(?:,\d{3}){2,}$/.test(bare)) {
    return "point";
  }
  return "none";
}

/** The mark a file uses, and how sure that is. */
export interface DecimalChoice {
  readonly mark: DecimalMark;
  /** True when `1.234` or `1,234` stand there and nothing in the file says which way to read them. */
  readonly open: boolean;
}

/**
 * The decimal mark of a file from all its number cells.
 *
 * Cells that can be read one way only decide; the more frequent way wins and the others are faults to report. Where none
 * decides, a comma between cells means a decimal point and a semicolon a decimal comma, as spreadsheets save them.
 *
 * @param cells every cell of a number column, as text
 * @param delimiter what stands between the file's cells
 * @returns the mark that more cells show; `open` where the cells leave the mark undecided
 * @example
 * ```ts
 * import { decimalChoice, numberText } from "lakeproof/read/decimal-mark.ts";
 * import { deepEqual } from "node:assert/strict";
 * const choice = decimalChoice(["4,81", "1,234"], ";");
 * deepEqual(numberText("1,234", choice), { ok: true, decimal: "1.234" });
 * ```
 */
export function decimalChoice(cells: readonly string[], delimiter: string): DecimalChoice {
  const forms = cells.map(numberForm);
  const count = (form: NumberForm) => forms.filter((one) => one === form).length;
  const point = count("point");
  const comma = count("comma");
  const usual: DecimalMark = delimiter === ";" ? "," : ".";
  if (point > comma) return { mark: ".", open: false };
  if (comma > point) return { mark: ",", open: false };
  const pointLike = count("point-or-thousands");
  const commaLike = count("comma-or-thousands");
  if (point > 0) return { mark: usual, open: true };
  if (pointLike > 0 && commaLike > 0) return { mark: usual, open: true };
  if (pointLike > 0) return { mark: ".", open: delimiter !== "," };
  if (commaLike > 0) return { mark: ",", open: delimiter !== ";" };
  return { mark: usual, open: false };
}

/** A cell read as a number, as plain decimal text; or why it can't be. */
export type NumberText =
  | { readonly ok: true; readonly decimal: string }
  | {
    readonly ok: false;
    readonly why: "not-a-number" | "ambiguous-number" | "other-decimal-mark";
  };

/**
 * The plain decimal text (digits and a point) of a written number in a file with a known decimal mark.
 *
 * @param cell as it stands
 * @param choice of the whole file
 * @returns the number with a decimal point and without thousands marks, or why it can't be told
 */
export function numberText(cell: string, choice: DecimalChoice): NumberText {
  const form = numberForm(cell);
  const text = ungroup(cell);
  if (form === "none") return { ok: false, why: "not-a-number" };
  if (form === "whole") return { ok: true, decimal: text };
  const own: DecimalMark = form.startsWith("point") ? "." : ",";
  if (form === "point-or-thousands" || form === "comma-or-thousands") {
    if (choice.open || own !== choice.mark) return { ok: false, why: "ambiguous-number" };
  } else if (own !== choice.mark) {
    return { ok: false, why: "other-decimal-mark" };
  }
  const grouping = own === "." ? /,/g : /\./g;
  return { ok: true, decimal: text.replace(grouping, "").replace(",", ".") };
}
