/**
 * What is worth knowing about the current in speeds over ground.
 *
 * @module
 */
import { type Finding, finding } from "../base/finding.ts";
import { printable } from "../base/printable.ts";
import { formatPlusMinus } from "../base/rounding.ts";
import type { BlockCurrent } from "./tow-current.ts";
import { type GroundRow, UNKNOWN_CURRENT } from "./tow-current-sources.ts";

/** A block's current with what it was made of. */
export interface CurrentFacts {
  readonly current: BlockCurrent;
  readonly here: readonly GroundRow[];
  /** True where some speed was towed both ways. */
  readonly passes: boolean;
  /** m/s between passes and float where they do not agree. */
  readonly apart: number | null;
}

const ORIGINS = {
  passes: "passes both ways",
  float: "a drifting float",
  both: "passes both ways and a drifting float",
} as const;

/**
 * Findings about one block's current.
 *
 * @param facts the current and its rows
 * @returns findings
 */
export function currentFindings({ current, here, passes, apart }: CurrentFacts): Finding[] {
  const { block, answer: { origin, speed, towards } } = current;
  const findings: Finding[] = [];
  const where = block === null ? "" : ` in ${printable(block)}`;
  const tell = (severity: "warning" | "note", code: string, what: string, wanted?: string) =>
    findings.push(finding({
      severity,
      code,
      file: "tow.csv",
      row: here[0]!.point.row,
      column: "speed_over",
      what,
      ...(wanted === undefined ? {} : { wanted }),
    }));
  const undirected = here.filter((one) => one.sign === 0);
  if (undirected.length > 0 && undirected.length < here.length) {
    tell(
      "warning",
      "pass-without-direction",
      `${undirected.length} speeds over ground${where} have no direction: a current can't be taken off them, and ` +
        `${UNKNOWN_CURRENT} m/s is allowed for.`,
      "Two words in direction, one for each way.",
    );
  }
  if (origin === null || undirected.length === here.length) {
    tell(
      "warning",
      passes ? "current-not-told" : "speed-over-ground",
      passes
        ? `Speeds are over ground, and passes both ways read alike${where}: still water, or a driver who held the speed over ` +
          `ground. ${UNKNOWN_CURRENT} m/s of current is allowed for, with its sign for each way.`
        : `Speeds are over ground${where}: a current of ${UNKNOWN_CURRENT} m/s is allowed for as one shared error.`,
      passes
        ? "water or ground in set_speed_over, or the current in conditions.csv by a drifting float."
        : "Speed through the water; or each speed both ways, with direction; or the current by a drifting float.",
    );
  } else {
    tell(
      "note",
      "current-taken-off",
      `A current of ${formatPlusMinus(speed!)}${where} towards "${
        printable(towards ?? "")
      }" is taken off the speeds over ground, each pass by its own way (by ${ORIGINS[origin]}).`,
    );
  }
  if (apart !== null) {
    tell(
      "warning",
      "current-disagrees",
      `Passes and float do not agree on the current${where}: they are ${
        apart.toFixed(2)
      } m/s apart. The float counts, with their difference as a doubt.`,
      'Look whether the signs are right: above zero carries passes marked "down" along.',
    );
  }
  return findings;
}
