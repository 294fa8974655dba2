/**
 * Sessions that never were: glides of known foils by the equation of motion, read with noise.
 *
 * @module
 */
import type { GlidingCraft } from "../../fit/gliding-craft.ts";
import type { GlideRun, GlideTarget } from "../../fit/glide-run.ts";
import { phiTable } from "../../fit/phi-table.ts";
import { planformPrior } from "../../fit/planform-prior.ts";
import type { SeededRandom } from "../../numeric/random.ts";
import { drawFoil, drawRider, type InventedFoil, WATER } from "./foil-world.ts";
import { glidePath, sharedPath } from "./glide-path.ts";
import { blockOf, type SessionKind } from "./session-kind.ts";
import { drawShared, type SharedErrors, withShared } from "./shared-errors.ts";

/** One design's side of a session, as the verdict sees it. */
export interface InventedSide {
  readonly runs: readonly GlideRun[];
  readonly reference: GlidingCraft;
  readonly target: GlideTarget;
  readonly distances: readonly number[];
  readonly blocks: readonly string[];
}

/** A whole session with its truth. */
export interface InventedSession {
  readonly baseline: InventedSide;
  readonly candidate: InventedSide;
  /** ln of the true ratio of distances from the common launch. */
  readonly logRatio: number;
}

/** Standard deviation of the noise, and what the verdict is told. */
const NOISE = { speed: 0.08, drop: 0.02, tape: 0.15, tapeShare: 0.012, depth: 0.03 } as const;

/** Standard deviation of ln drag from block to block. */
const BLOCK_SCATTER = 0.05;

const between = (random: SeededRandom, low: number, high: number) =>
  low + (high - low) * random.uniform();

interface Flying {
  readonly launch: number;
  readonly scatter: number;
  readonly meanDrop: number;
  /** Whether riders keep a constant slope instead of a constant share of drag. */
  readonly slope: boolean;
  /** ln of each block's share of drag. */
  readonly days: readonly number[];
  readonly side: 0 | 1;
  /** Shared errors of this session; `null` for none. */
  readonly errors: SharedErrors | null;
}

interface DrawnSide extends Omit<InventedSide, "target"> {
  readonly shapeUncertainty: number;
  readonly drops: readonly number[];
  readonly launches: readonly number[];
}

function drawSide(
  foil: InventedFoil,
  flying: Flying,
  kind: SessionKind,
  random: SeededRandom,
): DrawnSide {
  const measuredDepth = Math.max(0.15, foil.depth + NOISE.depth * random.normal());
  const prior = planformPrior(foil.planform, {
    lift: foil.weight,
    density: WATER.density,
    depth: kind.depthKnown ? measuredDepth : null,
  });
  const craft: GlidingCraft = {
    weight: foil.weight,
    inertia: foil.inertia,
    ...prior.law,
    phi: phiTable({ span: foil.planform.span, depth: prior.depth }, WATER.gravity),
  };
  const runs: GlideRun[] = [];
  const distances: number[] = [], drops: number[] = [], launches: number[] = [];
  const blocks: string[] = [];
  const count = flying.side === 1 ? kind.candidateRuns ?? kind.runs : kind.runs;
  for (let i = 0; i < count; i++) {
    const v0 = Math.max(foil.stallSpeed + 0.25, flying.launch + 0.25 * random.normal());
    const early = kind.ends === "some early" && i > 0 && random.uniform() < 1 / 3;
    const touched = kind.ends === "all touched";
    const above = early
      ? between(random, 0.1, 0.5)
      : touched
      ? 0.15 + 0.35 * (v0 - foil.stallSpeed - 0.5)
      : 0;
    const v1 = Math.min(v0 - 0.1, foil.stallSpeed * (1 + 0.015 * random.normal()) + above);
    const block = blockOf(kind.blocks, flying.side, i, count);
    const factor = Math.exp(flying.scatter * random.normal() + flying.days[block]!);
    let drop = Math.max(0.03, flying.meanDrop + 0.04 * random.normal());
    let distance = sharedPath(foil, v0, v1, drop, factor);
    if (flying.slope) {
      const pull = foil.weight * drop / distance;
      distance = glidePath(foil, v0, v1, factor, pull);
      drop = pull / foil.weight * distance;
    }
    if (kind.pumped && random.uniform() < 0.05) distance *= between(random, 1.2, 1.6);
    const plain = {
      launchSpeed: v0 + NOISE.speed * random.normal(),
      endSpeed: v1 + NOISE.speed * random.normal(),
      drop: drop + NOISE.drop * random.normal(),
      distance: Math.max(
        0.2,
        distance * (1 + NOISE.tapeShare * random.normal()) + NOISE.tape * random.normal(),
      ),
    };
    const read = flying.errors === null ? plain : withShared(plain, flying.errors);
    blocks.push(String(block));
    distances.push(read.distance);
    drops.push(read.drop);
    launches.push(read.launchSpeed);
    runs.push({
      ...read,
      inLevel: true,
      inEnd: !early && !touched,
      craft,
      uncertainty: {
        launchSpeed: NOISE.speed,
        endSpeed: NOISE.speed,
        drop: NOISE.drop,
        distance: Math.hypot(NOISE.tape, NOISE.tapeShare * read.distance),
      },
    });
  }
  return {
    runs,
    reference: craft,
    shapeUncertainty: prior.inducedUncertainty,
    distances,
    blocks,
    drops,
    launches,
  };
}

