/** Malformed session folders, each a known change of a good one, with the finding that must tell it. */
import fc from "fast-check";
import { CELL_KINDS } from "./malformed-cells.ts";
import { conditions, type Fault, instruments, oneOf } from "./malformed-fault.ts";
import { TABLE_KINDS } from "./malformed-tables.ts";
import { csvOf, withCell } from "./table-grid.ts";

/** Kinds of fault by a name that reads on in a test. */
export const KINDS: Readonly<Record<string, fc.Arbitrary<Fault>>> = {
  ...CELL_KINDS,
  ...TABLE_KINDS,
  "an empty file": fc.tuple(
    oneOf("designs.csv", "glides.csv", "conditions.csv"),
    oneOf("", "\n\n", ",,\r\n", " "),
  ).map((
    [file, text],
  ): Fault => ({
    files: { [file]: text },
    expected: { code: "empty-file", file, row: null, column: null },
  })),
  "bytes that are no text": fc.tuple(
    oneOf("designs.csv", "glides.csv", "instruments.csv"),
    fc.uint8Array({ minLength: 20, maxLength: 400 }).filter((bytes) =>
      bytes.filter((byte) => byte < 7).length > 0.1 * bytes.length
    ),
  ).map(([file, junk]): Fault => ({
    files: { [file]: junk },
    expected: { code: "not-text", file, row: null, column: null },
  })),
  "a workbook under the name of a table": oneOf("designs.csv", "glides.csv").map((file): Fault => ({
    files: { [file]: new Uint8Array([0x50, 0x4b, 3, 4, 20, 0, 6, 0, 8, 0]) },
    expected: { code: "not-text", file, row: null, column: null },
  })),
  "a workbook in the folder": oneOf("glides.xlsx", "All runs.ods", "x.XLS", "y.numbers").map((
    file,
  ): Fault => ({
    files: { [file]: new Uint8Array() },
    expected: { code: "workbook", file, row: null, column: null },
  })),
  "a table under another name": oneOf("glide.csv", "design.csv").map((file): Fault => ({
    files: { [file]: "a,b\n1,2\n" },
    expected: { code: "unknown-table", file, row: null, column: null },
  })),
  "no designs": fc.constant({
    files: { "designs.csv": null },
    expected: { code: "missing-table", file: "designs.csv", row: null, column: null },
  }),
  "a condition that can't be": fc.constantFrom(
    ["unknown-unit", "unit", "furlong"],
    ["wrong-unit", "unit", "kg"],
    ["impossible-value", "value", "300"],
    ["not-a-number", "value", "warm"],
    ["impossible-value", "uncertainty", "-1"],
    ["unknown-choice", "stated_as", "roughly"],
    ["empty-cell", "value", ""],
  ).map(([code, column, text]): Fault => ({
    files: { "conditions.csv": csvOf(withCell(conditions, 2, column!, text!)) },
    expected: { code: code!, file: "conditions.csv", row: 2, column: column! },
  })),
  "an instrument that can't be": fc.constantFrom(
    ["unknown-quantity", "quantity", "lunch_speed"],
    ["unknown-quantity", "quantity", "colour"],
    ["unknown-unit", "unit", "furlong"],
    ["wrong-unit", "unit", "kg"],
    ["impossible-value", "uncertainty", "0"],
    ["not-a-number", "uncertainty", "small"],
    ["unknown-choice", "kind", "mine"],
  ).map(([code, column, text]): Fault => ({
    files: { "instruments.csv": csvOf(withCell(instruments, 3, column!, text!)) },
    expected: { code: code!, file: "instruments.csv", row: 3, column: column! },
  })),
  "a descriptor that can't be": fc.constantFrom(
    ["bad-descriptor", "{"],
    ["bad-descriptor", "[]"],
    ["bad-descriptor", '{"resources":[{"path":"glides.csv"}]}'],
    ["bad-descriptor", '{"resources":[{"name":"a","schema":{"fields":[{"name":7}]}}]}'],
    ["newer-contract", '{"contract":2,"resources":[{"name":"a"}]}'],
  ).map(([code, text]): Fault => ({
    files: { "datapackage.json": text! },
    expected: { code: code!, file: "datapackage.json", row: null, column: null },
  })),
};

/** Every number anywhere in a value. */
export function* numbersIn(value: unknown): Generator<number> {
  if (typeof value === "number") yield value;
  else if (value !== null && typeof value === "object") {
    for (const part of Object.values(value)) yield* numbersIn(part);
  }
}

/** Folders of each kind: 200 and more in all. */
export const EACH = 5;
