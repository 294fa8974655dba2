/**
 * A session's tables as data frames, for looking around in a notebook: group, filter, summarise.
 *
 * Nothing that is decided rests on these: the library reads its rows as typed objects. Columns are named as in the files
 * (`launch_speed`), numbers are in SI, what was not measured is null and never NaN.
 *
 * Import it by its own path: it loads a native library that nothing else needs.
 *
 * @module
 */
import pl, { type DataFrame } from "nodejs-polars";
import type { Row, Session } from "../base/session.ts";
import { type Column, DESIGNS, GLIDES, type TableContract, TOW } from "../base/tables.ts";

/** Frames of the tables whose rows a notebook looks at. */
export interface SessionFrames {
  readonly designs: DataFrame;
  readonly glides: DataFrame;
  readonly tow: DataFrame;
}

function fieldOf(column: Column): string {
  return column.name.replace(/_(\w)/g, (_, letter: string) => letter.toUpperCase());
}

function valueOf(row: Row, field: string): unknown {
  const value = (row as unknown as Record<string, unknown>)[field];
  return value === undefined || (typeof value === "number" && !Number.isFinite(value))
    ? null
    : value;
}

function frame(contract: TableContract, rows: readonly Row[]): DataFrame {
  const numbers = pl.Series("row", rows.map((row) => row.row), pl.Int32);
  const columns = contract.columns.map((column) =>
    pl.Series(
      column.name,
      rows.map((row) => valueOf(row, fieldOf(column))),
      column.kind === "number" ? pl.Float64 : pl.Utf8,
    )
  );
  return pl.DataFrame([numbers, ...columns]);
}

/**
 * The tables of a session as frames, one column more than the file: `row`, as a spreadsheet numbers it.
 *
 * @param session as read
 * @returns frames in SI units: speeds in m/s, lengths in m, volumes in m3, masses in kg, angles in rad
 * @example
 * ```ts
 * import { framesOf } from "lakeproof/read/frame.ts";
 * import { readSession } from "lakeproof/read/read-session.ts";
 * const file = new TextEncoder().encode("design,span [cm],area\nalder,95,0.15\n");
 * const { designs } = framesOf(readSession("example", new Map([["designs.csv", file]])));
 * if (designs.getColumn("span").get(0) !== 0.95) throw new Error("95 cm is 0.95 m");
 * ```
 */
export function framesOf(session: Session): SessionFrames {
  return {
    designs: frame(DESIGNS, session.designs),
    glides: frame(GLIDES, session.glides),
    tow: frame(TOW, session.tow),
  };
}
