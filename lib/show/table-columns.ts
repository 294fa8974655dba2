/**
 * Heads of columns: words stand to the left, numbers to the right.
 *
 * @module
 */
import type { TableColumn } from "../base/records.ts";

/**
 * A column of words.
 *
 * @param label what it holds
 * @returns its head
 */
export function left(label: string): TableColumn {
  return { label, unit: "", align: "left" };
}

/**
 * A column of numbers.
 *
 * @param label what it holds
 * @param unit as people read it; empty for a pure number
 * @returns its head
 */
export function right(label: string, unit = ""): TableColumn {
  return { label, unit, align: "right" };
}

/**
 * Three columns: a quantity and both ends of its interval.
 *
 * @param label what the quantity is
 * @param unit of all three, as people read it
 * @returns the heads of what `intervalCells` returns
 */
export function withEnds(label: string, unit = ""): TableColumn[] {
  return [right(label, unit), right("95\u00a0% from", unit), right("to", unit)];
}
