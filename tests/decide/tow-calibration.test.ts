import { describe, expect, it } from "vitest";
import type { Calibration, Instrument, Session } from "lakeproof/base/session.ts";
import { compareTows } from "lakeproof/decide/compare-tows.ts";
import { towCalibration } from "lakeproof/decide/tow-calibration.ts";
import { seededRandom } from "lakeproof/numeric/random.ts";
import { exampleTow } from "../support/towed-world.ts";

const GRAVITY = 9.80665;
const { session } = exampleTow("two tows");

interface Look {
  readonly applied?: number;
  readonly when?: "before" | "after";
  readonly sweep?: string;
}

const row = (reading: number, { applied, when = "before", sweep }: Look = {}): Calibration => ({
  row: 2,
  own: {},
  instrument: "load cell",
  when,
  sweep: sweep ?? null,
  applied: applied ?? null,
  appliedUnit: applied === undefined ? null : "N",
  reading,
  readingUnit: "N",
});

/** Known loads on a cell with 0.15 N of scatter. */
function loads(
  name: string,
  { when = "before", scale = 1, offset = 0, count = 8 }: {
    readonly when?: "before" | "after";
    readonly scale?: number;
    readonly offset?: number;
    readonly count?: number;
  } = {},
): Calibration[] {
  const random = seededRandom(name);
  return Array.from({ length: count }, (_, i) => {
    const applied = 150 * i / (count - 1);
    return row(scale * applied + offset + 0.15 * random.normal(), { applied, when });
  });
}

const withCell = (calibrations: readonly Calibration[], from: Session = session): Session => ({
  ...from,
  calibrations,
});
const codes = (one: Session) => compareTows(one).answer.findings.map((two) => two.code);
const best = (one: Session) => compareTows(one).answer.designs[0]!.bestLiftToDrag!;

describe("degrees of freedom of a calibration", () => {
  it("limit those of the answer", () => {
    const { designs } = compareTows(withCell(loads("few", { count: 3 })));
    const { series } = designs[0]!;
    const known = series!.shifts.filter((one) => one.knownBy !== undefined);
    expect(known.map((one) => one.name)).toEqual([
      "load cell offset by its calibration",
      "load cell slope by its calibration",
    ]);
    for (const { knownBy } of known) {
      expect(knownBy).toEqual({ origin: "known loads of invented", degreesOfFreedom: 1 });
    }
    // Welch and Satterthwaite by hand (GUM G.2b): offset and slope come from one scatter.
    const { estimate } = designs[0]!.best!;
    const variance = estimate.shared.reduce((sum, one) => sum + one.change ** 2, 0) +
      estimate.dataVariance + estimate.planformVariance + estimate.sweepVariance;
    const line = estimate.shared.filter((one) => one.knownBy !== undefined)
      .reduce((sum, one) => sum + one.change ** 2, 0);
    const fourth = estimate.dataVariance ** 2 / estimate.dataDegreesOfFreedom + line ** 2 / 1 +
      estimate.sweepVariance ** 2 / estimate.sweepDegreesOfFreedom;
    expect(best(withCell(loads("few", { count: 3 }))).degreesOfFreedom).toBeCloseTo(
      variance ** 2 / fourth,
      8,
    );
  });
});

describe("zeros of single sweeps", () => {
  // Three sweeps of two designs at seven speeds: rows 0 to 13, 14 to 27, 28 to 41.
  const drift = [[0.2, 1.6], [-0.5, 0.3], [0.1, 0.1]] as const;
  const zeros = drift.flatMap(([before, after], i) => [
    row(before, { when: "before", sweep: String(i + 1) }),
    row(after, { when: "after", sweep: String(i + 1) }),
  ]);
  const wandering: Session = {
    ...session,
    tow: session.tow.map((one, i) => {
      const [before, after] = drift[Math.floor(i / 14)]!;
      const zero = before + (after - before) * (i % 14 + 0.4) / 13.8;
      return { ...one, lineTension: one.lineTension! + zero };
    }),
    calibrations: zeros,
  };

  it("are taken off evenly within each sweep", () => {
    // Exactly the readings without a drift.
    expect(compareTows(wandering).answer.designs[0]!.law!.a).toBeCloseTo(
      compareTows(session).answer.designs[0]!.law!.a,
      9,
    );
  });

  it("leave a doubt that is common to their own sweep alone", () => {
    const [alder] = compareTows(wandering).designs;
    const names = alder!.series!.shifts.map((one) => one.name);
    expect(names.filter((one) => one.startsWith("load cell zero drift"))).toEqual([
      "load cell zero drift 1",
      "load cell zero drift 3",
    ]);
    const first = alder!.series!.shifts.find((one) => one.name === "load cell zero drift 1")!;
    const moved = first.fits[0].data.readings.map((one, i) =>
      first.fits[1].data.readings[i]!.tension - one.tension
    );
    // Both ways by 1.4 N over the root of 12.
    expect(moved.slice(0, 7).every((one) => Math.abs(one - 2.8 / Math.sqrt(12)) < 1e-9)).toBe(true);
    expect(moved.slice(7).every((one) => one === 0)).toBe(true);
  });

  it("warn of a sweep whose zero moved far, and not of a cell set to zero in between", () => {
    expect(codes(wandering)).toContain("zero-moved");
    const calm = withCell([0.2, 1.5].flatMap((value, i) => [
      row(value, { when: "before", sweep: String(i + 1) }),
      row(value + 0.1, { when: "after", sweep: String(i + 1) }),
    ]));
    expect(codes(calm)).not.toContain("zero-moved");
  });

  it("name a sweep that tow.csv does not have", () => {
    const found = (sweep: string) => codes(withCell([row(0.1, { sweep })]));
    expect(found("9")).toContain("unknown-sweep");
    expect(found("1")).not.toContain("unknown-sweep");
  });
});

