/**
 * What is worth knowing about the traces behind a law.
 *
 * @module
 */
import { type Finding, finding } from "../base/finding.ts";
import { fitTraces, type TraceData, type TraceFit } from "../fit/trace-fit.ts";
import { logBestLiftToDrag } from "../fit/tow-estimates.ts";
import { median } from "../check/rule.ts";
import { meanOf } from "../infer/sample.ts";
import type { PreparedTrace } from "./trace-runs.ts";

/** s over which speeds are averaged before one is held against another. */
const PIECE = 0.4;

/** Rise in m/s, and in standard uncertainties of the difference of two pieces, that is no noise. */
const RISE = { speed: 0.12, uncertainties: 4 } as const;

/** m/s by which a trace's launch may miss that of glides.csv, and how many standard uncertainties. */
const LAUNCH = { speed: 0.25, uncertainties: 4 } as const;

/**
 * Findings about one design's traces.
 *
 * @param design its name
 * @param used its traces in the order of the fit's runs
 * @param fit the law
 * @param data what was fitted
 * @returns findings
 */
export function traceFindings(
  design: string,
  used: readonly PreparedTrace[],
  fit: TraceFit,
  data: TraceData,
): Finding[] {
  const found: Finding[] = [];
  // Of the middle run: one that was pumped inflates the noise that all share.
  const noise = median(
    fit.runs.map(({ speeds }, i) =>
      Math.sqrt(meanOf(used[i]!.speeds.map((one, k) => (one - speeds[k]!) ** 2)))
    ),
  )!;
  const pumped = used.map((one) => sped(one, noise, fit.noise.memory));
  used.forEach(({ trace, glide }, i) => {
    const rise = pumped[i]!;
    if (rise !== null) {
      found.push(finding({
        severity: "warning",
        code: "pumped-trace",
        file: trace.file,
        what: `The speed of run ${trace.run} rises again by ${
          rise.toFixed(2)
        } m/s after the launch: pumped or pushed? It is kept in the law.${
          without(fit, data, pumped.map((one) => one !== null))
        }`,
        wanted: "A reason in leave_out of glides.csv, if it was.",
      }));
    }
    const { launchSpeed } = fit.runs[i]!;
    const gap = glide.launchSpeed === null ? 0 : launchSpeed - glide.launchSpeed;
    const u = Math.hypot(glide.own["launch_speed"] ?? 0.08, fit.noise.standardDeviation / 2);
    if (Math.abs(gap) > Math.max(LAUNCH.speed, LAUNCH.uncertainties * u)) {
      found.push(finding({
        severity: "warning",
        code: "trace-and-launch-differ",
        file: trace.file,
        what: `The trace of run ${trace.run} begins at ${
          launchSpeed.toFixed(2)
        } m/s, glides.csv says ${glide.launchSpeed!.toFixed(2)} m/s.`,
        wanted: "A trace that begins when flying has begun, and belongs to this run.",
      }));
    }
  });
  if (used.length === 1) {
    found.push(finding({
      severity: "warning",
      code: "one-trace",
      file: used[0]!.trace.file,
      what: `The traces of ${design} are those of one run: what differs from run to run is ` +
        "assumed, not seen.",
      wanted: "Traces of four or more runs.",
    }));
  }
  return found;
}

/** Largest rise of the mean speed of a piece above an earlier one that noise can't explain; `null` for none. */
function sped(
  { times, speeds }: PreparedTrace,
  noise: number,
  memory: number,
): number | null {
  const pieces: number[][] = [];
  const begin = times[0]!;
  times.forEach((time, i) => {
    const place = Math.floor((time - begin) / PIECE);
    (pieces[place] ??= []).push(speeds[i]!);
  });
  const means = pieces.filter((one) => one !== undefined);
  // Samples of one piece that share their noise count as fewer.
  const u = Math.max(...means.map((one) => {
    const apart = Math.max(1, Math.min(one.length, PIECE / Math.max(1e-9, 2 * memory)));
    return noise * Math.sqrt(2 / Math.min(one.length, apart));
  }));
  let lowest = Infinity, rise = 0;
  for (const piece of means) {
    const mean = meanOf(piece);
    rise = Math.max(rise, mean - lowest);
    lowest = Math.min(lowest, mean);
  }
  return rise > Math.max(RISE.speed, RISE.uncertainties * u) ? rise : null;
}

/** What the best lift-to-drag is with and without the runs that were pumped; empty where there is none to tell. */
function without(fit: TraceFit, data: TraceData, out: readonly boolean[]): string {
  const runs = data.runs.filter((_, i) => !out[i]);
  if (runs.length === 0) return "";
  const other = fitTraces({ ...data, runs });
  const [all, rest] = [logBestLiftToDrag(fit), other.ok ? logBestLiftToDrag(other) : null];
  if (all === null || rest === null) return "";
  const shown = (log: number) => Math.exp(log).toFixed(1);
  return ` Best lift-to-drag is ${shown(all.log)} with all runs, ${
    shown(rest.log)
  } without those that sped up.`;
}
