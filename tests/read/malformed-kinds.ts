/** Malformed session folders, each a known change of a good one, with the finding that must tell it. */
import fc from "fast-check";
import { columnLetter } from "lakeproof/read/match-header.ts";
import { FILES } from "./invented-session.ts";
import { columnAt, csvOf, type Grid, gridOf, withCell } from "./table-grid.ts";

const designs = gridOf(FILES["designs.csv"]!);
const glides = gridOf(FILES["glides.csv"]!);
const conditions = gridOf(FILES["conditions.csv"]!);
const instruments = gridOf(FILES["instruments.csv"]!);

const GLIDE_NUMBERS = [
  "launch_speed",
  "end_speed",
  "drop",
  "distance",
  "duration",
  "carried_mass",
  "depth",
];
const DESIGN_NUMBERS = [
  "span",
  "area",
  "wet_volume",
  "thickness_ratio",
  "largest_lift_coefficient",
];

/** A known fault: the files changed, and the finding that must tell it. */
export interface Fault {
  readonly files: Readonly<Record<string, string | Uint8Array | null>>;
  readonly expected: {
    readonly code: string;
    readonly file: string | null;
    readonly row: number | null;
    readonly column: string | null;
  };
}

const row = (grid: Grid) => fc.integer({ min: 2, max: grid.length });
const oneOf = (...texts: string[]) => fc.constantFrom(...texts);

/** A fault in one cell of one of two tables. */
function cellFault(code: string, columns: readonly string[], texts: fc.Arbitrary<string>) {
  return fc.tuple(fc.constantFrom(...columns), fc.nat(100), texts).map(
    ([column, at, text]): Fault => {
      const [file, grid] = designs[0]!.includes(column) && column !== "design"
        ? ["designs.csv", designs] as const
        : ["glides.csv", glides] as const;
      const line = 2 + at % (grid.length - 1);
      return {
        files: { [file]: csvOf(withCell(grid, line, column, text)) },
        expected: { code, file, row: line, column },
      };
    },
  );
}

const NUMBERS = [...GLIDE_NUMBERS, ...DESIGN_NUMBERS];

function headerFault(code: string, column: string, change: (grid: Grid) => Grid): Fault {
  return {
    files: { "glides.csv": csvOf(change(glides)) },
    expected: { code, file: "glides.csv", row: 1, column },
  };
}

