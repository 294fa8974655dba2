/**
 * How widely towed points scatter about a law, over all of them and over the means of repeats.
 *
 * Source: Birge 1932, Physical Review 40, 207 (widening by the ratio of found to stated scatter, from memory); that the means
 * of repeats count by themselves, and that neither counts under 1, is a rule of ours, chosen by simulated coverage.
 *
 * @module
 */
import type { TowData } from "./tow-data.ts";

/** Where the size of the scatter comes from. */
export type ScatterFrom = "stated" | "within" | "between";

/**
 * Places of the readings of each speed that was repeated.
 *
 * @param data readings
 * @returns one list a speed
 */
export function groupsOf({ readings }: TowData): readonly (readonly number[])[] {
  const places = new Map<string, number[]>();
  readings.forEach((one, i) => places.set(one.group, [...(places.get(one.group) ?? []), i]));
  return [...places.values()].filter((group) => group.length > 1);
}

/**
 * The scatter over all points and over the means of repeats; the larger one counts, and neither counts under 1.
 *
 * @param scaled residuals over their stated standard uncertainties
 * @param groups places of repeats
 * @param effective parameters that the points pay for
 * @returns both scales, the one that counts, where it comes from and its degrees of freedom
 */
export function scatterOf(
  scaled: readonly number[],
  groups: readonly (readonly number[])[],
  effective: number,
) {
  const free = scaled.length - effective;
  const within = scaled.reduce((sum, z) => sum + z * z, 0) / free;
  const freeGroups = groups.length - effective;
  const between = freeGroups < 1 ? null : groups.reduce(
    (sum, group) => sum + group.reduce((total, i) => total + scaled[i]!, 0) ** 2 / group.length,
    0,
  ) / freeGroups;
  const wins = between !== null && between > Math.max(1, within);
  const scatterFrom: ScatterFrom = wins ? "between" : within > 1 ? "within" : "stated";
  return {
    within,
    between,
    scale: wins ? between : Math.max(1, within),
    scatterFrom,
    degreesOfFreedom: wins ? freeGroups : free,
  };
}
