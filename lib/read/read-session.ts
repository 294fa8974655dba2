/**
 * A session from the bytes of its files: pure, so that it can be tried on any folder that never was.
 *
 * @module
 */
import { createHash } from "node:crypto";
import { CONTRACT } from "../base/answers.ts";
import { didYouMean } from "../base/did-you-mean.ts";
import { type Finding, finding } from "../base/finding.ts";
import { printable } from "../base/printable.ts";
import {
  type Design,
  type FileChecksum,
  type Glide,
  type Session,
  type TowPoint,
} from "../base/session.ts";
import {
  CALIBRATIONS,
  CONDITIONS,
  DESIGNS,
  GLIDES,
  INSTRUMENTS,
  type TableContract,
  TABLES,
  TOW,
} from "../base/tables.ts";
import { type Descriptor, parseDescriptor } from "./descriptor-schema.ts";
import { gatherFindings } from "./gather-findings.ts";
import { readCalibrations, readConditions, readInstruments } from "./read-quantities.ts";
import { type ReadTable, readTable } from "./read-table.ts";
import { typedRows } from "./typed-rows.ts";

/** Name of the descriptor in a session folder. */
export const DESCRIPTOR = "datapackage.json";

const WORKBOOK = /\.(?:xlsx|xls|xlsm|ods|numbers)$/i;

const note = (code: string, file: string | null, what: string, wanted: string | null = null) =>
  finding({ severity: "note", code, file, what, wanted });

const fault = (code: string, file: string | null, what: string, wanted: string | null = null) =>
  finding({ severity: "error", code, file, what, wanted });

/** The folder's descriptor, if it has one that holds; what is wrong with it goes to `findings`. */
function readDescriptor(
  files: ReadonlyMap<string, Uint8Array>,
  findings: Finding[],
): Descriptor | null {
  const bytes = files.get(DESCRIPTOR);
  if (bytes === undefined) {
    findings.push(note(
      "no-descriptor",
      DESCRIPTOR,
      "The folder has no descriptor; tables are read by their headers alone.",
    ));
    return null;
  }
  const parsed = parseDescriptor(new TextDecoder().decode(bytes));
  if (!parsed.ok) {
    findings.push(fault(
      "bad-descriptor",
      DESCRIPTOR,
      `The descriptor can't be used: ${
        printable(parsed.reason, 300)
      }. Units that it names were not used.`,
      "The file as it was written, or no such file: then name units in the headers.",
    ));
    return null;
  }
  const { descriptor } = parsed;
  if ((descriptor.contract ?? CONTRACT) > CONTRACT) {
    findings.push(fault(
      "newer-contract",
      DESCRIPTOR,
      `The folder follows version ${descriptor.contract} of the session tables; this program knows version ${CONTRACT}.`,
      "A newer version of this program.",
    ));
  }
  const bare = descriptor.resources.filter((one) => one.schema === undefined);
  if (bare.length > 0) {
    findings.push(note(
      "no-schema",
      DESCRIPTOR,
      `The descriptor names no columns for ${
        printable(bare.map((one) => one.path ?? one.name).join(", "))
      }; those tables are read by their headers alone.`,
    ));
  }
  return descriptor;
}