describe("known loads after the session", () => {
  const early = loads("early");

  it("join those before in one line where they agree", () => {
    const both = towCalibration(withCell([...early, ...loads("late", { when: "after" })]), GRAVITY);
    expect(both.loads).toHaveLength(16);
    expect(both.line!.degreesOfFreedom).toBe(14);
    expect(both.change).toBeNull();
    expect(both.compared!.pValue).toBeGreaterThan(0.05);
    expect(both.findings).toEqual([]);
  });

  it("agree too where only the zero moved and was read", () => {
    const moved = loads("late", { when: "after", offset: 0.7 });
    const zeros = [row(0), row(0.7, { when: "after" })];
    const read = towCalibration(withCell([...early, ...zeros, ...moved]), GRAVITY);
    expect(read.change).toBeNull();
    const unread = towCalibration(withCell([...early, ...moved]), GRAVITY);
    expect(unread.findings.map((one) => one.code)).toEqual(["calibration-changed"]);
  });

  it("are told where they do not go together, and their difference widens the answer", () => {
    const late = loads("late", { when: "after", scale: 1.02 });
    const changed = withCell([...early, ...late]);
    const { change, line } = towCalibration(changed, GRAVITY);
    // Readings are 2 % larger, so the value of a reading is 2 % smaller; scatter 0.1 %.
    expect(change!.slope / line!.slope).toBeCloseTo(-0.02, 2);
    expect(codes(changed)).toContain("calibration-changed");
    expect(codes(withCell(early))).not.toContain("calibration-changed");
    expect(best(changed).standardUncertainty!).toBeGreaterThan(
      best(withCell(early)).standardUncertainty! * 1.1,
    );
  });

  it("serve alone where none were hung on before", () => {
    const late = towCalibration(withCell(loads("late", { when: "after" })), GRAVITY);
    expect(late.line!.degreesOfFreedom).toBe(6);
  });

  it("differ by chance in about one clean session of twenty", () => {
    let told = 0;
    for (let i = 0; i < 400; i++) {
      const both = [...loads(`a${i}`), ...loads(`b${i}`, { when: "after", count: 4 })];
      if (towCalibration(withCell(both), GRAVITY).change !== null) told++;
    }
    // 20 expected, standard deviation 4.4; seeds are fixed.
    expect(Math.abs(told - 20)).toBeLessThan(14);
  });
});

describe("rows that can't serve", () => {
  const early = loads("early");

  it("are told: two instruments of which none is named, and loads without a unit", () => {
    const two = [...early, ...early.map((one) => ({ ...one, instrument: "old balance" }))];
    expect(codes(withCell(two))).toContain("which-load-cell");
    const bare = early.map((one, i) => i === 2 ? { ...one, appliedUnit: null } : one);
    expect(codes(withCell(bare))).toContain("load-unit");
    for (const code of ["which-load-cell", "load-unit"]) {
      expect(codes(withCell(early))).not.toContain(code);
    }
  });

  it("are not those of a balance that shows kilograms, nor a load of nothing", () => {
    const shown = early.map((one) => ({
      ...one,
      reading: one.reading / GRAVITY,
      readingUnit: "kg",
      appliedUnit: one.applied === 0 ? null : "N",
    }));
    const balance = towCalibration(withCell(shown), GRAVITY);
    expect(balance.line!.slope).toBeCloseTo(
      towCalibration(withCell(early), GRAVITY).line!.slope,
      9,
    );
    expect(balance.loads).toHaveLength(8);
  });
});

describe("what counts beside a calibration", () => {
  const stated: Instrument = {
    row: 4,
    own: {},
    quantity: "line_tension",
    instrument: "load cell",
    uncertainty: 0.02,
    relative: true,
    statedAs: "standard",
    kind: "common",
    how: null,
  };

  it("is said where a shared error is stated as well: the known loads", () => {
    const both = { ...withCell(loads("early")), instruments: [stated] };
    const { answer } = compareTows(both);
    expect(answer.findings).toContainEqual(
      expect.objectContaining({ code: "calibration-counts", file: "instruments.csv", row: 4 }),
    );
    expect(best(both).standardUncertainty).toBe(
      best(withCell(loads("early"))).standardUncertainty,
    );
    expect(codes({ ...session, instruments: [stated] })).not.toContain("calibration-counts");
    expect(codes(withCell(loads("early")))).not.toContain("calibration-counts");
  });

  it("is said of readings beyond the known loads", () => {
    const short = loads("early").slice(0, 4);
    const [told] = compareTows(withCell(short)).answer.findings.filter((one) =>
      one.code === "outside-calibration"
    );
    const most = Math.max(...short.map((one) => one.reading));
    expect(told!.count).toBe(session.tow.filter((one) => one.lineTension! > most).length);
    expect(told!.count).toBeGreaterThan(0);
    expect(codes(withCell(loads("early")))).not.toContain("outside-calibration");
  });
});
