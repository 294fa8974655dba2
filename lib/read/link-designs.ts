/**
 * The design that each row names, looked up in designs.csv.
 *
 * @module
 */
import { didYouMean } from "../base/did-you-mean.ts";
import { type Finding, finding } from "../base/finding.ts";
import { excerpt } from "../base/printable.ts";
import { type ReadRow } from "./read-rows.ts";

/** What the rows of one file may name. */
export interface DesignNames {
  readonly file: string;
  /** Designs that are known. */
  readonly known: readonly string[];
  /** Every name in designs.csv, those of faulty rows too. */
  readonly named: readonly string[];
  /** Names that are no design but may stand there. */
  readonly also: readonly string[];
}

/** Rows with the design's own spelling, and what was found on the way. */
export interface LinkedRows {
  readonly rows: readonly ReadRow[];
  readonly findings: readonly Finding[];
}

/**
 * Looks up the design of each row; one that names a design of which nothing is known gets a fault, so that it is kept out.
 *
 * Upper and lower case and doubled spaces are put right with a note.
 *
 * @param rows as read
 * @param names what may stand there
 * @returns all rows, in order, with the spelling of designs.csv, and the findings
 */
export function linkDesigns(rows: readonly ReadRow[], names: DesignNames): LinkedRows {
  const findings: Finding[] = [];
  const linked = rows.map((row): ReadRow => {
    const design = row.values["design"];
    if (typeof design !== "string") return row;
    const { spelling, fault } = lookUp(design, names);
    if (fault !== null) {
      findings.push(finding({ ...fault, file: names.file, row: row.row, column: "design" }));
    }
    return spelling === null
      ? { ...row, faults: [...row.faults, "design"] }
      : { ...row, values: { ...row.values, design: spelling } };
  });
  return { rows: linked, findings };
}

interface LookedUp {
  /** The design's own spelling; `null` when it is not known. */
  readonly spelling: string | null;
  readonly fault: Pick<Finding, "severity" | "code" | "what" | "wanted"> | null;
}

function lookUp(design: string, { known, named, also }: DesignNames): LookedUp {
  const names = [...known, ...also];
  if (names.includes(design)) return { spelling: design, fault: null };
  const plain = (text: string) => text.toLowerCase().replace(/\s+/g, " ");
  const alike = (one: string) => plain(one) === plain(design);
  const shown = excerpt(design);
  const same = names.filter(alike);
  if (same.length === 1) {
    const spelling = same[0]!;
    return {
      spelling,
      fault: {
        severity: "note",
        code: "design-spelling",
        what: `"${shown}" is read as ${excerpt(spelling)}.`,
        wanted: "The name as it stands in designs.csv.",
      },
    };
  }
  if (named.some(alike)) {
    return {
      spelling: null,
      fault: {
        severity: "error",
        code: "faulty-design",
        what: `The design "${shown}" has a fault in designs.csv, so this row was not used.`,
        wanted: "The design's row in designs.csv put right.",
      },
    };
  }
  const meant = didYouMean(design, [...named, ...also]);
  return {
    spelling: null,
    fault: {
      severity: "error",
      code: "unknown-design",
      what: `There is no design "${shown}" in designs.csv; the row was not used.`,
      wanted: meant === null
        ? "A design of designs.csv, or a row for this one there."
        : `Did you mean ${excerpt(meant)}?`,
    },
  };
}
