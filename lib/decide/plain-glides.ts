/**
 * A design's plain glides as a tow's drag sees them: at the tow's lift and depth, with the errors that they share.
 *
 * @module
 */
import type { Design, Session } from "../base/session.ts";
import { sharedParts } from "../check/column-uncertainty.ts";
import type { GlideRun } from "../fit/glide-run.ts";
import {
  glideDragEstimate,
  type GlideLevelData,
  glideMeanSpeed,
  glideShapeChange,
  type SharedLevelError,
} from "../fit/glide-level.ts";
import { planformPrior } from "../fit/planform-prior.ts";
import type { TowEstimate } from "../fit/tow-series.ts";
import { meanOf } from "../infer/sample.ts";
import { weightInWater } from "../model/buoyancy.ts";
import { prepareCraft, wetVolumeOf } from "./glide-craft.ts";
import { type PreparedRun, prepareRuns, prepareSession } from "./glide-runs.ts";
import type { TowedDesign } from "./design-tow.ts";
import { isSameWing } from "./same-wing.ts";
import { USUAL_GLIDE_ERRORS as USUAL } from "./trace-errors.ts";
import { instrumentsOf, namedAlike } from "./tow-sessions.ts";
import type { PreparedTow } from "./tow-readings.ts";

/** Drag from plain glides at one speed. */
export interface PlainGlides {
  /** m/s */
  readonly speed: number;
  readonly runs: number;
  readonly estimate: TowEstimate;
  /** Change of ln drag by one standard uncertainty of the induced share, with its sign. */
  readonly shapeChange: number;
}

/** A change of the inputs that all runs share; nothing stands for none. */
interface Off {
  readonly launch?: { readonly share?: number; readonly fixed?: number };
  readonly end?: { readonly share?: number; readonly fixed?: number };
  readonly drop?: { readonly share?: number; readonly fixed?: number };
  /** m of a drop that conditions.csv states for many runs. */
  readonly dropStated?: number;
  readonly distance?: { readonly share?: number; readonly fixed?: number };
  readonly mass?: number;
  readonly volumeShare?: number;
  readonly depth?: number;
  readonly movingShare?: number;
}

/**
 * Drag of a design from all its plain glides of a session.
 *
 * Told at the glides' own mean speed, or at the nearest speed towed. A run with a speed trace counts too: its launch and end
 * were read by themselves.
 *
 * @param session with glides
 * @param towed the design by tow, in its session
 * @param prepared that session
 * @returns drag at the tow's lift and depth; `null` where fewer than two runs tell it, or none at a speed that was towed
 */
export function plainGlides(
  session: Session,
  towed: TowedDesign,
  prepared: PreparedTow,
): PlainGlides | null {
  const { series, range } = towed;
  const spec = session.designs.find((one) => one.design === towed.answer.design);
  if (series === null || range === null || spec === undefined || !isSameWing(session, spec)) {
    return null;
  }
  const own = prepared.session.designs.find((one) => one.design === spec.design);
  if (own === undefined || !isSameWing(session, own)) return null;
  const runs = prepareRuns(prepareSession(session, 0)).filter((one) =>
    one.glide.design === spec.design && one.run?.inLevel
  );
  if (runs.length < 2) return null;
  const { craft } = series.fit.data;
  const depths = prepared.points.flatMap(({ point, reason }) =>
    point.design === own.design && reason === null && point.depth !== null ? [point.depth] : []
  );
  const depth = depths.length === 0 ? null : meanOf(depths);
  const task: Task = { runs, spec: own, tow: prepared, phi: craft.phi, depth };
  const data = dataOf(task, {});
  if (data === null) return null;
  const errors: SharedLevelError[] = [];
  for (const { name, key, off } of sharedOffs(session, task)) {
    const [plus, minus] = [dataOf(task, off(1)), dataOf(task, off(-1))];
    if (plus === null || minus === null) return null;
    errors.push({ name, key, shifted: [plus, minus] });
  }
  const mean = glideMeanSpeed(data);
  if (mean === null) return null;
  const low = Math.min(...data.runs.map((one) => one.endSpeed));
  const high = Math.max(...data.runs.map((one) => one.launchSpeed));
  const speed = Math.min(range.to, Math.max(range.from, mean));
  if (!(speed >= low && speed <= high)) return null;
  const at = { speed, shapeUncertainty: Math.max(...runs.map((one) => one.shapeUncertainty)) };
  const estimate = glideDragEstimate(data, errors, at);
  return estimate === null
    ? null
    : { speed, runs: runs.length, estimate, shapeChange: glideShapeChange(data, at) };
}

interface Task {
  readonly runs: readonly PreparedRun[];
  /** As the tow's session has it: one lift for both. */
  readonly spec: Design;
  readonly tow: PreparedTow;
  /** Of the tow's depth. */
  readonly phi: (speed: number) => number;
  /** m, of the tow; `null` where nobody measured it. */
  readonly depth: number | null;
}

const taken = (value: number, off: Off["launch"]) =>
  value * (1 - (off?.share ?? 0)) - (off?.fixed ?? 0);