/** Units that the descriptor states for one table, by column name. */
function statedUnits(descriptor: Descriptor | null, file: string): Record<string, string> {
  const found = descriptor?.resources.find((one) => one.path?.replace(/^\.\//, "") === file);
  const units: Record<string, string> = {};
  for (const field of found?.schema?.fields ?? []) {
    const name = field.name.replace(/\s*[[(].*$/, "").trim().toLowerCase().replace(/[\s-]+/g, "_");
    if (field.unit !== undefined) units[name] = field.unit;
  }
  return units;
}

/** Findings about files that are not ours to read. */
function strangers(names: readonly string[]): Finding[] {
  return names.flatMap((name) => {
    if (WORKBOOK.test(name)) {
      return [finding({
        severity: "warning",
        code: "workbook",
        file: printable(name),
        what: `${printable(name)} is a workbook; nothing was read from it.`,
        wanted:
          "Each sheet saved as CSV: open it, choose the sheet, Save as, type CSV (UTF-8), under the table's name, as glides.csv.",
      })];
    }
    if (!/\.csv$/i.test(name)) return [];
    const meant = didYouMean(name, TABLES.map((one) => one.file));
    return [finding({
      severity: meant === null ? "note" : "warning",
      code: "unknown-table",
      file: printable(name),
      what: `${printable(name)} is no table that we know; it was not read.`,
      wanted: meant === null ? null : `Did you mean ${meant}?`,
    })];
  });
}

/** Keeps out rows that name a design of which nothing is known. */
function linkDesigns<T extends { readonly design: string; readonly row: number }>(
  rows: readonly T[],
  input: {
    readonly file: string;
    readonly known: readonly Design[];
    /** Every name in designs.csv, those of faulty rows too. */
    readonly named: readonly string[];
    /** Names that are no design but may stand there. */
    readonly also: readonly string[];
    readonly findings: Finding[];
  },
): T[] {
  const names = [...input.known.map((one) => one.design), ...input.also];
  const plain = (text: string) => text.toLowerCase().replace(/\s+/g, " ");
  const report = (
    severity: "error" | "note",
    code: string,
    row: number,
    what: string,
    wanted: string | null,
  ) =>
    input.findings.push(
      finding({ severity, code, file: input.file, row, column: "design", what, wanted }),
    );
  return rows.flatMap((row) => {
    if (names.includes(row.design)) return [row];
    const shown = printable(row.design);
    const same = names.filter((one) => plain(one) === plain(row.design));
    if (same.length === 1) {
      const what = `"${shown}" is read as ${printable(same[0]!)}.`;
      report("note", "design-spelling", row.row, what, "The name as it stands in designs.csv.");
      return [{ ...row, design: same[0]! }];
    }
    if (input.named.some((one) => plain(one) === plain(row.design))) {
      const what = `The design "${shown}" has a fault in designs.csv, so this row was not used.`;
      report("error", "faulty-design", row.row, what, "The design's row in designs.csv put right.");
      return [];
    }
    const meant = didYouMean(row.design, [...input.named, ...input.also]);
    report(
      "error",
      "unknown-design",
      row.row,
      `There is no design "${shown}" in designs.csv; the row was not used.`,
      meant === null
        ? "A design of designs.csv, or a row for this one there."
        : `Did you mean ${printable(meant)}?`,
    );
    return [];
  });
}

/**
 * Reads a session from its files.
 *
 * Never throws for what stands in the files: every problem is a finding with file, row and column. Rows with a fault in a
 * needed cell are kept out of the tables and listed in the findings; `null` means not measured.
 *
 * @param name name of the folder
 * @param files bytes by file name, without those in subfolders
 * @returns typed rows in SI with all findings and the checksums of what was read
 */
export function readSession(name: string, files: ReadonlyMap<string, Uint8Array>): Session {
  const findings: Finding[] = [];
  const checksums: FileChecksum[] = [];
  const names = [...files.keys()].sort();
  const sum = (file: string, bytes: Uint8Array) =>
    checksums.push({ file, sha256: createHash("sha256").update(bytes).digest("hex") });

  const described = files.get(DESCRIPTOR);
  if (described !== undefined) sum(DESCRIPTOR, described);
  const descriptor = readDescriptor(files, findings);

  const used = new Set<string>([DESCRIPTOR]);
  const read = (contract: TableContract): ReadTable | null => {
    const file = names.find((one) => one === contract.file) ??
      names.find((one) => one.toLowerCase() === contract.file);
    if (file === undefined) return null;
    used.add(file);
    const bytes = files.get(file)!;
    sum(file, bytes);
    const table = readTable(contract, bytes, statedUnits(descriptor, contract.file));
    findings.push(...table.findings);
    return table;
  };
  const typed = <T extends Design | Glide | TowPoint>(contract: TableContract) => {
    const table = read(contract);
    if (table === null) return null;
    const made = typedRows<T>(contract, table);
    findings.push(...made.findings);
    return made;
  };

  const designs = typed<Design>(DESIGNS);
  if (designs === null) {
    findings.push(fault(
      "missing-table",
      DESIGNS.file,
      "There is no designs.csv, so nothing is known of the wings.",
      `A table with the columns ${
        DESIGNS.columns.filter((one) => one.required).map((one) => one.name).join(", ")
      }.`,
    ));
  }
  const link = { known: designs?.rows ?? [], named: designs?.allKeys ?? [], findings };
  const glides = typed<Glide>(GLIDES);
  const glideRows = linkDesigns(glides?.rows ?? [], { ...link, file: GLIDES.file, also: [] });
  const tow = typed<TowPoint>(TOW);
  const towRows = linkDesigns(tow?.rows ?? [], { ...link, file: TOW.file, also: ["tare"] });
  const quantities = <T>(
    contract: TableContract,
    make: (
      table: ReadTable,
    ) => { readonly rows: readonly T[]; readonly findings: readonly Finding[] },
  ): readonly T[] => {
    const table = read(contract);
    if (table === null) return [];
    const made = make(table);
    findings.push(...made.findings);
    return made.rows;
  };
  const calibrations = quantities(CALIBRATIONS, readCalibrations);
  const conditions = quantities(CONDITIONS, readConditions);
  const instruments = quantities(INSTRUMENTS, readInstruments);
  findings.push(...strangers(names.filter((one) => !used.has(one))));
  if (glides === null && tow === null) {
    findings.push(note("no-runs", null, "There is neither a glides.csv nor a tow.csv yet."));
  }
  return {
    name,
    title: descriptor?.title ?? null,
    invented: descriptor?.invented ?? false,
    designs: designs?.rows ?? [],
    glides: glideRows,
    tow: towRows,
    calibrations,
    conditions,
    instruments,
    findings: gatherFindings(findings),
    checksums,
  };
}
