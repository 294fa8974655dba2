/**
 * Which column of a table's contract each header cell means, and in which unit it stands.
 *
 * @module
 */
import { didYouMean } from "../base/did-you-mean.ts";
import { type Finding, finding } from "../base/finding.ts";
import { excerpt } from "../base/printable.ts";
import { type Column, type TableContract } from "../base/tables.ts";
import { findUnit, type Unit, unitNamed, UNITS } from "../base/units.ts";

/** A column of the file that the contract knows. */
export interface MatchedColumn {
  readonly column: Column;
  /** Place in the row, from 0. */
  readonly place: number;
  /** True for `u_NAME`: the row's own standard uncertainty of NAME. */
  readonly own: boolean;
  /** Unit of the cells, for numbers with a dimension. */
  readonly unit: Unit | null;
  /** True when the header or the descriptor names the unit; else it is the default. */
  readonly unitStated: boolean;
  /** False when the header has a fault that makes the cells unreadable. */
  readonly readable: boolean;
}

/** A header, understood. */
export interface MatchedHeader {
  readonly columns: readonly MatchedColumn[];
  /** Places that hold a known, unknown or unnamed column; cells past the last are surplus. */
  readonly width: number;
  /** Places without a name. */
  readonly unnamed: readonly number[];
  readonly findings: readonly Finding[];
}

/**
 * Letter that a spreadsheet puts over a column: 0 is A, 26 is AA.
 *
 * @param place of the column, from 0
 * @returns one letter or more
 */
export function columnLetter(place: number): string {
  const last = String.fromCharCode(65 + place % 26);
  return place < 26 ? last : columnLetter(Math.floor(place / 26) - 1) + last;
}

const normal = (name: string) =>
  name.trim().toLowerCase().replace(/[\s\u00a0_-]+/g, "_").replace(/^_|_$/g, "");

interface HeaderCell {
  readonly name: string;
  readonly unit: string | null;
}

function splitHeader(cell: string): HeaderCell {
  const match = /^(.*?)\s*(?:\[([^\]]*)\]|\(([^)]*)\))\s*$/.exec(cell.trim());
  if (match === null) return { name: normal(cell), unit: null };
  const unit = (match[2] ?? match[3] ?? "").trim();
  return { name: normal(match[1]!), unit: unit === "" ? null : unit };
}

/** Units that fit a column, as a person would list them. */
function unitsFor(column: Column): string {
  return UNITS.filter((unit) => unit.dimension === column.dimension).map((unit) => unit.name).join(
    ", ",
  );
}

/** Everything about one file's header that the matching needs. */
export interface HeaderInput {
  readonly contract: TableContract;
  readonly cells: readonly string[];
  /** Row of the header as the spreadsheet numbers it. */
  readonly row: number;
  /** Units from the descriptor, by column name. */
  readonly units: Readonly<Record<string, string>>;
}

/**
 * Matches a header against the contract of its table.
 *
 * Upper and lower case, spaces, hyphens and the order of columns do not matter. A unit in brackets wins over the
 * descriptor's, which wins over the default. Misspelt, doubled and unknown columns and unknown units become findings.
 *
 * @param input contract, header cells, their row, and the descriptor's units
 * @returns known columns with place and unit, places without a name, and what was found
 */
