import { describe, expect, it } from "vitest";
import type { Calibration, Instrument, Session } from "lakeproof/base/session.ts";
import { compareTows } from "lakeproof/decide/compare-tows.ts";
import { seededRandom } from "lakeproof/numeric/random.ts";
import { drawCraft, speedsFrom, towSession } from "../support/towed-world.ts";

const SESSIONS = 400;

/** Shared errors that this world does not have. */
const EXACT = ["speed", "line_angle", "carried_mass", "depth"].flatMap((quantity) =>
  [true, false].map((relative): Instrument => ({
    row: 2,
    own: {},
    quantity,
    instrument: "exact",
    uncertainty: 1e-7,
    relative,
    statedAs: "standard",
    kind: "common",
    how: null,
  }))
);

interface Cell {
  /** Known loads before; N of scatter in each reading of one. */
  readonly loads: number;
  readonly scatter: number;
  /** Known loads after. */
  readonly after?: number;
  /** N, standard deviation of how far the zero moves in a sweep; it stands still between sweeps. */
  readonly drift?: number;
}

/** Many readings of one design on a load cell that reads 5 % and 3 N too much, give or take. */
function world(name: string, { loads, scatter, after = 0, drift = 0 }: Cell) {
  const random = seededRandom(name);
  const craft = drawCraft("alder", random, { mass: 84 });
  const speeds = speedsFrom(1.12 * craft.stallSpeed, 2.2 * craft.stallSpeed, 8);
  const sweeps = 3;
  const plan = { speeds, sweeps, process: 0.005, shared: false };
  const made = towSession([craft], plan, random);
  const [slope, zero] = [1.05 + 0.02 * random.normal(), 3 + random.normal()];
  const calibrations: Calibration[] = [];
  const look = (
    reading: number,
    { applied = null, when, sweep = null }: Pick<Calibration, "when"> & Partial<Calibration>,
  ) =>
    calibrations.push({
      row: 2,
      own: {},
      instrument: "load cell",
      when,
      sweep,
      applied,
      appliedUnit: "N",
      reading,
      readingUnit: "N",
    });
  const hang = (count: number, when: "before" | "after") => {
    for (let i = 0; i < count; i++) {
      const applied = 140 * i / (count - 1);
      look(slope * applied + zero + scatter * random.normal(), { applied, when });
    }
  };
  hang(loads, "before");
  const tow = [...made.tow];
  let moved = 0;
  for (let sweep = 1; sweep <= sweeps; sweep++) {
    const here = tow.filter((one) => one.sweep === String(sweep));
    const further = drift * random.normal();
    // The zero jumps at any moment of the sweep, not evenly.
    const jump = random.uniform() * here.length;
    if (drift > 0) look(zero + moved, { when: "before", sweep: String(sweep) });
    here.forEach((one, i) => {
      const at = tow.indexOf(one);
      const off = zero + moved + (i >= jump ? further : 0);
      tow[at] = { ...one, lineTension: slope * one.lineTension! + off };
    });
    moved += further;
    if (drift > 0) look(zero + moved, { when: "after", sweep: String(sweep) });
  }
  hang(after, "after");
  const session: Session = { ...made, tow, calibrations, instruments: EXACT };
  return { craft, session };
}

function study(name: string, cell: Cell) {
  const rate = { best: 0, drag: 0, drags: 0, changed: 0 };
  let width = 0;
  for (let i = 0; i < SESSIONS; i++) {
    const { craft, session } = world(`${name} ${i}`, cell);
    const { answer } = compareTows(session);
    const [one] = answer.designs;
    const best = one!.bestLiftToDrag!;
    if (best.low! <= craft.best.liftToDrag && craft.best.liftToDrag <= (best.high ?? Infinity)) {
      rate.best++;
    }
    width += (best.value - best.low!) / best.value / SESSIONS;
    for (const { speed, drag } of one!.dragAt) {
      rate.drags++;
      const truth = craft.drag(speed);
      if (drag.low! <= truth && truth <= drag.high!) rate.drag++;
    }
    if (answer.findings.some((two) => two.code === "calibration-changed")) rate.changed++;
  }
  const found = {
    best: 100 * rate.best / SESSIONS,
    drag: 100 * rate.drag / rate.drags,
    changed: 100 * rate.changed / SESSIONS,
    width: 100 * width,
  };
  console.log(name, JSON.stringify(found));
  return found;
}

describe("a load cell by its known loads and zeros", () => {
  it.each<[string, Cell]>([
    ["four loads, 1 N of scatter", { loads: 4, scatter: 1 }],
    ["eight loads, 0.5 N", { loads: 8, scatter: 0.5 }],
    ["six loads before and four after", { loads: 6, scatter: 0.5, after: 4 }],
    ["a zero that jumps in each sweep", { loads: 8, scatter: 0.3, drift: 1 }],
  ])("leaves intervals that hold what is true: %s", (name, cell) => {
    const found = study(name, cell);
    // 400 sessions: Monte Carlo error 1.1 % at 95 %.
    expect(found.best).toBeGreaterThan(92.5);
    expect(found.drag).toBeGreaterThan(92.5);
    // Told by chance in one session of twenty.
    expect(found.changed).toBeLessThan(9);
  }, 900_000);
});
