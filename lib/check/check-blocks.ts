/**
 * Whether designs were flown side by side: within a block everything but the design is alike.
 *
 * @module
 */
import { didYouMean } from "../base/did-you-mean.ts";
import { type Finding, finding } from "../base/finding.ts";
import { excerpt } from "../base/printable.ts";
import type { Glide, Session } from "../base/session.ts";
import { keptGlides } from "./rule.ts";

const FILE = "glides.csv";

/** What a run is alike within: its block, else its day. */
const blockOf = (glide: Glide) => glide.block ?? glide.date ?? "";

/**
 * Warns where each design was flown in a block (rider, day) of its own, and where one block spans several days.
 *
 * @param session runs left out do not count
 * @returns warnings
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
        what: `The block "${excerpt(block)}" holds runs of ${
          excerpt(runs[0]!.design)
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
      what: `The block "${excerpt(block)}" spans ${days.size} days.`,
      wanted: "One block for each rider and day: water, wind and rider are alike only within it.",
    }));
  }
  return findings;
}

/**
 * Warns of conditions for a block that no run is in: most often a name written in two ways.
 *
 * @param session all its rows count, those left out too
 * @returns warnings
 */
export function checkConditionBlocks(session: Session): Finding[] {
  const blocks = new Set([...session.glides, ...session.tow].flatMap((one) => one.block ?? []));
  if (blocks.size === 0) return [];
  return session.conditions.flatMap((one) => {
    if (one.block === null || blocks.has(one.block)) return [];
    const meant = didYouMean(one.block, [...blocks]);
    return [finding({
      severity: "warning",
      code: "unknown-block",
      file: "conditions.csv",
      row: one.row,
      column: "block",
      what: `No run is in the block "${excerpt(one.block)}", so this row holds for none.`,
      wanted: meant === null
        ? "A block as it stands in glides.csv or tow.csv, or an empty cell for all."
        : `Did you mean ${excerpt(meant)}?`,
    })];
  });
}

/**
 * Notes when no run says how it ended: only stalled runs tell how slow a design still flies.
 *
 * @param session runs left out do not count
 * @returns a note, or nothing
 */
export function checkEnds(session: Session): Finding[] {
  const glides = keptGlides(session);
  if (glides.length === 0 || glides.some((one) => one.ended !== null)) return [];
  return [finding({
    severity: "note",
    code: "no-ends",
    file: FILE,
    column: "ended",
    what:
      "No run says how it ended, so no design's own end speed is known; designs are compared down to one end speed.",
    wanted: "stalled, touched or stopped early in the column ended.",
  })];
}
