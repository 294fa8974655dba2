/**
 * One towed design: its law where the readings carry one, and what follows from it.
 *
 * @module
 */
import type { Finding } from "../base/finding.ts";
import type { Design } from "../base/session.ts";
import type { DesignTow } from "../base/tow-answer.ts";
import { type SpeedRange, towedBestSpeed, towedRange } from "../fit/tow-curve.ts";
import { bestLiftToDragEstimate, bestSpeedEstimate, dragEstimate } from "../fit/tow-estimates.ts";
import { fitTowSeries, type TowEstimate, type TowSeries } from "../fit/tow-series.ts";
import { singleVariance } from "../fit/tow-variance.ts";
import { meanOf } from "../infer/sample.ts";
import { dragAsTowed } from "./drag-as-towed.ts";
import { type DragSplit, dragSplit } from "./drag-split.ts";
import { towByDrawing } from "./tow-by-drawing.ts";
import { type LiftCurveFacts, towLiftCurve } from "./tow-lift-curve.ts";
import { lawOf, sharesOf } from "./tow-law.ts";
import { lawFindings } from "./tow-findings.ts";
import { type PreparedDesignTow, prepareDesignTow } from "./tow-errors.ts";
import { oddPoints } from "./tow-odd-points.ts";
import { towParts } from "./tow-parts.ts";
import { towPoint } from "./tow-point.ts";
import {
  bestLiftToDragQuantity,
  leastPowerQuantity,
  type Side,
  speedQuantity,
  sureSide,
  towQuantity,
} from "./tow-quantity.ts";
import type { PreparedPoint, PreparedTow } from "./tow-readings.ts";
import { noLaw, notFlight, reasonsOf, tooFew } from "./tow-refusals.ts";
import { robustTow } from "./tow-robust.ts";
import { termRatios, unitSlip } from "./tow-units.ts";

/** A towed design with everything behind its numbers. */
export interface TowedDesign {
  readonly answer: DesignTow;
  /** What its entry is called: the design's name, with the session where another entry has the same design. */
  readonly name: string;
  readonly place: number;
  /** `null` where the readings carry no law. */
  readonly series: TowSeries | null;
  readonly range: SpeedRange | null;
  /** `null` where there is no law or no best. */
  readonly best: TowedBest | null;
  /** Lift against pitch; `null` where the readings can't be used. */
  readonly liftCurve: LiftCurveFacts | null;
  /** Drag by parts at any speed; `null` where there is no law. */
  readonly split: DragSplit | null;
  readonly findings: readonly Finding[];
}

/** The best of a law. */
export interface TowedBest {
  readonly estimate: TowEstimate;
  /** Where its speed surely lies; `null` where it may have been towed. */
  readonly where: Side;
  /** Whether the speed itself, without its interval, lies among the speeds towed. */
  readonly towed: boolean;
}

/** Lift over drag of a craft in steady flight, and largest lift coefficient. Simulated: 5.4 to 33, up to 1.02. */
const FLIGHT = { low: 3, high: 45, liftCoefficient: 1.3 } as const;

/**
 * One design's answer.
 *
 * @param prepared its session
 * @param spec the design
 * @param place in designs.csv, from 1
 * @param points its readings, refused ones included
 * @param options `faulty`: the tables hold errors, so no law is fitted; `draws`: how often to draw the inputs as well;
 *   `robust`: the robust view beside
 * @returns answer, fit and findings
 */
