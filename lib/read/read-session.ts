/**
 * A session from the bytes of its files: pure, so that it can be tried on any folder that never was.
 *
 * @module
 */
import { createHash } from "node:crypto";
import { type Finding, finding } from "../base/finding.ts";
import {
  type Design,
  type FileChecksum,
  type Glide,
  type Row,
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
  TOW,
  traceContract,
} from "../base/tables.ts";
import { gatherFindings } from "./gather-findings.ts";
import { linkDesigns } from "./link-designs.ts";
import { otherFiles } from "./other-files.ts";
import { type QuantityRows } from "./quantity-rows.ts";
import { readCalibrations } from "./read-calibrations.ts";
import { readConditions } from "./read-conditions.ts";
import { describes, DESCRIPTOR, readDescriptor, statedUnits } from "./read-descriptor.ts";
import { readInstruments } from "./read-instruments.ts";
import { type ReadTable, readTable } from "./read-table.ts";
import { isTrace, readTrace } from "./read-traces.ts";
import { typedRows } from "./typed-rows.ts";

/**
 * Reads a session from its files.
 *
 * Never throws for what stands in the files: every problem is a finding with file, row and column. Rows with a fault in a
 * needed cell are kept out of the tables and listed in the findings; `null` means not measured.
 *
 * @param name name of the folder
 * @param files bytes by file name; of subfolders only those of traces
 * @returns typed rows in SI with all findings and the checksums of what was read
 * @example
 * ```ts
 * import { readSession } from "lakeproof/read/read-session.ts";
 * import { equal } from "node:assert/strict";
 * const text = "design,span [cm],area\nalder,95,0.15\n";
 * const session = readSession("lake", new Map([["designs.csv", new TextEncoder().encode(text)]]));
 * equal(session.designs[0]?.span, 0.95);
 * ```
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
    // A trace has hundreds of rows: what is wrong with them is told once, with the trace.
    if (!isTrace(file)) findings.push(...table.findings);
    if (!describes(descriptor, contract.file, table.headings)) {
      findings.push(finding({
        severity: "note",
        code: "stale-descriptor",
        file: DESCRIPTOR,
        what:
          `The description of the tables tells other columns than ${contract.file} has; the file was believed.`,
        wanted: "task validate with --describe writes it anew.",
      }));
    }
    return table;
  };
  const typed = <T extends Row>(contract: TableContract, table: ReadTable | null) => {
    if (table === null) return null;
    const made = typedRows<T>(contract, table);
    findings.push(...made.findings);
    return made;
  };
  const flown = <T extends Row>(contract: TableContract, also: readonly string[]) => {
    const table = read(contract);
    const linked = linkDesigns(table?.rows ?? [], {
      file: contract.file,
      known: designs?.rows.map((one) => one.design) ?? [],
      named: designs?.allKeys ?? [],
      also,
    });
    findings.push(...linked.findings);
    return typed<T>(contract, table === null ? null : { ...table, rows: linked.rows });
  };

  const designs = typed<Design>(DESIGNS, read(DESIGNS));
  if (designs === null) {
    const needed = DESIGNS.columns.filter((one) => one.required).map((one) => one.name);
    findings.push(finding({
      severity: "error",
      code: "missing-table",
      file: DESIGNS.file,
      what: "There is no designs.csv, so nothing is known of the wings.",
      wanted: `A table with the columns ${needed.join(", ")}.`,
    }));
  }
  const glides = flown<Glide>(GLIDES, []);
  const tow = flown<TowPoint>(TOW, ["tare"]);
  const quantities = <T>(
    contract: TableContract,
    make: (table: ReadTable) => QuantityRows<T>,
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
  const traces = names.filter(isTrace).flatMap((file) => {
    const table = read(traceContract(file));
    if (table === null) return [];
    const { trace, findings: found } = readTrace(file, table, glides?.rows ?? []);
    findings.push(...found);
    return trace === null ? [] : [trace];
  });
  findings.push(...otherFiles(names.filter((one) => !used.has(one))));
  if (glides === null && tow === null) {
    findings.push(finding({
      severity: "note",
      code: "no-runs",
      what: "There is neither a glides.csv nor a tow.csv yet.",
    }));
  }
  return {
    name,
    title: descriptor?.title ?? null,
    invented: descriptor?.invented ?? false,
    designs: designs?.rows ?? [],
    glides: glides?.rows ?? [],
    tow: tow?.rows ?? [],
    traces,
    calibrations,
    conditions,
    instruments,
    findings: gatherFindings(findings),
    checksums,
  };
}
