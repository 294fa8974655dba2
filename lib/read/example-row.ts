/**
 * The row that a new table comes with, to show how it is filled in.
 *
 * @module
 */

/** What marks such a row: the start of its `leave_out`, `note` or `how`, or the end of an instrument's name. */
export const EXAMPLE_ROW = "example row";

/**
 * Whether a row is the example that came with the table: it never counts, and nothing in it is looked at.
 *
 * @param values text of a row by column
 * @returns true for the row that came with an empty table
 */
export function isExampleRow(values: Readonly<Record<string, string | number | null>>): boolean {
  const starts = (name: string) => {
    const value = values[name];
    return typeof value === "string" && value.toLowerCase().startsWith(EXAMPLE_ROW);
  };
  const instrument = values["instrument"];
  return starts("leave_out") || starts("note") || starts("how") ||
    (typeof instrument === "string" && instrument.toLowerCase().endsWith(`(${EXAMPLE_ROW})`));
}
