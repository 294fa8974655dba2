/** Invented glides whose truth is known, with their speed traces. */
import type { Glide, Session, Trace } from "lakeproof/base/session.ts";
import { effectiveMass } from "lakeproof/model/effective-mass.ts";
import type { SeededRandom } from "lakeproof/numeric/random.ts";
import type { TrueCraft } from "./towed-world.ts";

const DENSITY = 999.1026;

/** How glides are flown and their speeds read. */
export interface TracePlan {
  readonly runs: number;
  /** Samples a second. */
  readonly rate: number;
  /** m/s, of one sample. */
  readonly noise: number;
  /** Correlation of neighbouring samples. */
  readonly correlation: number;
  /** Scatter of the drag from run to run, as a share. */
  readonly process: number;
  /** True to draw the errors that all runs share. */
  readonly shared: boolean;
  /** Launch speeds over the speed of best lift-to-drag: from, to. */
  readonly launch: readonly [number, number];
  /** Length of the glides, s. */
  readonly seconds: number;
  /** m/s of a push in the middle of the first run; none unless given. */
  readonly pump?: number;
}

/** Glides of a craft, as rows of glides.csv and traces, with every error drawn anew. */
export function glideTraces(
  craft: TrueCraft,
  plan: TracePlan,
  random: SeededRandom,
  from = 1,
): Pick<Session, "glides" | "traces"> {
  const draw = (u: number) => plan.shared ? u * random.normal() : 0;
  const log = { scale: draw(0.01), zero: draw(0.02) };
  const scales = draw(0.5);
  const steepening = draw(0.4);
  const { span, area, mass } = craft;
  const planned = effectiveMass({ mass, density: DENSITY, span, area, thicknessRatio: 0.12 }) -
    mass;
  const moving = mass + planned * (1 + draw(0.5));
  const glides: Glide[] = [], traces: Trace[] = [];
  for (let i = 0; i < plan.runs; i++) {
    const run = String(from + i);
    const factor = 1 + plan.process * random.normal();
    const [low, high] = plan.launch;
    const launchSpeed = craft.best.speed * (low + (high - low) * random.uniform());
    const slope = 0.015 + 0.02 * random.uniform();
    const flown = fly(craft, {
      launchSpeed,
      slope,
      factor,
      moving,
      rate: plan.rate,
      seconds: plan.seconds,
      steepening,
    });
    const { times, distance, drop, endSpeed } = flown;
    let noise = random.normal();
    const speeds = flown.speeds.map((speed, sample) => {
      const pumped = plan.pump !== undefined && i === 0 && sample > flown.speeds.length / 3
        ? plan.pump
        : 0;
      const read = (speed + pumped) * (1 + log.scale) + plan.noise * noise + log.zero;
      noise = plan.correlation * noise + Math.sqrt(1 - plan.correlation ** 2) * random.normal();
      return read;
    });
    const duration = times.at(-1)!;
    traces.push({ run, file: `traces/${run}.csv`, times, speeds });
    glides.push({
      row: from + i + 1,
      own: {},
      run,
      date: null,
      block: null,
      design: craft.name,
      launchSpeed: launchSpeed + 0.08 * random.normal(),
      endSpeed: endSpeed + 0.08 * random.normal(),
      drop: drop + 0.02 * random.normal(),
      distance: distance * (1 + 0.012 * random.normal()) + 0.15 * random.normal(),
      duration,
      carriedMass: mass + scales,
      depth: craft.depth,
      ended: "stopped early",
      leaveOut: null,
      note: null,
    });
  }
  return { glides, traces };
}

interface Flight {
  readonly launchSpeed: number;
  /** Height lost over distance, in the mean. */
  readonly slope: number;
  /** Drag of this run over the craft's. */
  readonly factor: number;
  /** kg */
  readonly moving: number;
  /** Samples a second. */
  readonly rate: number;
  readonly seconds: number;
  /** How much more it sinks at the end than in the mean, as a share. */
  readonly steepening: number;
}

/** One glide to its time or just above its stall, by middle steps; flown once before, to know how long it lasts. */
function fly(craft: TrueCraft, flight: Flight) {
  const once = (length: number, steepening: number) => {
    const per = 20, h = 1 / flight.rate / per;
    const count = Math.floor(flight.seconds * flight.rate);
    let speed = flight.launchSpeed, distance = 0, drop = 0;
    const times = [0], speeds = [speed];
    let end = { endSpeed: speed, distance, drop };
    for (let sample = 1; sample <= count; sample++) {
      for (let step = 0; step < per; step++) {
        const share = (times.at(-1)! + step * h) / length;
        const sink = flight.slope * (1 + steepening * (2 * share - 1));
        const rate = (v: number) =>
          (craft.lift * sink - flight.factor * craft.drag(v)) / flight.moving;
        const middle = speed + h / 2 * rate(speed);
        distance += h * middle;
        drop += h * middle * sink;
        speed += h * rate(middle);
        if (speed < 1.03 * craft.stallSpeed) return { times, speeds, ...end };
      }
      times.push(sample / flight.rate);
      speeds.push(speed);
      end = { endSpeed: speed, distance, drop };
    }
    return { times, speeds, ...end };
  };
  const { times } = once(1, 0);
  return once(times.at(-1)!, flight.steepening);
}
