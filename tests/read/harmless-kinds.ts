/** Harmless changes of a session's tables: the same data as another hand or spreadsheet would write them. */
import fc from "fast-check";
import { columnAt, csvOf, type Grid, gridOf } from "./table-grid.ts";

/** A table on its way to bytes. */
export interface Draft {
  readonly grid: Grid;
  readonly delimiter: string;
  readonly quoteAll: boolean;
  readonly lineEnd: string;
  readonly before: string;
  readonly encode: (text: string) => Uint8Array;
}

/** One change of one table; `seed` picks where. */
export type Change = (draft: Draft, file: string, seed: number) => Draft;

const utf8 = (text: string) => new TextEncoder().encode(text);

function utf16(text: string): Uint8Array {
  const bytes = new Uint8Array(2 + 2 * text.length);
  bytes.set([0xff, 0xfe]);
  for (let i = 0; i < text.length; i++) {
    bytes.set([text.charCodeAt(i) & 255, text.charCodeAt(i) >> 8], 2 + 2 * i);
  }
  return bytes;
}

/** A decimal text times a whole number over a power of ten, without losing a digit. */
export function scaled(text: string, factor: bigint, places: number): string {
  const [before = "", after = ""] = text.split(".");
  const whole = BigInt(before + after) * factor;
  const digits = String(whole < 0n ? -whole : whole).padStart(after.length + places + 1, "0");
  const at = digits.length - after.length - places;
  const result = places + after.length === 0
    ? digits
    : `${digits.slice(0, at)}.${digits.slice(at)}`;
  return (whole < 0n ? "-" : "") + result.replace(/(\.\d*?)0+$/, "$1").replace(/\.$/, "");
}

function inUnit(draft: Draft, column: string, unit: string, factor: bigint, places: number): Draft {
  if (!draft.grid[0]!.includes(column)) return draft;
  const at = columnAt(draft.grid, column);
  const grid = draft.grid.map((cells, i) =>
    cells.map((cell, j) =>
      j !== at
        ? cell
        : i === 0
        ? `${column} [${unit}]`
        : cell === ""
        ? ""
        : scaled(cell, factor, places)
    )
  );
  return { ...draft, grid };
}

const isText = (grid: Grid, at: number) => /note|how|block|instrument|^run$/.test(grid[0]![at]!);

