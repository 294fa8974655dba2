/**
 * Reads values of distribution functions that were computed elsewhere to 20 digits.
 *
 * @module
 */
import type { DistributionValue } from "../base/certified-set.ts";
import { numberIn, readSharedTable, textIn } from "./shared-table.ts";

/**
 * The rows of `shared/distributions-mpmath.csv`.
 *
 * @returns values in the order of the file
 * @throws Error when the table is not there or a cell does not hold what its column promises
 */
export function readDistributionValues(): DistributionValue[] {
  return readSharedTable("distributions-mpmath.csv").map((row) => ({
    function: textIn(row, "function"),
    arguments: ["first", "second", "third"]
      .filter((column) => textIn(row, column) !== "")
      .map((column) => numberIn(row, column)),
    value: numberIn(row, "value"),
  }));
}
