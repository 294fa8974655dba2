/** Faults in headers and rows, by a name that reads on in a test. */
import fc from "fast-check";
import { columnLetter } from "lakeproof/read/match-header.ts";
import {
  designs,
  type Fault,
  GLIDE_NUMBERS,
  glides,
  headerFault,
  oneOf,
  row,
} from "./malformed-fault.ts";
import { columnAt, csvOf, withCell } from "./table-grid.ts";

/** Faults in the header or the shape of one table. */
export const TABLE_KINDS: Readonly<Record<string, fc.Arbitrary<Fault>>> = {
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
};
