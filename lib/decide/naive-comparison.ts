/**
 * The comparison that looks sensible and is not: raw distances as they are.
 *
 * @module
 */
import { varianceOf } from "../infer/sample.ts";
import { welchComparison } from "../infer/welch.ts";
import type { NaiveComparison } from "./glide-evidence.ts";

/**
 * Welch's comparison of the logarithms of raw distances: how sure someone would be who forgets the launch.
 *
 * Shown beside the verdict, never used for it. With one design launched faster it is wrong most of the time, and the more
 * runs there are the surer it is.
 *
 * Source: Welch 1947; Satterthwaite 1946 (from memory).
 *
 * @param candidate the candidate's name
 * @param distances m, baseline and candidate
 * @returns ratio of geometric means with its 95 % interval; `null` below two runs a side or without any scatter
 */
export function compareRawDistances(
  candidate: string,
  distances: { readonly baseline: readonly number[]; readonly candidate: readonly number[] },
): NaiveComparison | null {
  const [baseline, other] = [distances.baseline, distances.candidate].map((values) =>
    values.map(Math.log)
  ) as [number[], number[]];
  if (baseline.length < 2 || other.length < 2) return null;
  if (varianceOf(baseline) + varianceOf(other) === 0) return null;
  const { difference, pValue } = welchComparison({ baseline, candidate: other });
  return {
    candidate,
    ratio: Math.exp(difference.value),
    low: Math.exp(difference.low!),
    high: Math.exp(difference.high!),
    pValue,
  };
}
