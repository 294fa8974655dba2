/** What a malformed session folder is: a known change of a good one, with the finding that must tell it. */
import fc from "fast-check";
import { FILES } from "./invented-session.ts";
import { csvOf, type Grid, gridOf, withCell } from "./table-grid.ts";

export const designs = gridOf(FILES["designs.csv"]!);
export const glides = gridOf(FILES["glides.csv"]!);
export const conditions = gridOf(FILES["conditions.csv"]!);
export const instruments = gridOf(FILES["instruments.csv"]!);

export const GLIDE_NUMBERS = [
  "launch_speed",
  "end_speed",
  "drop",
  "distance",
  "duration",
  "carried_mass",
  "depth",
];
export const DESIGN_NUMBERS = [
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

export const row = (grid: Grid) => fc.integer({ min: 2, max: grid.length });
export const oneOf = (...texts: string[]) => fc.constantFrom(...texts);

/** A fault in one cell of one of two tables. */
export function cellFault(code: string, columns: readonly string[], texts: fc.Arbitrary<string>) {
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

export const NUMBERS = [...GLIDE_NUMBERS, ...DESIGN_NUMBERS];

export function headerFault(code: string, column: string, change: (grid: Grid) => Grid): Fault {
  return {
    files: { "glides.csv": csvOf(change(glides)) },
    expected: { code, file: "glides.csv", row: 1, column },
  };
}
