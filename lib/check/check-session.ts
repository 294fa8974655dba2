/**
 * Everything that looks wrong or odd in a session that could be read.
 *
 * @module
 */
import type { Finding } from "../base/finding.ts";
import type { Session } from "../base/session.ts";
import { checkBlocks, checkConditionBlocks, checkEnds } from "./check-blocks.ts";
import { checkDoubled } from "./check-doubled.ts";
import { checkGlideRatio } from "./check-glide-ratio.ts";
import { checkPlanform } from "./check-planform.ts";
import { checkMeanSpeed, checkSpedUp } from "./check-speeds.ts";
import { checkStall } from "./check-stall.ts";
import { checkSwapped } from "./check-swapped.ts";
import { checkTurns } from "./check-turns.ts";
import { checkValues } from "./check-values.ts";
import { checkWindows } from "./check-windows.ts";
import type { Rule } from "./rule.ts";

/** Rules in the order in which their findings are told. */
const RULES: readonly Rule[] = [
  checkSwapped,
  checkValues,
  checkPlanform,
  checkSpedUp,
  checkStall,
  checkMeanSpeed,
  checkGlideRatio,
  checkDoubled,
  checkWindows,
  checkBlocks,
  checkTurns,
  checkConditionBlocks,
  checkEnds,
];

/**
 * Findings about what a session says, beyond how it is written (those stand in `session.findings`).
 *
 * Impossible values are errors; suspicious physics is a warning, and the run stays in. Nothing is changed or dropped.
 *
 * @param session as read
 * @returns findings in the order of the rules
 * @example
 * ```ts
 * import { checkSession } from "lakeproof/check/check-session.ts";
 * import { readSession } from "lakeproof/read/read-session.ts";
 * import { equal } from "node:assert/strict";
 * const designs = "design,span,area\nalder,0.95,0.015\n";
 * const session = readSession("lake", new Map([["designs.csv", new TextEncoder().encode(designs)]]));
 * equal(checkSession(session).at(-1)?.code, "odd-aspect-ratio");
 * ```
 */
export function checkSession(session: Session): Finding[] {
  return RULES.flatMap((rule) => rule(session));
}