/** Kinds of fault by a name that reads on in a test. */
export const KINDS: Readonly<Record<string, fc.Arbitrary<Fault>>> = {
  "text in a number": cellFault(
    "not-a-number",
    NUMBERS,
    oneOf("fast", "12x", "1.2.3", "--4", "12e", "0x10", "½", "4,2,1", "1.5.", "four", "1 2", "٣"),
  ),
  "a number beyond all measure": cellFault(
    "not-a-number",
    NUMBERS,
    oneOf("NaN", "Infinity", "-inf", "1e999", "-1e999", `${"9".repeat(400)}`),
  ),
  "a failed formula": cellFault(
    "spreadsheet-error",
    NUMBERS,
    oneOf("#VALUE!", "#DIV/0!", "#N/A", "#REF!", "Err:502", "#WERT!"),
  ),
  "a formula": cellFault("not-a-number", NUMBERS, oneOf("=1+1", "=SUM(A1:A3)", "@x", "+cmd|x")),
  "a unit in the cell": cellFault(
    "unit-in-cell",
    ["launch_speed", "end_speed"],
    oneOf("14 km/h", "8kn", "4.2 m/s", "10 mph"),
  ),
  "a negative length, speed or mass": cellFault(
    "impossible-value",
    [
      "launch_speed",
      "end_speed",
      "distance",
      "duration",
      "carried_mass",
      "depth",
      "span",
      "area",
      "wet_volume",
    ],
    oneOf("-1", "-0.5", "−4", "-31.5"),
  ),
  "a speed of 200 km/h": cellFault(
    "impossible-value",
    ["launch_speed", "end_speed"],
    oneOf("55.6", "200", "26"),
  ),
  "a zero that can't be": cellFault("impossible-value", [
    "distance",
    "launch_speed",
    "area",
    "span",
  ], oneOf("0", "0.0", "-0")),
  "a mark for nothing": cellFault(
    "empty-mark",
    ["end_speed", "drop", "depth", "wet_volume"],
    oneOf("-", "n/a", "?", "N/A", "–"),
  ),
  "an unknown word where some may stand": cellFault(
    "unknown-choice",
    ["ended", "section"],
    oneOf("staled?", "crashed", "yes", "3"),
  ),
  "a day that is none": cellFault(
    "not-a-date",
    ["date"],
    oneOf("yesterday", "31.02.2031", "2031-13-01", "14 June", "45000"),
  ),
  "a day that may be two": cellFault(
    "ambiguous-date",
    ["date"],
    oneOf("05/06/2031", "1/2/2031", "11-12-2031"),
  ),
  "a number that can be read two ways": cellFault(
    "ambiguous-number",
    NUMBERS,
    oneOf("1,234", "12,500"),
  ),
  "another decimal mark": cellFault("other-decimal-mark", NUMBERS, oneOf("4,25", "0,5", "1.234,5")),
  "an empty needed cell": cellFault("empty-cell", ["run", "span", "area"], oneOf("", "  ")),
  "an empty measurement": cellFault(
    "not-measured",
    ["distance", "launch_speed"],
    oneOf("", " ", "\u00a0"),
  ),
  "an unknown design": cellFault(
    "unknown-design",
    ["design"],
    oneOf("cedar", "aldr", "<script>", "alder 2"),
  ),
  "an unnamed design": cellFault("empty-cell", ["design"], oneOf("", " ")),
  "a missing column": oneOf("run", "design", "launch_speed", "distance").map((column) =>
    headerFault("missing-column", column, (grid) => {
      const at = columnAt(grid, column);
      return grid.map((cells) => cells.filter((_, j) => j !== at));
    })
  ),
  "a misspelt column": fc.constantFrom(["launch_speed", "lanch speed"], ["distance", "Distence"])
    .map((
      [column, text],
    ) => headerFault("missing-column", column!, (grid) => withCell(grid, 1, column!, text!))),
  "a doubled column": fc.constantFrom(...GLIDE_NUMBERS).map((column) =>
    headerFault("doubled-column", column, (grid) => {
      const at = columnAt(grid, column);
      return grid.map((cells) => [...cells, cells[at]!]);
    })
  ),
  "an unknown unit": fc.tuple(
    fc.constantFrom(...GLIDE_NUMBERS),
    oneOf("furlong", "xx", "km/hh/", "€"),
  ).map((
    [column, unit],
  ) =>
    headerFault("unknown-unit", column, (grid) => withCell(grid, 1, column, `${column} [${unit}]`))
  ),
  "a unit of another kind": fc.constantFrom(["launch_speed", "kg"], ["distance", "s"], [
    "carried_mass",
    "N",
  ], ["drop", "m/s"])
    .map(([column, unit]) =>
      headerFault(
        "wrong-unit",
        column!,
        (grid) => withCell(grid, 1, column!, `${column} [${unit}]`),
      )
    ),
  "an uncertainty without its unit": fc.constantFrom("km/h", "kn").map((unit) =>
    headerFault(
      "unit-needed",
      "u_launch_speed",
      (grid) =>
        withCell(grid, 1, "launch_speed", `launch_speed [${unit}]`).map((cells, i) => [
          ...cells,
          i === 0 ? "u_launch_speed" : "0.1",
        ]),
    )
  ),
  "an uncertainty that can't be": fc.tuple(row(glides), oneOf("0", "-0.1")).map((
    [line, text],
  ): Fault => ({
    files: {
      "glides.csv": csvOf(glides.map((cells, i) => [
        ...cells,
        i === 0 ? "u_distance" : i === line - 1 ? text : "0.1",
      ])),
    },
    expected: { code: "impossible-value", file: "glides.csv", row: line, column: "u_distance" },
  })),
  "a doubled run": fc.tuple(row(glides), row(glides)).filter(([a, b]) => a !== b).map(
    ([a, b]): Fault => {
      const [first, second] = [Math.min(a, b), Math.max(a, b)];
      return {
        files: { "glides.csv": csvOf(withCell(glides, second, "run", glides[first - 1]![0]!)) },
        expected: { code: "doubled-row", file: "glides.csv", row: second, column: "run" },
      };
    },
  ),
  "a doubled design": fc.constant({
    files: { "designs.csv": csvOf(withCell(designs, 3, "design", "alder")) },
    expected: { code: "doubled-row", file: "designs.csv", row: 3, column: "design" },
  }),
  "another delimiter in one row": fc.tuple(row(glides), oneOf(";", "\t")).map(
    ([line, mark]): Fault => {
      const lines = csvOf(glides).split("\n");
      lines[line - 1] = lines[line - 1]!.replaceAll(",", mark);
      return {
        files: { "glides.csv": lines.join("\n") },
        expected: { code: "other-delimiter", file: "glides.csv", row: line, column: null },
      };
    },
  ),
  "a surplus cell": fc.tuple(row(glides), fc.nat(3)).map(([line, empty]): Fault => ({
    files: {
      "glides.csv": csvOf(
        glides.map((cells, i) =>
          i === line - 1 ? [...cells, ...Array<string>(empty).fill(""), "x"] : cells
        ),
      ),
    },
    expected: {
      code: "surplus-cell",
      file: "glides.csv",
      row: line,
      column: columnLetter(glides[0]!.length + empty),
    },
  })),
  "an unfinished quote": row(glides).map((line): Fault => {
    const lines = csvOf(glides).split("\n");
    lines[line - 1] = lines[line - 1]!.replace("mira-sat", '"mira-sat');
    return {
      files: { "glides.csv": lines.join("\n") },
      expected: { code: "open-quote", file: "glides.csv", row: line, column: "block" },
    };
  }),
  "a quote that closes rows later": fc.integer({ min: 2, max: glides.length - 1 }).map(
    (line): Fault => {
      const lines = csvOf(glides).split("\n");
      lines[line - 1] = lines[line - 1]!.replace("mira-sat", '"mira-sat');
      lines[line] = lines[line]!.replace(/,,$/, ',,late"');
      return {
        files: { "glides.csv": lines.join("\n") },
        expected: { code: "open-quote", file: "glides.csv", row: line, column: "block" },
      };
    },
  ),
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