const mean = (values: readonly number[]) =>
  values.reduce((total, value) => total + value, 0) / values.length;

/** Runs that tell the design's own end speed. */
function stalledRuns(side: DrawnSide): number {
  return side.runs.filter((one) => one.inEnd).length;
}

/**
 * Draws a session.
 *
 * Launches lie 0.5 to 1.6 m/s above the stall and differ by up to 1.2 m/s between the designs, 0.25 m/s from run to run;
 * drag scatters by 3 to 8 % from run to run, end speeds by 1.5 %. Sessions whose common launch leaves no glide are drawn
 * again, as the verdict would refuse them.
 *
 * @param kind world, runs a side, two foils or one
 * @param random stream
 * @returns what the verdict sees, and the truth
 */
export function drawSession(kind: SessionKind, random: SeededRandom): InventedSession {
  for (;;) {
    const rider = drawRider(random);
    const first = drawFoil(kind.world, rider, random);
    const second = kind.foils === "pair" ? drawFoil(kind.world, rider, random) : first;
    const launch = first.stallSpeed + between(random, 0.5, 1.6);
    const other = launch + between(random, -1.2, 1.2);
    if (other < second.stallSpeed + 0.5 || other > second.stallSpeed + 2.2) continue;
    const habits = {
      scatter: between(random, 0.03, 0.08),
      meanDrop: between(random, 0.1, 0.3),
      slope: random.uniform() < 0.5,
      days: [0, 1, 2, 3].map(() => kind.blocks === undefined ? 0 : BLOCK_SCATTER * random.normal()),
      errors: kind.shared ? drawShared(random) : null,
    };
    const baseline = drawSide(first, { ...habits, launch, side: 0 }, kind, random);
    const candidate = drawSide(second, { ...habits, launch: other, side: 1 }, kind, random);
    const speed = Math.round((mean(baseline.launches) + mean(candidate.launches)) / 2 * 10) / 10;
    const drop = Math.round(mean([...baseline.drops, ...candidate.drops]) * 100) / 100;
    if (speed < Math.max(first.stallSpeed, second.stallSpeed) + 0.3 || !(drop > 0)) continue;
    const ends = [baseline, candidate].map((side) => mean(side.runs.map((one) => one.endSpeed)));
    const end = kind.ends === "all touched" ? Math.min(Math.max(...ends), speed - 0.2) : null;
    if (end === null && Math.min(stalledRuns(baseline), stalledRuns(candidate)) < 2) {
      continue;
    }
    const seen = (side: DrawnSide): InventedSide => ({
      runs: side.runs,
      reference: side.reference,
      distances: side.distances,
      blocks: side.blocks,
      target: {
        speed,
        drop,
        end,
        gravity: WATER.gravity,
        shapeUncertainty: side.shapeUncertainty,
      },
    });
    const truth = (foil: InventedFoil) =>
      Math.log(sharedPath(foil, speed, end ?? foil.stallSpeed, drop, 1));
    return {
      baseline: seen(baseline),
      candidate: seen(candidate),
      logRatio: truth(second) - truth(first),
    };
  }
}
