/**
 * Towed readings of a design as the fit takes them, and what happens to them under each error that they share.
 *
 * @module
 */
import type { Result } from "../base/quantity.ts";
import type { Design } from "../base/session.ts";
import { sharedParts } from "../check/column-uncertainty.ts";
import { type Planform, type PlanformPrior, planformPrior } from "../fit/planform-prior.ts";
import type { TowData, TowReading } from "../fit/tow-data.ts";
import type { KnownBy, SharedError } from "../fit/tow-series.ts";
import { meanOf } from "../infer/sample.ts";
import { weightInWater } from "../model/buoyancy.ts";
import { effectiveMass } from "../model/effective-mass.ts";
import { phiOf, USUAL_THICKNESS_RATIO, wetVolumeOf } from "./glide-craft.ts";
import { currentOffs } from "./tow-current-offs.ts";
import { type Off, readingOff } from "./tow-off.ts";
import type { PreparedPoint, PreparedTow } from "./tow-readings.ts";

/** Standard uncertainties of shared errors where nobody states them. Common practice, no source. */
const USUAL = {
  cellScale: 0.01,
  cellZero: 0.3,
  speedScale: 0.01,
  speedZero: 0.02,
  angle: 0.3 * Math.PI / 180,
  volumeDunked: 0.1,
  volumeEstimated: 0.3,
  depth: 0.02,
  /** N, of the zero's own reading. */
  zeroReading: 0.1,
} as const;

/** Half width over standard uncertainty of a rectangle as wide as a difference. */
const RECTANGLE = Math.sqrt(12);

/** A design's readings with the errors that they share. */
export interface PreparedDesignTow {
  readonly data: TowData;
  readonly errors: readonly SharedError[];
  readonly prior: PlanformPrior;
  /** True where the depth was measured. */
  readonly depthKnown: boolean;
}

/**
 * A design's readings for the fit.
 *
 * @param prepared the session
 * @param spec the design
 * @param points its readings, those without a reason against them
 * @returns data and shared errors, or why there are none
 */
export function prepareDesignTow(
  prepared: PreparedTow,
  spec: Design,
  points: readonly PreparedPoint[],
): Result<PreparedDesignTow> {
  const here = dataOf(prepared, spec, points, {});
  if (here === null) return { ok: false, reason: "the craft floats what it carries" };
  const errors: SharedError[] = [];
  for (const { name, own, off, knownBy } of sharedOffs(prepared, spec)) {
    const plus = dataOf(prepared, spec, points, off(1));
    const minus = dataOf(prepared, spec, points, off(-1));
    if (plus === null || minus === null) {
      return { ok: false, reason: `the doubt about ${name} is as large as a reading` };
    }
    errors.push({
      name,
      key: own ? null : name,
      shifted: [plus.data, minus.data],
      ...(knownBy === undefined ? {} : { knownBy }),
    });
  }
  return { ok: true, ...here, errors };
}

/** A shared error by name, with what it does at plus and at minus one standard uncertainty. */
export interface NamedOff {
  readonly name: string;
  readonly own: boolean;
  readonly off: (sign: 1 | -1) => Off;
  readonly knownBy?: KnownBy;
}

/**
 * The errors that all readings of a session share.
 *
 * @param prepared the session
 * @param spec a design, whose volume and depth are its own
 * @returns one entry an error, in the order of `prepareDesignTow`
 */