function dataOf({ runs, spec, tow, phi, depth }: Task, off: Off): GlideLevelData | null {
  const wetVolume = wetVolumeOf(spec) * (1 - (off.volumeShare ?? 0));
  const design = { ...spec, wetVolume };
  const flown = runs.map((one): GlideRun | null => {
    const mass = one.mass! - (off.mass ?? 0);
    const medium = one.prepared.media.get(one.glide.block)!;
    const under = one.depth === null ? null : Math.max(0.02, one.depth - (off.depth ?? 0));
    const ready = prepareCraft(design, { mass, depth: under, medium });
    if (ready === null) return null;
    const { craft } = ready;
    const moving = craft.inertia * craft.weight / medium.gravity - mass;
    const run = one.run!;
    return {
      ...run,
      launchSpeed: taken(run.launchSpeed, off.launch),
      endSpeed: taken(run.endSpeed, off.end),
      drop: taken(run.drop, off.drop) - (one.glide.drop === null ? off.dropStated ?? 0 : 0),
      distance: taken(run.distance, off.distance),
      craft: {
        ...craft,
        inertia: (mass + moving * (1 - (off.movingShare ?? 0))) * medium.gravity / craft.weight,
      },
    };
  });
  const whole = flown.filter((one) => one !== null);
  if (whole.length < flown.length || !whole.every((one) => one.distance > 0 && one.endSpeed > 0)) {
    return null;
  }
  const mass = tow.referenceMass! - (off.mass ?? 0);
  const lift = weightInWater({ mass, wetVolume, ...tow.medium });
  if (!(lift > 0)) return null;
  const { law } = planformPrior(spec, { lift, density: tow.medium.density, depth });
  return {
    runs: whole,
    told: { ...law, phi },
    gravity: meanOf(runs.map((one) => one.prepared.media.get(one.glide.block)!.gravity)),
  };
}

interface NamedOff {
  readonly name: string;
  readonly key: string | null;
  readonly off: (sign: 1 | -1) => Off;
}

/** The errors that all runs of a session share; usual ones where a kind is not stated. */
function sharedOffs(session: Session, { runs, spec, tow }: Task): NamedOff[] {
  const { columns } = runs[0]!.prepared;
  const usual = { fixed: USUAL.speedZero, share: USUAL.speedScale };
  const launch = sharedParts(columns.launch_speed, usual);
  const end = sharedParts(columns.end_speed, usual);
  const none = { fixed: 0, share: 0 };
  const drop = sharedParts(columns.drop, none), distance = sharedParts(columns.distance, none);
  const { carried_mass: mass } = columns;
  const weighed = sharedParts(mass, none);
  const massFixed = Math.hypot(
    mass.fixed,
    weighed.fixed,
    (mass.share + weighed.share) * tow.referenceMass!,
  );
  const volume = spec.wetVolume === null ? USUAL.volumeEstimated : USUAL.volumeDunked;
  const stated = session.conditions.find((one) => one.quantity === "drop");
  const one = (name: string, key: string | null, off: NamedOff["off"]): NamedOff => ({
    name,
    key,
    off,
  });
  const [first, last] = ["launch_speed", "end_speed"].map((name) => instrumentsOf(session, name));
  // Two speeds by one instrument have one error; nobody's word on either counts as one camera.
  const together = first!.length + last!.length === 0 || namedAlike(first!, last!);
  const speeds = together
    ? [
      one("speed scale", "speed scale", (sign) => ({
        launch: { share: sign * launch.share },
        end: { share: sign * end.share },
      })),
      one("speed zero", "speed zero", (sign) => ({
        launch: { fixed: sign * launch.fixed },
        end: { fixed: sign * end.fixed },
      })),
    ]
    : [
      one("launch speed scale", null, (sign) => ({ launch: { share: sign * launch.share } })),
      one("launch speed zero", null, (sign) => ({ launch: { fixed: sign * launch.fixed } })),
      one("end speed scale", null, (sign) => ({ end: { share: sign * end.share } })),
      one("end speed zero", null, (sign) => ({ end: { fixed: sign * end.fixed } })),
    ];
  return [
    ...speeds,
    one("drop scale", null, (sign) => ({ drop: { share: sign * drop.share } })),
    one("drop zero", null, (sign) => ({ drop: { fixed: sign * drop.fixed } })),
    ...(stated === undefined ? [] : [
      one("drop of conditions.csv", null, (sign) => ({
        dropStated: sign * (stated.uncertainty ?? columns.drop.fixed),
      })),
    ]),
    one("distance scale", null, (sign) => ({ distance: { share: sign * distance.share } })),
    one("distance zero", null, (sign) => ({ distance: { fixed: sign * distance.fixed } })),
    one("carried mass", "carried mass", (sign) => ({ mass: sign * massFixed })),
    one("water that moves along", null, (sign) => ({ movingShare: sign * USUAL.movingWater })),
    one("wet volume", null, (sign) => ({ volumeShare: sign * volume })),
    one("depth", null, (sign) => ({ depth: sign * USUAL.depth })),
  ];
}
