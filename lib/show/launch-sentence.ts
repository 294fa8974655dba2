/**
 * What the launches did to the raw distances, in words: the trap that comparing distances as they stand falls into.
 *
 * @module
 */
import type { CommonLaunch, GlideComparison } from "../base/answers.ts";
import { formatNumber, formatPercent, NO_BREAK_SPACE } from "../base/rounding.ts";
import { printable } from "../base/printable.ts";
import { meanOf } from "../infer/sample.ts";
import { atSentenceStart, listInWords } from "../base/sentence-words.ts";
import type { DesignEvidence, NaiveComparison, RunEvidence } from "../decide/glide-evidence.ts";

/** m/s: means of launch speeds closer than this count as alike; the best hand timing is no better. */
const ALIKE_SPEED = 0.05;

/** m: the same for height lost. */
const ALIKE_DROP = 0.02;

/** Effects closer to 1 than this are said to be small: they are below what a run repeats to. */
const SMALL_EFFECT = 0.02;

/** Mean of a column over the runs that were used, `null` where no run has it. */
function meanOfUsed(
  runs: readonly RunEvidence[],
  pick: (run: RunEvidence) => number | null,
): number | null {
  const values = runs.filter((run) => run.used).map(pick).filter((one) => one !== null);
  if (values.length === 0) return null;
  return meanOf(values);
}

/** "cost it 40 % of its distance", "add 25 % to its distance", "make it glide 2.4 times as far". */
function effectInWords(effect: number): string {
  if (effect < 1) return `cost it about ${formatPercent(1 - effect)} of its distance`;
  if (effect < 2) return `add about ${formatPercent(effect - 1)} to its distance`;
  return `make it glide about ${formatNumber(effect, 1)} times as far`;
}

function differenceOf(
  baseline: DesignEvidence,
  candidate: DesignEvidence,
  pick: (run: RunEvidence) => number | null,
): number {
  const [one, other] = [meanOfUsed(baseline.runs, pick), meanOfUsed(candidate.runs, pick)];
  return one === null || other === null ? 0 : other - one;
}

function causes(baseline: DesignEvidence, candidate: DesignEvidence, effect: number): string[] {
  const speed = differenceOf(baseline, candidate, (run) => run.launchSpeed);
  const drop = differenceOf(baseline, candidate, (run) => run.drop);
  const stopped = (one: DesignEvidence) =>
    one.runs.filter((run) => run.used && run.ended === "stopped early").length;
  const helps = effect > 1;
  const found: string[] = [];
  if (Math.abs(speed) >= ALIKE_SPEED && speed > 0 === helps) {
    const how = speed > 0 ? "faster" : "slower";
    const amount = formatNumber(Math.abs(speed), Math.abs(speed) < 0.1 ? 2 : 1);
    found.push(`was launched ${amount}${NO_BREAK_SPACE}m/s ${how} on average`);
  }
  if (Math.abs(drop) >= ALIKE_DROP && drop > 0 === helps) {
    const how = drop > 0 ? "more" : "less";
    found.push(`lost ${formatNumber(Math.abs(drop), 2)}${NO_BREAK_SPACE}m ${how} height`);
  }
  const more = stopped(candidate) - stopped(baseline);
  if (more !== 0 && more < 0 === helps) {
    found.push(`was stopped early ${helps ? "less" : "more"} often`);
  }
  return found;
}

/**
 * Sentences on the raw ratio and on what the launches did to it.
 *
 * The launch effect is what is left of the raw ratio after the ratio from the same launch: launch speed, height lost and
 * ends together, and a pumped run or another rider's mass besides, so that no named cause is made to bear it alone. A
 * cause is named only where its direction agrees with the effect.
 *
 * @param comparison with its raw ratio
 * @param baseline its evidence
 * @param candidate its evidence
 * @param naive raw distances compared as they stand; `undefined` where that was not done
 * @returns one to three sentences; none where the raw ratio is not known
 */
export function launchSentences(
  comparison: GlideComparison,
  baseline: DesignEvidence,
  candidate: DesignEvidence,
  naive: NaiveComparison | undefined,
): string[] {
  const { raw } = comparison;
  if (raw === null) return [];
  const [base, other] = [printable(comparison.baseline), printable(comparison.candidate)];
  const flown = `As flown, ${other} covered ${formatNumber(raw.ratio, 2)} times the distance of ` +
    `${base} on average.`;
  if (Math.abs(Math.log(raw.launchEffect)) < SMALL_EFFECT) {
    return [`${flown} The launches were alike: they change this by less than 2${NO_BREAK_SPACE}%.`];
  }
  const found = causes(baseline, candidate, raw.launchEffect);
  const effect = effectInWords(raw.launchEffect);
  const why = found.length === 0
    ? `Launch speed, height lost and ends together would ${effect}.`
    : `${atSentenceStart(other)} ${
      listInWords(found)
    }. Launch speed, height lost and ends together would ${effect}.`;
  return [`${flown} ${why}`, ...misleading(comparison, naive)];
}

function misleading(comparison: GlideComparison, naive: NaiveComparison | undefined): string[] {
  if (naive === undefined) return [];
  const says = naive.low > 1 ? "candidate-better" : naive.high < 1 ? "baseline-better" : null;
  if (says === null || says === comparison.verdict) return [];
  const ends = `${formatNumber(naive.low, 2)} to ${formatNumber(naive.high, 2)}`;
  const ahead = printable(
    says === "candidate-better" ? comparison.candidate : comparison.baseline,
  );
  return [
    `Raw distances compared as they stand would have named ${ahead}, with a 95${NO_BREAK_SPACE}% ` +
    `interval from ${ends}: they compare launches, not foils.`,
  ];
}

/**
 * Says where the common launch lies outside what a design was flown at: its distance is then worked out, not flown.
 *
 * @param launch the common launch
 * @param designs baseline and candidate
 * @returns one sentence a design that lies outside
 */
export function reachSentences(
  launch: CommonLaunch,
  designs: readonly (DesignEvidence | undefined)[],
): string[] {
  return designs.flatMap((one) => {
    const speeds = (one?.runs ?? []).flatMap((run) =>
      run.used && run.launchSpeed !== null ? [run.launchSpeed] : []
    );
    if (one === undefined || speeds.length === 0) return [];
    const [slowest, fastest] = [Math.min(...speeds), Math.max(...speeds)];
    const say = (how: string, speed: number) => [
      `No run of ${printable(one.design)} was launched ${how} than ${formatNumber(speed, 2)}` +
      `${NO_BREAK_SPACE}m/s: at the common launch its distance is worked out, not flown.`,
    ];
    if (launch.speed > fastest + ALIKE_SPEED) return say("faster", fastest);
    if (launch.speed < slowest - ALIKE_SPEED) return say("slower", slowest);
    return [];
  });
}
