/**
 * The one launch that all designs are compared from.
 *
 * @module
 */
import type { CommonLaunch } from "../base/answers.ts";
import { conditionOf } from "../check/condition-of.ts";
import { meanOf } from "../infer/sample.ts";
import type { PreparedRun, PreparedSession } from "./glide-runs.ts";

/** What the asker may set; what is left out comes from the data. */
export interface LaunchOptions {
  /** m/s */
  readonly launchSpeed?: number;
  /** m of height used. */
  readonly drop?: number;
  /** kg */
  readonly mass?: number;
}

/** The launch, and where each of its numbers comes from. */
export interface ChosenLaunch {
  readonly launch: CommonLaunch;
  readonly assumptions: readonly string[];
}

/** A setting as a person reads it: what was typed in another unit has no end of digits. */
const text = (value: number) => String(Number(value.toFixed(3)));

const round = (value: number, step: number) => Math.round(value / step) / Math.round(1 / step);

/**
 * Chooses the common launch: the asker's own numbers, else reference_* of conditions.csv, else from the runs.
 *
 * From the runs: midway between the designs' mean launch speeds, rounded to 0.1 m/s (their mean for more than two
 * designs); mean height used over all runs, rounded to 0.01 m; mean carried mass, rounded to 0.1 kg. Once rounded they
 * count as constants, so that they add nothing to the uncertainty. Midway costs the least: a launch faster than both
 * designs were flown at widens the interval.
 *
 * @param groups usable runs, one list a design; none empty
 * @param sessions in the order asked about
 * @param options the asker's own numbers
 * @returns launch and sentences; `null` when no run used tells the height
 */
export function chooseLaunch(
  groups: readonly (readonly PreparedRun[])[],
  sessions: readonly PreparedSession[],
  options: LaunchOptions,
): ChosenLaunch | null {
  const reference = (quantity: string) =>
    sessions.map((one) => conditionOf(one.session, quantity, null)?.value)
      .find((value) => value !== undefined);
  const all = groups.flat();
  const drops = all.flatMap((one) => one.run!.inLevel ? [one.run!.drop] : []);
  const choose = (own: number | undefined, quantity: string, from: () => number, how: string) => {
    if (own !== undefined) return { value: own, how: "as asked for" };
    const stated = reference(quantity);
    if (stated !== undefined) return { value: stated, how: `${quantity} of conditions.csv` };
    return { value: from(), how };
  };
  if (drops.length === 0) return null;
  const speed = choose(
    options.launchSpeed,
    "reference_launch_speed",
    () => round(meanOf(groups.map((runs) => meanOf(runs.map((one) => one.run!.launchSpeed)))), 0.1),
    groups.length > 2 ? "mean of the designs' mean launches" : "midway between the mean launches",
  );
  const drop = choose(
    options.drop,
    "reference_drop",
    () => Math.max(0, round(meanOf(drops), 0.01)),
    "mean of all runs",
  );
  const mass = choose(
    options.mass,
    "reference_mass",
    () => round(meanOf(all.map((one) => one.mass!)), 0.1),
    "mean of all runs",
  );
  return {
    launch: { speed: speed.value, drop: drop.value, mass: mass.value },
    assumptions: [
      `Launch speed to compare at: ${text(speed.value)} m/s (${speed.how}).`,
      `Height used to compare at: ${text(drop.value)} m (${drop.how}).`,
      `Carried mass to compare at: ${text(mass.value)} kg (${mass.how}).`,
    ],
  };
}