export function sharedOffs(prepared: PreparedTow, spec: Design): NamedOff[] {
  const { columns, calibration, referenceMass } = prepared;
  const { line } = calibration;
  const followed = (calibration.zero?.stretches.length ?? 0) > 0;
  const zeroFixed = followed ? USUAL.zeroReading : USUAL.cellZero;
  const cell = sharedParts(columns.line_tension, { fixed: zeroFixed, share: USUAL.cellScale });
  const speed = sharedParts(columns.speed, {
    fixed: USUAL.speedZero,
    share: USUAL.speedScale,
  });
  const angle = sharedParts(columns.line_angle, { fixed: USUAL.angle, share: 0 });
  const { carried_mass: mass } = columns;
  const weighed = sharedParts(mass, { fixed: 0, share: 0 });
  const massFixed = Math.hypot(
    mass.fixed,
    weighed.fixed,
    (mass.share + weighed.share) * referenceMass!,
  );
  const volume = spec.wetVolume === null ? USUAL.volumeEstimated : USUAL.volumeDunked;
  const depth = sharedParts(columns.depth, { fixed: USUAL.depth, share: 0 });
  const shared = (
    name: string,
    off: (sign: 1 | -1) => Off,
    knownBy?: KnownBy,
  ): NamedOff => ({ name, own: false, off, ...(knownBy === undefined ? {} : { knownBy }) });
  const { change } = calibration;
  const knownBy = line === null ? undefined : {
    origin: `known loads of ${prepared.session.name}`,
    degreesOfFreedom: line.degreesOfFreedom,
  };
  const readings = [...prepared.points, ...prepared.tares];
  const drifts = (calibration.zero?.stretches ?? []).flatMap(({ standardUncertainty }, stretch) =>
    standardUncertainty > 0 && readings.some((one) => one.zeroStretch === stretch)
      ? [{ stretch, standardUncertainty }]
      : []
  );
  return [
    ...(line === null
      ? [
        shared("load cell scale", (sign) => ({ tensionShare: sign * cell.share })),
        shared("load cell zero", (sign) => ({ tensionFixed: sign * cell.fixed })),
      ]
      : [
        shared("load cell offset by its calibration", (sign) => ({
          tensionFixed: sign * line.offsetUncertainty,
        }), knownBy),
        shared("load cell slope by its calibration", (sign) => ({
          tensionSlope: sign * line.slopeUncertainty / line.slope,
        }), knownBy),
        ...(change === null ? [] : [
          shared("load cell change over the session", (sign) => ({
            tensionFixed: sign * change.atCentre / RECTANGLE,
            tensionSlope: sign * change.slope / line.slope / RECTANGLE,
          })),
        ]),
        shared("known loads", (sign) => ({ tensionShare: sign * line.appliedShare })),
      ]),
    ...drifts.map(({ stretch, standardUncertainty }) =>
      shared(
        drifts.length === 1 ? "load cell zero drift" : `load cell zero drift ${stretch + 1}`,
        (sign) => ({
          zero: { stretch, newtons: sign * standardUncertainty * (line?.slope ?? 1) },
        }),
      )
    ),
    shared("speed scale", (sign) => ({ speedShare: sign * speed.share })),
    shared("speed zero", (sign) => ({ speedFixed: sign * speed.fixed })),
    ...currentOffs(prepared.currents, readings).map(({ name, off, knownBy }) =>
      shared(name, off, knownBy)
    ),
    shared("line angle", (sign) => ({ angle: sign * angle.fixed })),
    shared("carried mass", (sign) => ({ mass: sign * massFixed })),
    { name: "wet volume", own: true, off: (sign) => ({ volumeShare: sign * volume }) },
    { name: "depth", own: true, off: (sign) => ({ depth: sign * depth.fixed }) },
  ];
}

function dataOf(
  prepared: PreparedTow,
  spec: Design,
  points: readonly PreparedPoint[],
  off: Off,
): Omit<PreparedDesignTow, "errors"> | null {
  const { medium: { density, gravity } } = prepared;
  const wetVolume = wetVolumeOf(spec) * (1 - (off.volumeShare ?? 0));
  const weightOf = (whole: number) => {
    const mass = whole - (off.mass ?? 0);
    return mass > 0 ? weightInWater({ mass, wetVolume, density, gravity }) : 0;
  };
  const reference = prepared.referenceMass!;
  if (!(points.every((one) => weightOf(one.mass) > 0) && weightOf(reference) > 0)) return null;
  const depths = points.flatMap((one) => one.depth === null ? [] : [one.depth]);
  const depthKnown = depths.length > 0;
  const depth = depthKnown ? Math.max(0.02, meanOf(depths) - (off.depth ?? 0)) : null;
  const lift = weightOf(reference);
  const prior = planformPrior(spec as Planform, { lift, density, depth });
  const readings = points.map((one): TowReading => {
    const moving = effectiveMass({
      mass: one.mass,
      density,
      span: spec.span,
      area: spec.area,
      thicknessRatio: spec.thicknessRatio ?? USUAL_THICKNESS_RATIO,
    });
    const reading = readingOff(prepared, one, off);
    const { tension } = reading.uncertainty;
    // What is open about the drift of the window is open about the pull that sped the craft up.
    const drift = moving * (one.point.own.speed_change ?? 0) / Math.cos(one.angle);
    return {
      ...reading,
      uncertainty: {
        ...reading.uncertainty,
        tension: { ...tension, fixed: Math.hypot(tension.fixed, drift) },
      },
      weight: weightOf(one.mass),
      inertia: moving * (one.point.speedChange ?? 0),
      group: one.group,
      block: one.sweep,
    };
  });
  if (!readings.every((one) => one.speed > 0 && one.tension > 0)) return null;
  return {
    data: {
      readings,
      craft: {
        lift,
        phi: phiOf(spec.span, prior.depth, gravity),
        expected: prior.towed,
      },
    },
    prior,
    depthKnown,
  };
}
