/**
 * Writes the demo session of Quillwater and the truth behind it. Everything in both is invented.
 *
 *     deno run -A data/generate-demo.ts            write the files
 *     deno run -A data/generate-demo.ts --check    only say whether the files are what would be written
 *
 * @module
 */
import { CONTRACT } from "lakeproof/base/answers.ts";
import {
  type Column,
  CONDITIONS,
  DESIGNS as DESIGNS_TABLE,
  GLIDES,
  INSTRUMENTS,
  type TableContract,
  traceContract,
} from "lakeproof/base/tables.ts";
import { conditionRows, designRows, instrumentRows, type Rows } from "./quillwater-rows.ts";
import { flownRuns, SEED } from "./quillwater-session.ts";
import { traceFiles } from "./quillwater-traces.ts";
import { truth } from "./quillwater-truth.ts";
import { withTruth, writeDemo } from "./write-demo.ts";

const FOLDER = "quillwater-evening";

const escape = (text: string) => /[",\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;

/** A table with those of the contract's columns that any row fills. */
function table(contract: TableContract, rows: Rows): { text: string; columns: readonly Column[] } {
  const columns = contract.columns.filter((column) =>
    column.required || rows.some((row) => (row[column.name] ?? "") !== "")
  );
  const lines = [
    columns.map((column) => column.name),
    ...rows.map((row) => columns.map((column) => escape(row[column.name] ?? ""))),
  ];
  return { text: lines.map((cells) => cells.join(",") + "\n").join(""), columns };
}

/** A column as Table Schema tells it; `unit` is a property of our own, since the standard has none. */
function field(column: Column) {
  return {
    name: column.name,
    type: column.kind === "number" ? "number" : column.kind === "date" ? "date" : "string",
    description: column.means,
    ...(column.unit === undefined ? {} : { unit: column.unit }),
    ...(column.required || column.choices
      ? {
        constraints: {
          ...(column.required ? { required: true } : {}),
          ...(column.choices ? { enum: column.choices } : {}),
        },
      }
      : {}),
  };
}

/** The session folder: text by name; another seed is another pair of evenings with the same foils. */
export function sessionFiles(seed: string = SEED): Map<string, string> {
  const runs = flownRuns(seed);
  const tables = [
    [DESIGNS_TABLE, designRows()],
    [GLIDES, runs.map((one) => one.row)],
    [CONDITIONS, conditionRows()],
    [INSTRUMENTS, instrumentRows()],
  ] as const;
  const files = new Map<string, string>();
  const traces = traceFiles(runs, seed);
  const resources = [
    ...tables.map(([contract, rows]) => ({ contract, ...table(contract, rows) })),
    ...[...traces].map(([file, text]) => {
      const contract = traceContract(file);
      return { contract, text, columns: contract.columns };
    }),
  ].map(({ contract, text, columns }) => {
    files.set(contract.file, text);
    return {
      name: contract.file.replace(".csv", "").replace("/", "-"),
      type: "table",
      path: contract.file,
      format: "csv",
      mediatype: "text/csv",
      encoding: "utf-8",
      description: contract.means,
      schema: {
        fields: columns.map(field),
        missingValues: [""],
        ...(contract.key === null ? {} : { primaryKey: [contract.key] }),
      },
    };
  });
  const descriptor = {
    $schema: "https://datapackage.org/profiles/2.0/datapackage.json",
    name: FOLDER,
    title: "Two evenings at Quillwater",
    description:
      "Invented. An evening class in boatbuilding glides three wings off a jetty: alder, birch and cedar. " +
      "Nobody measured this; data/generate-demo.ts computed it.",
    contract: CONTRACT,
    invented: true,
    resources,
  };
  files.set("datapackage.json", JSON.stringify(descriptor, null, 2) + "\n");
  return files;
}

/**
 * Every file of the demo, by path below `data/`.
 *
 * @returns text by path
 */
export function demoFiles(): Map<string, string> {
  return withTruth(FOLDER, sessionFiles(), truth());
}

if (import.meta.main) await writeDemo(demoFiles(), Deno.args);
