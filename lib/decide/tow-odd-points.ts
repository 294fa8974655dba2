/**
 * Towed readings that do not go with the others: told, with the answer without them, never dropped.
 *
 * @module
 */
import { type Finding, finding } from "../base/finding.ts";
import { slowestSpeed, towInfluence, towMisfit } from "../fit/tow-influence.ts";
import { towDrag, towedBestSpeed } from "../fit/tow-curve.ts";
import { fitTow, type TowFit } from "../fit/tow-fit.ts";
import type { PreparedPoint } from "./tow-readings.ts";

const FILE = "tow.csv";

/**
 * Where each rule begins to speak. False words counted in simulated tows without any odd reading: about 5 % of
 * designs for one that stands out and for misfit, 1 % or less for the others.
 */
const RULES = {
  /** Of the reading that stands out most, times the number of readings. */
  standsOut: 0.05,
  misfit: 0.05,
  stalling: 0.01,
  /** Cook's distance; with fewer readings than `many` single ones rule the law more often. */
  cook: { few: 2, many: 1 },
  many: 15,
  leverage: 0.5,
} as const;

/** Best lift-to-drag of a fit in words. */
function bestOf(fit: TowFit): string {
  const best = towedBestSpeed(fit);
  return best === null ? "none" : (fit.data.craft.lift / towDrag(fit, best.speed)).toFixed(1);
}

const instead = (without: TowFit, fit: TowFit, words: string) =>
  `Best lift-to-drag without ${words}: ${bestOf(without)}, with ${words}: ${bestOf(fit)}.`;

/**
 * Findings about single readings of a design.
 *
 * @param design its name
 * @param points the readings of the fit, in its order
 * @param fit the law through them
 * @returns findings
 */
export function oddPoints(
  design: string,
  points: readonly PreparedPoint[],
  fit: TowFit,
): Finding[] {
  const found: Finding[] = [];
  const say = (
    severity: "warning" | "note",
    code: string,
    at: number | null,
    what: string,
    wanted: string,
  ) =>
    found.push(finding({
      severity,
      code,
      file: FILE,
      row: at === null ? null : points[at]!.point.row,
      what,
      wanted,
    }));
  const influence = towInfluence(fit);
  const count = influence.length;
  const farthest = influence.reduce(
    (least, one, i) => one.pValue < influence[least]!.pValue ? i : least,
    0,
  );
  if (influence[farthest]!.pValue * count < RULES.standsOut) {
    const readings = fit.data.readings.filter((_, i) => i !== farthest);
    const without = fitTow({ ...fit.data, readings });
    const words = "it";
    say(
      "warning",
      "stands-out",
      farthest,
      `Reading ${
        points[farthest]!.point.point
      } of ${design} stands out from the law of the others. It stays in. ${
        without.ok ? instead(without, fit, words) : ""
      }`.trim(),
      "A look at what happened there; a reason in leave_out takes it out.",
    );
  }
  influence.forEach(({ cook, leverage }, i) => {
    const rules = cook > (count < RULES.many ? RULES.cook.few : RULES.cook.many) ||
      leverage > Math.max(RULES.leverage, 3 * fit.effectiveParameters / count);
    if (!rules) return;
    say(
      "note",
      "rules-the-law",
      i,
      `Reading ${points[i]!.point.point} of ${design} alone decides much of the law.`,
      "More readings near its speed.",
    );
  });
  const slow = slowestSpeed(fit);
  if (slow !== null && slow.pValue < RULES.stalling) {
    say(
      "warning",
      "slowest-drag-more",
      slow.places[0]!,
      `The slowest readings of ${design} drag ${
        slow.excess.toFixed(1)
      } N more than the others allow: stalling, or the board ` +
        `touching? They stay in. ${instead(slow.without, fit, "them")}`,
      "Readings a little faster; a reason in leave_out for those that were not in clean flight.",
    );
  }
  const misfit = towMisfit(fit);
  if (misfit !== null && misfit < RULES.misfit) {
    say(
      "note",
      "repeats-agree-better",
      null,
      `Repeats of ${design} agree better than the curve does: something changes with speed (wake, chop, depth). The ` +
        "intervals are widened by it.",
      "The depth of each reading; a look at the wake at the speeds that stand off.",
    );
  }
  return found;
}