export function towedDesign(
  prepared: PreparedTow,
  { spec, place, points }: {
    readonly spec: Design;
    readonly place: number;
    readonly points: readonly PreparedPoint[];
  },
  { faulty, draws, robust = false }: {
    readonly faulty: boolean;
    readonly draws?: number;
    readonly robust?: boolean;
  },
): TowedDesign {
  const findings: Finding[] = [];
  const used = points.filter((one) => one.reason === null);
  const impossible = points.filter((one) => one.impossible);
  findings.push(...impossible.map((one) => notFlight(one, one.reason!)));
  const none = (ready: PreparedDesignTow | null): TowedDesign => {
    const flown = ready !== null &&
      findings.every((one) => one.severity !== "error" || one.code === "no-law");
    const liftCurve = flown ? towLiftCurve(prepared, spec, used, ready) : null;
    findings.push(...liftCurve?.findings ?? []);
    return {
      answer: {
        design: spec.design,
        session: prepared.session.name,
        law: null,
        bestLiftToDrag: null,
        speedOfBestLiftToDrag: null,
        leastPowerSpeed: null,
        dragAt: flown ? dragAsTowed(ready) : [],
        parts: [],
        wingLiftToDrag: [],
        points: points.map((one) => towPoint(prepared, spec, one, null)),
        uncertaintyShares: [],
        liftCurve: liftCurve?.answer ?? null,
        fromTraces: null,
        robust: null,
        byDrawing: null,
      },
      name: spec.design,
      place,
      series: null,
      range: null,
      best: null,
      liftCurve,
      split: null,
      findings,
    };
  };
  if (faulty) return none(null);
  if (used.length === 0 || prepared.referenceMass === null) {
    findings.push(noLaw(spec.design, `none of its readings can be used: ${reasonsOf(points)}`));
    return none(null);
  }
  const ready = prepareDesignTow(prepared, spec, used);
  if (!ready.ok) {
    findings.push(noLaw(spec.design, ready.reason));
    return none(null);
  }
  const few = tooFew(used);
  if (few === null) {
    const ratios = termRatios(ready.data, ready.prior);
    const slip = ratios === null ? null : unitSlip(spec.design, ratios);
    if (slip !== null) {
      findings.push(slip);
      return none(ready);
    }
  }
  used.forEach((one) => {
    const { liftCoefficient, dragCoefficient } = towPoint(prepared, spec, one, null);
    const ratio = liftCoefficient! / dragCoefficient!;
    const flies = ratio >= FLIGHT.low && ratio <= FLIGHT.high &&
      liftCoefficient! <= FLIGHT.liftCoefficient;
    if (flies) return;
    findings.push(notFlight(
      one,
      `lift over drag ${ratio.toPrecision(2)}, lift coefficient ${liftCoefficient!.toPrecision(2)}`,
    ));
  });
  if (few !== null) findings.push(noLaw(spec.design, few));
  if (findings.some((one) => one.severity === "error")) return none(ready);

  const fitted = fitTowSeries(ready.data, ready.errors);
  if (!fitted.ok) {
    findings.push(noLaw(spec.design, fitted.reason));
    return none(ready);
  }
  const range = towedRange(fitted.fit);
  const bestSpeed = towedBestSpeed(fitted.fit);
  const best = bestLiftToDragEstimate(fitted);
  const bestSpeedLog = bestSpeedEstimate(fitted);
  const found: TowedBest | null = bestSpeed === null || best === null || bestSpeedLog === null
    ? null
    : {
      estimate: best,
      where: sureSide(bestSpeedLog, range),
      towed: bestSpeed.speed >= range.from && bestSpeed.speed <= range.to,
    };
  const middle = dragEstimate(fitted, Math.sqrt(range.from * range.to));
  const shares = sharesOf(found !== null && found.where === null ? found.estimate : middle);
  const liftCurve = towLiftCurve(prepared, spec, used, ready);
  const split = dragSplit(prepared, spec, { used, ready, series: fitted });
  const parts = towParts(split, range, found?.towed ? bestSpeed!.speed : null);
  const byDrawing = draws === undefined || found?.where !== null
    ? null
    : towByDrawing(spec.design, fitted, ready, draws);
  const held = robust ? robustTow(spec.design, used, ready) : null;
  const answer: DesignTow = {
    design: spec.design,
    session: prepared.session.name,
    law: lawOf(prepared, spec, { ready, series: fitted, range }),
    bestLiftToDrag: found === null
      ? null
      : bestLiftToDragQuantity(fitted, found.estimate, found.where, range),
    speedOfBestLiftToDrag: bestSpeedLog === null ? null : speedQuantity(bestSpeedLog, range),
    leastPowerSpeed: leastPowerQuantity(fitted, range),
    dragAt: speedsTowed(used).flatMap((speed) => {
      const estimate = dragEstimate(fitted, speed);
      return estimate === null ? [] : [{ speed, drag: towQuantity(singleVariance(estimate), "N") }];
    }),
    parts: parts.parts,
    wingLiftToDrag: parts.wingLiftToDrag,
    points: points.map((one) => {
      const at = used.indexOf(one);
      return towPoint(prepared, spec, one, at < 0 ? null : fitted.fit.residuals[at]!);
    }),
    uncertaintyShares: shares,
    liftCurve: liftCurve.answer,
    fromTraces: null,
    robust: held?.answer ?? null,
    byDrawing: byDrawing?.answer ?? null,
  };
  findings.push(
    ...lawFindings({ answer, ready, series: fitted, range, best: found }),
  );
  findings.push(...parts.findings);
  findings.push(...oddPoints(spec.design, used, fitted.fit), ...liftCurve.findings);
  findings.push(...held?.findings ?? [], ...byDrawing?.findings ?? []);
  const name = spec.design;
  return { answer, name, place, series: fitted, range, best: found, liftCurve, split, findings };
}

/** Means of the readings of each set speed, slowest first. */
function speedsTowed(points: readonly PreparedPoint[]): number[] {
  const groups = new Map<string, number[]>();
  for (const { group, speed } of points) groups.set(group, [...(groups.get(group) ?? []), speed]);
  return [...groups.values()].map(meanOf).sort((a, b) => a - b);
}
