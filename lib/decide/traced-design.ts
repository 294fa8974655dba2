/**
 * One design's drag law from the speed traces of its glides, and what follows from it.
 *
 * @module
 */
import { type Finding, finding } from "../base/finding.ts";
import type { Quantity } from "../base/quantity.ts";
import type { Design } from "../base/session.ts";
import type { TowFromTraces, TraceUse } from "../base/tow-traces.ts";
import { type SpeedRange, towedBestSpeed, towedRange } from "../fit/tow-curve.ts";
import type { TowEstimate } from "../fit/tow-series.ts";
import { logBestLiftToDrag, logBestSpeed, logDrag, logLiftToDrag } from "../fit/tow-estimates.ts";
import { singleVariance } from "../fit/tow-variance.ts";
import {
  fitTraceSeries,
  HEIGHT_SPENT,
  traceEstimate,
  type TraceSeries,
} from "../fit/trace-series.ts";
import { prepareDesignTraces } from "./trace-errors.ts";
import { traceFindings } from "./trace-findings.ts";
import type { PreparedTrace, PreparedTraces } from "./trace-runs.ts";
import { lawOf, sharesOf } from "./tow-law.ts";
import { edgeQuantity, type Side, speedQuantity, sureSide, towQuantity } from "./tow-quantity.ts";

/** A design's traces with everything behind their numbers. */
export interface TracedDesign {
  readonly design: string;
  /** `null` where its traces carry no law. */
  readonly answer: TowFromTraces | null;
  readonly series: TraceSeries | null;
  readonly range: SpeedRange | null;
  /** Best lift-to-drag where its speed was glided through, else `null`. */
  readonly best: TowEstimate | null;
  readonly traces: readonly PreparedTrace[];
  readonly findings: readonly Finding[];
}

/** Share of the variance from which a source is worth a word. */
const LARGE = 0.4;

/** Where the own part of a doubt comes from, in the order of `sharesOf`. */
const OWN = ["noise of the samples", "planform", "runs"] as const;

/**
 * One design's law from its traces.
 *
 * @param prepared its session's traces
 * @param spec the design
 * @param referenceMass kg that drag is told at; the mean of the runs' where `null`
 * @returns answer, fit and findings; `null` where it has no trace
 */
export function tracedDesign(
  prepared: PreparedTraces,
  spec: Design,
  referenceMass: number | null,
): TracedDesign | null {
  const traces = prepared.traces.filter((one) => one.glide.design === spec.design);
  if (traces.length === 0) return null;
  const used = traces.filter((one) => one.reason === null);
  const findings: Finding[] = [];
  const out = traces.filter((one) => one.reason !== null);
  if (out.length > 0) {
    findings.push(finding({
      severity: "note",
      code: "traces-left-out",
      file: out[0]!.trace.file,
      count: out.length,
      what: `${out.length === 1 ? "One trace" : `${out.length} traces`} of ${spec.design} ${
        out.length === 1 ? "was" : "were"
      } left out: ${out.map((one) => `${one.trace.run} (${one.reason})`).join(", ")}.`,
    }));
  }
  const none = (why: string): TracedDesign => ({
    design: spec.design,
    answer: null,
    series: null,
    range: null,
    best: null,
    traces,
    findings: [
      ...findings,
      finding({
        severity: "warning",
        code: "no-trace-law",
        file: traces[0]!.trace.file,
        what: `No drag law from the traces of ${spec.design}: ${why}.`,
        wanted: "Speeds of several glides from launch to end, with drop and distance of each.",
      }),
    ],
  });
  if (used.length === 0) return none("none of them can be used");
  const mass = referenceMass ?? used.reduce((sum, one) => sum + one.mass, 0) / used.length;
  const ready = prepareDesignTraces(prepared, spec, used, mass);
  if (!ready.ok) return none(ready.reason);
  const series = fitTraceSeries(ready.data, ready.errors);
  if (!series.ok) return none(series.reason);
  const { fit } = series;
  const range = towedRange(fit);
  const bestSpeed = towedBestSpeed(fit);
  const best = traceEstimate(series, logBestLiftToDrag);
  const speedLog = traceEstimate(series, logBestSpeed);
  const where = speedLog === null ? undefined : sureSide(speedLog, range);
  const inside = bestSpeed !== null && bestSpeed.speed >= range.from && bestSpeed.speed <= range.to;
  const middle = Math.sqrt(range.from * range.to);
  const at = (speed: number) => traceEstimate(series, (one) => logDrag(one, speed));
  const shares = sharesOf(where === null && best !== null ? best : at(middle), OWN);
  findings.push(...traceFindings(spec.design, used, fit, ready.data));
  const height = shares.find((one) => one.source === HEIGHT_SPENT);
  if (height !== undefined && height.share > LARGE) {
    findings.push(finding({
      severity: "note",
      code: "height-spent-unknown",
      file: used[0]!.trace.file,
      what:
        `${
          (100 * height.share).toFixed(0)
        } % of the doubt about the glides of ${spec.design} is where in the run its height was spent: ` +
        "sinking late looks like little drag when slow.",
      wanted: "Glides held level, or let sink evenly from launch to end.",
    }));
  }
  return {
    design: spec.design,
    answer: {
      session: prepared.session.name,
      law: lawOf({ medium: { density: ready.density } }, spec, { ready, series, range }),
      bestLiftToDrag: bestQuantity(series, best, where, range),
      speedOfBestLiftToDrag: speedLog === null ? null : speedQuantity(speedLog, range),
      dragAt: [range.from, middle, range.to].flatMap((speed) => {
        const estimate = at(speed);
        return estimate === null
          ? []
          : [{ speed, drag: towQuantity(singleVariance(estimate), "N") }];
      }),
      traces: traces.map((one) => traceUse(one, used.indexOf(one), series)),
      noise: fit.noise.standardDeviation,
      noiseMemory: fit.noise.memory,
      uncertaintyShares: shares,
    },
    series,
    range,
    best: inside ? best : null,
    traces,
    findings,
  };
}

function bestQuantity(
  series: TraceSeries,
  best: TowEstimate | null,
  where: Side | undefined,
  range: SpeedRange,
): Quantity | null {
  if (best === null || where === undefined) return null;
  if (where === null) return towQuantity(singleVariance(best), "1");
  const speed = where === "below" ? range.from : range.to;
  const edge = traceEstimate(series, (one) => logLiftToDrag(one, speed));
  return edge === null ? null : edgeQuantity(edge);
}

function traceUse({ trace, reason }: PreparedTrace, place: number, series: TraceSeries): TraceUse {
  const run = series.fit.runs[place];
  return {
    run: trace.run,
    file: trace.file,
    used: reason === null,
    reason,
    samples: trace.times.length,
    launchSpeed: run?.launchSpeed ?? null,
    offset: run?.offset ?? null,
  };
}
