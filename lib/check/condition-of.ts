/**
 * The condition that holds for a block of runs.
 *
 * @module
 */
import type { Condition, Session } from "../base/session.ts";

/**
 * A block's own row of conditions.csv, else the row that holds for all blocks.
 *
 * @param session whose conditions
 * @param quantity its name in conditions.csv
 * @param block of the run; `null` for a run without one
 * @returns the row, or `null` where none is given
 */
export function conditionOf(
  session: Session,
  quantity: string,
  block: string | null,
): Condition | null {
  const rows = session.conditions.filter((one) => one.quantity === quantity);
  return (block === null ? undefined : rows.find((one) => one.block === block)) ??
    rows.find((one) => one.block === null) ?? null;
}