export function matchHeader(input: HeaderInput): MatchedHeader {
  const { contract, row } = input;
  const findings: Finding[] = [];
  const columns: MatchedColumn[] = [];
  const unnamed: number[] = [];
  const strangers: { readonly name: string; readonly shown: string }[] = [];
  const report = (parts: Omit<Parameters<typeof finding>[0], "file" | "row">) =>
    findings.push(finding({ ...parts, file: contract.file, row }));

  let width = input.cells.length;
  while (width > 0 && input.cells[width - 1]!.trim() === "") width--;

  input.cells.slice(0, width).forEach((cell, place) => {
    const { name, unit } = splitHeader(cell);
    const shown = excerpt(cell.trim());
    if (name === "") {
      unnamed.push(place);
      return;
    }
    const byName = (wanted: string) => contract.columns.find((one) => one.name === wanted);
    const base = name.startsWith("u_") ? byName(name.slice(2)) : undefined;
    const own = base !== undefined && base.dimension !== undefined;
    const column = byName(name) ?? (own ? base : undefined);
    if (column === undefined) {
      strangers.push({ name, shown });
      return;
    }
    if (columns.some((one) => one.column === column && one.own === own)) {
      report({
        severity: "error",
        code: "doubled-column",
        column: own ? `u_${column.name}` : column.name,
        what: `There are two columns called ${own ? "u_" : ""}${column.name}; neither was used.`,
        wanted: "One column of each name: rename or delete the other.",
      });
      const first = columns.findIndex((one) => one.column === column && one.own === own);
      columns[first] = { ...columns[first]!, readable: false };
      return;
    }
    columns.push({ column, place, own, ...unitOf(column, own, unit, input, report) });
  });

  columns.forEach((one, index) => {
    const base = columns.find((two) => two.column === one.column && !two.own);
    const usual = base?.unit?.name === one.column.unit;
    if (!one.own || one.unitStated || base === undefined || usual || base.unit === null) return;
    columns[index] = { ...one, readable: false };
    report({
      severity: "error",
      code: "unit-needed",
      column: `u_${one.column.name}`,
      what: `${one.column.name} is in ${base.unit.name}, but u_${one.column.name} names no unit.`,
      wanted: `The unit after the name: u_${one.column.name} [${base.unit.name}].`,
    });
  });

  const missing = contract.columns.filter((one) =>
    !columns.some((two) => two.column === one && !two.own)
  );
  const lost = new Set<string>();
  for (const stranger of strangers) {
    const meant = didYouMean(stranger.name, missing.map((one) => one.name));
    const column = missing.find((one) => one.name === meant);
    if (column === undefined) {
      report({
        severity: "note",
        code: "unknown-column",
        column: stranger.shown,
        what: `The column "${stranger.shown}" is none that we know; it stays in your file, unused.`,
      });
    } else if (!column.required) {
      report({
        severity: "warning",
        code: "misspelt-column",
        column: stranger.shown,
        what: `The column "${stranger.shown}" is none that we know, so it is not used.`,
        wanted: `Did you mean ${column.name}?`,
      });
    } else {
      lost.add(column.name);
      report({
        severity: "error",
        code: "missing-column",
        column: column.name,
        what:
          `There is no column ${column.name}, so no row can be used; there is one called "${stranger.shown}".`,
        wanted: `Did you mean ${column.name}? Write it so in the first row.`,
      });
    }
  }
  for (const column of missing.filter((one) => one.required && !lost.has(one.name))) {
    report({
      severity: "error",
      code: "missing-column",
      column: column.name,
      what: `There is no column ${column.name}, so no row can be used.`,
      wanted: `A column ${column.name} in the first row: ${column.means}`,
    });
  }
  return { columns, width, unnamed, findings };
}

type UnitPart = Pick<MatchedColumn, "unit" | "unitStated" | "readable">;

/** The unit of a matched column, with a finding where the one written can't be used. */
function unitOf(
  column: Column,
  own: boolean,
  written: string | null,
  input: HeaderInput,
  report: (parts: Omit<Parameters<typeof finding>[0], "file" | "row">) => void,
): UnitPart {
  const name = own ? `u_${column.name}` : column.name;
  const { dimension } = column;
  if (dimension === undefined) {
    if (written !== null && column.kind === "number") {
      report({
        severity: "warning",
        code: "unit-not-here",
        column: name,
        what: `The unit [${excerpt(written)}] after ${name} is not used.`,
        wanted: "The unit of each row in its own column.",
      });
    }
    return { unit: null, unitStated: false, readable: true };
  }
  const text = written ?? input.units[name] ?? (own ? undefined : input.units[column.name]);
  if (text === undefined) {
    return { unit: unitNamed(column.unit!, dimension), unitStated: false, readable: true };
  }
  const unit = findUnit(text, dimension);
  if (unit !== null) return { unit, unitStated: true, readable: true };
  const other = findUnit(text);
  const meant = didYouMean(
    text,
    UNITS.filter((one) => one.dimension === dimension).flatMap((one) => [
      one.name,
      ...one.spellings.filter((spelling) => spelling.length > 2),
    ]),
  );
  report({
    severity: "error",
    code: other === null ? "unknown-unit" : "wrong-unit",
    column: name,
    what: other === null
      ? `"${excerpt(text)}" after ${name} is no unit that we know; the column was not used.`
      : `"${excerpt(text)}" is a unit of ${other.dimension}, but ${name} is a ${dimension}.`,
    wanted: `One of ${unitsFor(column)}.${
      meant === null ? "" : ` Did you mean ${findUnit(meant, dimension)!.name}?`
    }`,
  });
  return { unit: null, unitStated: true, readable: false };
}
