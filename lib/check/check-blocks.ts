/**
 * Whether designs were flown side by side: within a block everything but the design is alike.
 *
 * @module
 */
import { type Finding, finding } from "../base/finding.ts";
import { printable } from "../base/printable.ts";
import type { Glide, Session } from "../base/session.ts";
import { keptGlides } from "./rule.ts";

const FILE = "glides.csv";

/** What a run is alike within: its block, else its day. */
const blockOf = (glide: Glide) => glide.block ?? glide.date ?? "";

/**
 * Warns where each design was flown in a block (rider, day) of its own, and where one block spans several days.
 *
 * @param session runs left out do not count
 */
export function checkBlocks(session: Session): Finding[] {
  const glides = keptGlides(session);
  const blocks = new Map<string, Glide[]>();
  for (const glide of glides) {
    blocks.set(blockOf(glide), [...blocks.get(blockOf(glide)) ?? [], glide]);
  }
  const designs = new Set(glides.map((one) => one.design));
  const single = [...blocks].filter(([, runs]) =>
    new Set(runs.map((one) => one.design)).size === 1
  );
  const findings: Finding[] = [];
  if (designs.size > 1 && single.length === blocks.size) {
    findings.push(finding({
      severity: "warning",
      code: "one-design-a-block",
      file: FILE,
      column: "block",
      count: blocks.size,
      what:
        "Every block (rider and day) holds runs of one design only, so the design can't be told from the day.",
      wanted: "Both designs flown by the same rider on the same day, in turns.",
    }));
  } else if (designs.size > 1) {
    for (const [block, runs] of single) {
      findings.push(finding({
        severity: "note",
        code: "one-design-a-block",
        file: FILE,
        row: runs[0]!.row,
        column: "block",
        count: runs.length,
        what: `The block "${printable(block)}" holds runs of ${
          printable(runs[0]!.design)
        } only, so they compare with nothing flown beside them.`,
      }));
    }
  }
  for (const [block, runs] of blocks) {
    const days = new Set(runs.flatMap((one) => one.date ?? []));
    if (days.size < 2) continue;
    findings.push(finding({
      severity: "warning",
      code: "block-over-days",
      file: FILE,
      row: runs[0]!.row,
      column: "block",
      what: `The block "${printable(block)}" spans ${days.size} days.`,
      wanted: "One block for each rider and day: water, wind and rider are alike only within it.",
    }));
  }
  return findings;
}
