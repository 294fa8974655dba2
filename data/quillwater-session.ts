/**
 * Invented: how the demo session of Quillwater was flown and measured: the runs, their scatter, and the noise of the instruments.
 *
 * @module
 */
import type { FlownGlide } from "lakeproof/model/glide-flight.ts";
import { seededRandom } from "lakeproof/numeric/random.ts";
import {
  DESIGNS,
  type Evening,
  EVENINGS,
  flySink,
  pair,
  type Pairing,
  type TrueDesign,
} from "./quillwater-craft.ts";

/** Change the name and every number changes. */
export const SEED = "Quillwater, evening class";

/** m of the wing under the surface at launch, as a rule. */
export const LAUNCH_DEPTH = 0.32;

/** One instrument's errors: standard uncertainty by run, and a share or part common to all. */
export const NOISE = {
  speed: 0.06,
  speedScale: 0.004,
  drop: 0.02,
  distance: 0.1,
  distanceScaleLimit: 0.005,
  duration: 0.2,
  massLimit: 0.5,
  depth: 0.03,
} as const;

/** How one run was meant to go. */
type Course = "stall" | "touch" | "stop" | "pump" | "weed";

/** Courses of each design's runs, evening by evening. */
const COURSES: Readonly<Record<string, readonly (readonly Course[])[]>> = {
  alder: [["stall", "stall", "weed", "stall"], ["stall", "touch", "stall", "stall", "stop"]],
  birch: [["stall", "touch", "stall", "stall"], ["stall", "stall", "stop", "stall"]],
  cedar: [["stall", "stall", "stop", "stall"], ["stall", "pump", "touch", "stall", "stall"]],
};

const NOTES: Readonly<Record<Course, string>> = {
  stall: "",
  touch: "board touched",
  stop: "stopped before the buoys ended",
  pump: "pumped a little",
  weed: "",
};

/** One row of glides.csv, as written. */
export type GlideRow = Readonly<Record<string, string>>;

/** Rounds the way a person writes: to a step, with its decimals. */
function written(value: number, step: number, decimals: number): string {
  return (Math.round(value / step) * step).toFixed(decimals);
}

/** What the rider did in one run. */
function fly(
  pairing: Pairing,
  course: Course,
  design: TrueDesign,
  evening: Evening,
  chance: ReturnType<typeof seededRandom>,
): { glide: FlownGlide; launchSpeed: number; launchDepth: number } {
  const { flown } = pairing;
  const [mean, scatter] = design.launch;
  const launchSpeed = Math.max(3.7, mean + evening.quicker + scatter * chance.normal());
  const launchDepth = LAUNCH_DEPTH + 0.03 * chance.normal();
  const dropAtStall = Math.min(0.28, Math.max(0.12, 0.2 + 0.03 * chance.normal()));
  const steepening = Math.min(1.6, Math.max(0, 0.8 + 0.3 * chance.normal()));
  const one = {
    ...pairing,
    flown: {
      ...flown,
      // A run's own trim, ripples and weed: four per cent of the drag. Stalling a little early or late: 1.5 % of the speed.
      dragFactor: flown.dragFactor * Math.exp(0.04 * chance.normal()) *
        (course === "weed" ? 1.25 : 1),
      largestLiftCoefficient: flown.largestLiftCoefficient * Math.exp(0.03 * chance.normal()),
    },
  };
  const kept = 0.15 + 0.2 * chance.uniform();
  const glide = flySink(one, {
    launchSpeed,
    launchDepth,
    steepening,
    dropAtStall: course === "touch" ? 0.36 : dropAtStall,
    mostDrop: course === "touch" ? 0.24 : 0.4,
    ...(course === "stop" ? { stopSpeed: 3.2 + kept * (launchSpeed - 3.2) } : {}),
    // Three pushes of the legs, just enough to win speed.
    ...(course === "pump"
      ? { push: (time: number) => 190 * Math.max(0, Math.sin(4 * time)), stopTime: 1.7 }
      : {}),
  });
  return { glide, launchSpeed, launchDepth };
}

/** A run as written down, and as it truly went. */
export interface FlownRun {
  readonly row: GlideRow;
  readonly glide: FlownGlide;
}

/** Every run in the order flown, as measured and written down; another seed is another pair of evenings with the same foils. */
export function flownRuns(seed: string = SEED): FlownRun[] {
  const chance = seededRandom(seed);
  const errors = chance.stream("instruments");
  const speedScale = 1 + NOISE.speedScale * errors.normal();
  const distanceScale = 1 + NOISE.distanceScaleLimit * (2 * errors.uniform() - 1);
  const massOffset = NOISE.massLimit * (2 * errors.uniform() - 1);
  const speed = (value: number) =>
    written((value + NOISE.speed * errors.normal()) * speedScale, 0.01, 2);
  const runs: FlownRun[] = [];
  EVENINGS.forEach((evening, night) => {
    const pairings = new Map(DESIGNS.map((design) => [design.name, pair(design, evening)]));
    const rounds = Math.max(...DESIGNS.map((design) => COURSES[design.name]![night]!.length));
    for (let round = 0; round < rounds; round++) {
      // The order within a round was drawn from a hat.
      for (const design of chance.shuffle(DESIGNS)) {
        const course = COURSES[design.name]![night]![round];
        if (course === undefined) continue;
        const pairing = pairings.get(design.name)!;
        const { glide, launchSpeed, launchDepth } = fly(pairing, course, design, evening, chance);
        const row = {
          run: String(runs.length + 1),
          date: evening.date,
          block: evening.block,
          design: design.name,
          launch_speed: speed(launchSpeed),
          end_speed: speed(glide.endSpeed),
          drop: written(glide.drop + NOISE.drop * errors.normal(), 0.01, 2),
          distance: written(
            (glide.distance + NOISE.distance * errors.normal()) * distanceScale,
            0.05,
            2,
          ),
          duration: written(glide.duration + NOISE.duration * errors.normal(), 0.1, 1),
          carried_mass: written(pairing.flown.mass + massOffset, 0.5, 1),
          depth: written(launchDepth + glide.drop / 2 + NOISE.depth * errors.normal(), 0.05, 2),
          ended: glide.ended,
          leave_out: course === "weed" ? "weed on the mast" : "",
          note: NOTES[course],
        };
        runs.push({ row, glide });
      }
    }
  });
  return runs;
}
