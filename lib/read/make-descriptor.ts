/**
 * The descriptor of a session folder, made from its tables as they are.
 *
 * @module
 */
import { CONTRACT } from "../base/answers.ts";
import { type Column, type TableContract, TABLES, traceContract } from "../base/tables.ts";
import { decimalChoice, type DecimalMark } from "./decimal-mark.ts";
import { decodeText } from "./decode-text.ts";
import { matchHeader } from "./match-header.ts";
import { isTrace } from "./read-traces.ts";
import { splitTable } from "./split-table.ts";

/** What the tables can't say themselves. */
export interface DescriptorOptions {
  /** Name of the folder. */
  readonly name: string;
  readonly title?: string;
  /** True for data that nobody measured. */
  readonly invented?: boolean;
  /** Units by column that hold for a table where its headers name none. */
  readonly units?: (file: string) => Readonly<Record<string, string>>;
}

const TYPES = { text: "string", choice: "string", date: "string", number: "number" } as const;

/** Lower case letters, digits, dot, hyphen and underscore: what the standard allows in names. */
const standardName = (name: string) => name.toLowerCase().replace(/[^a-z0-9._-]+/g, "-");

interface FieldInput {
  readonly heading: string;
  readonly column: Column | undefined;
  readonly own: boolean;
  readonly unit: string | null;
  readonly mark: DecimalMark;
}

function field({ heading, column, own, unit, mark }: FieldInput) {
  if (column === undefined) return { name: heading, type: "any" };
  return {
    name: heading,
    type: TYPES[column.kind],
    ...(column.kind === "number" && mark === "," ? { decimalChar: "," } : {}),
    description: own ? `Standard uncertainty of ${column.name} in this row.` : column.means,
    ...(unit === null ? {} : { unit }),
  };
}

function resource(
  contract: TableContract,
  bytes: Uint8Array,
  units: Readonly<Record<string, string>>,
): unknown {
  const decoded = decodeText(bytes);
  if (!decoded.ok) return null;
  const split = splitTable(decoded.text);
  const head = split.rows[0];
  if (head === undefined) return null;
  const header = matchHeader({ contract, cells: head.cells, row: head.row, units });
  const named = (name: string | null | undefined) =>
    header.columns.find((one) => one.column.name === name && !one.own);
  // Samples share the name of their point, and a key of the standard may hold no empty cell.
  const key = named(contract.series) === undefined ? named(contract.key) : undefined;
  const numbers = header.columns.filter((one) => one.column.kind === "number");
  const { mark } = decimalChoice(
    split.rows.slice(1).flatMap(({ cells }) => numbers.map((one) => cells[one.place] ?? "")),
    split.delimiter,
  );
  const fields = head.cells.slice(0, header.width).map((cell, place) => {
    const matched = header.columns.find((one) => one.place === place);
    return field({
      heading: cell.trim() === "" ? `column_${place + 1}` : cell.trim(),
      column: matched?.column,
      own: matched?.own ?? false,
      unit: matched?.unit?.name ?? null,
      mark,
    });
  });
  const marks = split.delimiter === "," ? {} : { dialect: { delimiter: split.delimiter } };
  return {
    name: standardName(contract.file.replace(/\.csv$/i, "")),
    type: "table",
    path: contract.file,
    format: "csv",
    mediatype: "text/csv",
    encoding: decoded.encoding,
    description: contract.means,
    ...marks,
    schema: {
      fields,
      missingValues: [""],
      ...(key === undefined ? {} : { primaryKey: [head.cells[key.place]!.trim()] }),
    },
  };
}

/**
 * The text of `datapackage.json` for a set of tables.
 *
 * Columns stand as they are in the files, with the unit that was read for each. The order of tables is ours.
 *
 * Source: Data Package 2.0 (2024). `unit` on a field and `contract` and `invented` on the package are custom properties,
 * since the standard has no place for a unit.
 *
 * @param files bytes by name; names that are no table of ours are left out
 * @param options name, title, invented
 * @returns JSON text, with a line end
 */
export function makeDescriptor(
  files: ReadonlyMap<string, Uint8Array>,
  options: DescriptorOptions,
): string {
  const traces = [...files.keys()].filter(isTrace).sort().map(traceContract);
  const resources = [...TABLES, ...traces].flatMap((contract) => {
    const bytes = files.get(contract.file);
    const made = bytes === undefined
      ? null
      : resource(contract, bytes, options.units?.(contract.file) ?? {});
    return made === null ? [] : [made];
  });
  const descriptor = {
    $schema: "https://datapackage.org/profiles/2.0/datapackage.json",
    name: standardName(options.name),
    ...(options.title === undefined ? {} : { title: options.title }),
    contract: CONTRACT,
    invented: options.invented ?? false,
    resources,
  };
  return JSON.stringify(descriptor, null, 2) + "\n";
}