/** All changes by name. */
export const CHANGES: Readonly<Record<string, Change>> = {
  "columns in another order": (draft, _, seed) => {
    const order = draft.grid[0]!.map((_, i) => i).sort((a, b) =>
      ((a * 7919 + seed) % 101) - ((b * 7919 + seed) % 101) || a - b
    );
    return { ...draft, grid: draft.grid.map((cells) => order.map((i) => cells[i]!)) };
  },
  "speeds in km/h": (draft) =>
    inUnit(inUnit(draft, "launch_speed", "km/h", 36n, 1), "end_speed", "Km / h", 36n, 1),
  "lengths in cm": (draft) => inUnit(inUnit(draft, "drop", "cm", 100n, 0), "span", "cm", 100n, 0),
  "masses in g": (draft) => inUnit(draft, "carried_mass", "g", 1000n, 0),
  "areas in cm²": (draft) => inUnit(draft, "area", "cm²", 10000n, 0),
  "thickness in %": (draft) => inUnit(draft, "thickness_ratio", "%", 100n, 0),
  "durations in ms": (draft) => inUnit(draft, "duration", "ms", 1000n, 0),
  "volumes in ml": (draft) => inUnit(draft, "wet_volume", "ml", 1000n, 0),
  "spaces around cells": (draft, _, seed) => ({
    ...draft,
    grid: draft.grid.map((cells, i) =>
      cells.map((cell, j) => (i + j + seed) % 3 === 0 ? `  ${cell} ` : cell)
    ),
  }),
  "every cell in quotes": (draft) => ({ ...draft, quoteAll: true }),
  "line ends of another system": (draft, _, seed) => ({
    ...draft,
    lineEnd: seed % 2 ? "\r\n" : "\r",
  }),
  "a byte order mark": (draft) => ({ ...draft, encode: (text) => utf8("\ufeff" + text) }),
  "UTF-16": (draft) => ({ ...draft, encode: utf16 }),
  "blank lines": (draft, _, seed) => ({
    ...draft,
    grid: draft.grid.flatMap((cells, i) =>
      (i + seed) % 3 === 0 ? [cells, cells.map(() => "")] : [cells]
    ),
  }),
  "trailing columns": (draft, _, seed) => ({
    ...draft,
    grid: draft.grid.map((cells) => [...cells, ...Array<string>(1 + seed % 4).fill("")]),
  }),
  "trailing rows": (draft, _, seed) => ({
    ...draft,
    grid: [
      ...draft.grid,
      ...Array.from({ length: 1 + seed % 3 }, () => draft.grid[0]!.map(() => "")),
    ],
  }),
  "a column of one's own": (draft, _, seed) => ({
    ...draft,
    grid: draft.grid.map((cells, i) => {
      const at = seed % (cells.length + 1);
      const mood = i === 0
        ? "mood of the day"
        : cells.every((cell) => cell === "")
        ? ""
        : `fine ${i}`;
      return [...cells.slice(0, at), mood, ...cells.slice(at)];
    }),
  }),
  "headers in another hand": (draft, _, seed) => ({
    ...draft,
    grid: draft.grid.map((cells, i) =>
      i > 0 ? cells : cells.map((cell, j) => {
        const [, name = cell, rest = ""] = /^([^[]*)(.*)$/.exec(cell)!;
        const style = (j + seed) % 3;
        const other = style === 0
          ? name.toUpperCase()
          : style === 1
          ? name.replaceAll("_", " ")
          : name.replaceAll("_", "-");
        return other + rest;
      })
    ),
  }),
  "choices in another hand": (draft) => ({
    ...draft,
    grid: draft.grid.map((cells, i) =>
      i === 0
        ? cells
        : cells.map((cell) =>
          /^(stalled|touched|cambered|limits|common|independent)$/.test(cell)
            ? cell.toUpperCase()
            : cell
        )
    ),
  }),
  "days as a German spreadsheet writes them": (draft) => ({
    ...draft,
    grid: draft.grid.map((cells) =>
      cells.map((cell) => cell.replace(/^(\d{4})-(\d\d)-(\d\d)$/, "$3.$2.$1"))
    ),
  }),
  "semicolons": (draft) => ({ ...draft, delimiter: ";" }),
  "tabs": (draft) => ({ ...draft, delimiter: "\t" }),
  "semicolons and decimal commas": (draft) => ({
    ...draft,
    delimiter: ";",
    grid: draft.grid.map((cells, i) =>
      i === 0
        ? cells
        : cells.map((cell, j) =>
          isText(draft.grid, j) ? cell : cell.replace(/^(\s*-?\d*)\.(\d+\s*)$/, "$1,$2")
        )
    ),
  }),
  "a first line that names the delimiter": (draft) => ({ ...draft, before: "sep=" }),
  "zeros at the end": (draft) => ({
    ...draft,
    grid: draft.grid.map((cells, i) =>
      i === 0
        ? cells
        : cells.map((cell, j) =>
          isText(draft.grid, j) ? cell : cell.replace(/^(\s*\d+[.,]\d\d?)(\s*)$/, "$100$2").replace(
            /^(\s*\d+[.,]\d\d)0(\d\s*)$/,
            "$10$2",
          )
        )
    ),
  }),
  "cells left off at the end of rows": (draft) => ({
    ...draft,
    grid: draft.grid.map((cells, i) => {
      const kept = [...cells];
      while (i > 0 && kept.length > 1 && kept.at(-1) === "") kept.pop();
      return kept;
    }),
  }),
};

/** The tables with some changes made one after the other. */
export function changed(
  files: Readonly<Record<string, string>>,
  names: readonly string[],
  seed: number,
): Record<string, Uint8Array> {
  const result: Record<string, Uint8Array> = {};
  for (const [file, text] of Object.entries(files)) {
    const start: Draft = {
      grid: gridOf(text),
      delimiter: ",",
      quoteAll: false,
      lineEnd: "\n",
      before: "",
      encode: utf8,
    };
    const draft = names.reduce((one, name) => CHANGES[name]!(one, file, seed), start);
    const { grid, before, encode, delimiter, ...writing } = draft;
    const head = before === "" ? "" : `${before}${delimiter}${writing.lineEnd}`;
    result[file] = encode(head + csvOf(grid, { ...writing, delimiter }));
  }
  return result;
}

/** Some changes together, made in the order in which they stand above, and a seed for their places. */
export const someChanges = fc.tuple(
  fc.subarray(Object.keys(CHANGES), { minLength: 1, maxLength: 8 }),
  fc.nat(1000),
);
