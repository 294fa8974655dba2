/**
 * The comparison that looks sensible and is not: raw distances as they are.
 *
 * @module
 */
import { sampleVariance } from "../fit/glide-series.ts";
import { studentTQuantile, studentTUpperTail } from "../numeric/distributions.ts";
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
  const [first, second] = [distances.baseline, distances.candidate].map((values) => {
    const logs = values.map(Math.log);
    const mean = logs.reduce((total, value) => total + value, 0) / logs.length;
    const variance = sampleVariance(logs);
    return { n: logs.length, mean, error: variance === null ? null : variance / logs.length };
  });
  if (first!.error === null || second!.error === null) return null;
  const variance = first!.error + second!.error;
  if (!(variance > 0)) return null;
  const freedom = variance ** 2 /
    (first!.error ** 2 / (first!.n - 1) + second!.error ** 2 / (second!.n - 1));
  const difference = second!.mean - first!.mean;
  const half = studentTQuantile(0.975, freedom) * Math.sqrt(variance);
  return {
    candidate,
    ratio: Math.exp(difference),
    low: Math.exp(difference - half),
    high: Math.exp(difference + half),
    pValue: 2 * studentTUpperTail(Math.abs(difference) / Math.sqrt(variance), freedom),
  };
}
