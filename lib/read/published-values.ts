/**
 * Reads the published values that our results are held against.
 *
 * @module
 */
import type { Certainty, PublishedValue } from "../base/published-value.ts";
import { numberIn, readSharedTable, textIn } from "./shared-table.ts";

const CERTAINTIES: readonly string[] = ["confirmed", "one source", "recomputed", "from memory"];

/**
 * The rows of `shared/published-values.csv`.
 *
 * @returns published values in the order of the file
 * @throws Error when the table is not there, or a cell does not hold what its column promises
 * @example
 * ```ts
 * import { readPublishedValues } from "lakeproof/read/published-values.ts";
 * import { runPublishedChecks } from "lakeproof/decide/published-checks.ts";
 * const wrong = runPublishedChecks(readPublishedValues()).filter((one) => !one.agrees);
 * if (wrong.length > 0) throw new Error(JSON.stringify(wrong));
 * ```
 */
export function readPublishedValues(): PublishedValue[] {
  return readSharedTable("published-values.csv").map((row) => {
    const certainty = textIn(row, "certainty");
    if (!CERTAINTIES.includes(certainty)) {
      throw new Error(
        `Cannot read the published values as certainty must be one of ${
          CERTAINTIES.join(", ")
        }: ${certainty}`,
      );
    }
    return {
      check: textIn(row, "check"),
      topic: textIn(row, "topic"),
      quantity: textIn(row, "quantity"),
      inputs: textIn(row, "inputs"),
      published: numberIn(row, "published"),
      unit: textIn(row, "unit"),
      tolerance: numberIn(row, "tolerance"),
      toleranceReason: textIn(row, "tolerance_reason"),
      source: textIn(row, "source"),
      certainty: certainty as Certainty,
    };
  });
}
