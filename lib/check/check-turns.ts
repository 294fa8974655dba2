/**
 * Whether designs were flown in turns: wind, water and a tiring rider drift over an evening.
 *
 * @module
 */
import { type Finding, finding } from "../base/finding.ts";
import { excerpt } from "../base/printable.ts";
import type { Glide, Session } from "../base/session.ts";
import { keptGlides } from "./rule.ts";

/** Runs a design from which flying it in one go is a plan and not chance. */
const LEAST_RUNS = 3;

/**
 * Warns of blocks in which each design was flown in one go, one after the other, by the order of the rows.
 *
 * Common practice, no source: what drifts over the evening then falls on one design alone.
 *
 * @param session runs left out do not count
 * @returns warnings by block
 */
export function checkTurns(session: Session): Finding[] {
  const blocks = new Map<string, Glide[]>();
  for (const glide of keptGlides(session)) {
    const block = glide.block ?? glide.date ?? "";
    blocks.set(block, [...blocks.get(block) ?? [], glide]);
  }
  return [...blocks].flatMap(([block, runs]) => {
    const designs = [...new Set(runs.map((one) => one.design))];
    const changes = runs.filter((one, i) => i > 0 && one.design !== runs[i - 1]!.design).length;
    const fewest = Math.min(
      ...designs.map((name) => runs.filter((one) => one.design === name).length),
    );
    if (designs.length < 2 || fewest < LEAST_RUNS || changes !== designs.length - 1) return [];
    const where = block === "" ? "" : ` in the block "${excerpt(block)}"`;
    return [finding({
      severity: "warning",
      code: "not-in-turns",
      file: "glides.csv",
      row: runs[0]!.row,
      column: "design",
      what: `By the order of the rows each design was flown in one go${where}: first all runs of ${
        designs.map((name) => excerpt(name)).join(", then all of ")
      }. Wind, water or a tiring rider may then be the difference.`,
      wanted:
        "The designs flown in turns. If they were, put the rows in the order flown (sort by run).",
    })];
  });
}
