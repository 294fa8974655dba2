/**
 * Invented evidence of a glide comparison, for tests of what is shown. Made by hand from two invented sets of seven runs;
 * no figure here was measured, and none was fitted by the library that the tests are about.
 */
import type { DesignGlide, GlideComparison } from "lakeproof/base/answers.ts";
import type { Quantity } from "lakeproof/base/quantity.ts";
import { finding } from "lakeproof/base/finding.ts";
import type {
  CurvePoint,
  DesignEvidence,
  GlideEvidence,
  RunEvidence,
} from "lakeproof/decide/glide-evidence.ts";

export function quantity(
  value: number,
  u: number | null,
  unit: string,
  low: number | null = null,
  high: number | null = null,
): Quantity {
  return {
    value,
    standardUncertainty: u,
    degreesOfFreedom: u === null ? null : 6,
    low: low ?? (u === null ? null : value - 2.2 * u),
    high: high ?? (u === null ? null : value + 2.2 * u),
    level: 0.95,
    kind: "interval",
    unit,
  };
}

const GRAVITY = 9.80665;

/** Launch speed, end speed, drop, distance, moved distance. */
type InventedRun = readonly [number, number, number, number, number];

const RUNS: Record<string, readonly InventedRun[]> = {
  alder: [
    [4.28, 2.89, 0.222, 9.48, 7.94],
    [4.45, 3.04, 0.164, 8.97, 7.05],
    [4.47, 3.18, 0.174, 9.05, 6.8],
    [4.54, 3.08, 0.25, 8.54, 5.65],
    [4.75, 3.19, 0.144, 10.95, 7.21],
    [4.62, 3.06, 0.233, 9.52, 6.09],
    [4.47, 3.17, 0.177, 8.79, 6.6],
  ],
  birch: [
    [3.9, 3.02, 0.255, 7.86, 8.08],
    [4.19, 2.91, 0.19, 9.63, 9.35],
    [3.47, 2.95, 0.168, 4.36, 8.03],
    [3.71, 2.99, 0.147, 5.39, 8.06],
    [3.94, 3.27, 0.085, 4.46, 7.83],
    [4.33, 2.98, 0.209, 9.49, 7.69],
    [3.69, 2.99, 0.221, 5.17, 6.88],
  ],
};

interface InventedDesign {
  readonly design: string;
  readonly place: number;
  readonly a: number;
  readonly e: number;
  readonly level: number;
  readonly endSpeed: number;
  readonly spread: number;
}

function curve(one: InventedDesign): CurvePoint[] {
  const points: CurvePoint[] = [];
  for (let speed = 3.4; speed < 4.85; speed += 0.1) {
    const [u0, u1] = [speed ** 2, one.endSpeed ** 2];
    const drag = 2 * one.a * (u0 - u1) /
      Math.log((one.a * u0 ** 2 + one.e) / (one.a * u1 ** 2 + one.e)) / 800;
    const distance = (0.18 + 1.06 * (u0 - u1) / (2 * GRAVITY)) / (one.level * drag);
    points.push({
      launchSpeed: Math.round(speed * 10) / 10,
      distance,
      low: distance * Math.exp(-one.spread),
      high: distance * Math.exp(one.spread),
    });
  }
  return points;
}

function runs(design: string, firstRow: number): RunEvidence[] {
  return RUNS[design]!.map(([v0, v1, drop, distance, moved], index) => {
    const energy = drop + 1.06 * (v0 ** 2 - v1 ** 2) / (2 * GRAVITY);
    return {
      session: "invented",
      row: firstRow + 2 * index,
      run: String(firstRow + 2 * index - 1),
      design,
      block: "Monday",
      launchSpeed: v0,
      endSpeed: v1,
      drop,
      distance,
      ended: design === "birch" && index === 4 ? "stopped early" as const : "stalled" as const,
      used: true,
      reason: null,
      flag: null,
      energyHeight: energy,
      glideRatio: quantity(distance / energy, 0.08 * distance / energy, "1"),
      movedDistance: moved,
    };
  });
}

const ALDER: InventedDesign = {
  design: "alder",
  place: 1,
  a: 1.55,
  e: 512,
  level: 1.1366,
  endSpeed: 3.087,
  spread: 0.09,
};
const BIRCH: InventedDesign = {
  design: "birch",
  place: 2,
  a: 1.62,
  e: 341,
  level: 1.2735,
  endSpeed: 2.973,
  spread: 0.08,
};

function evidenceOf(one: InventedDesign, firstRow: number): DesignEvidence {
  return {
    design: one.design,
    place: one.place,
    law: { a: one.a * one.level, d: 0, e: one.e * one.level },
    level: one.level,
    runsUsed: 7,
    logDistance: Math.log(one.place === 1 ? 6.724 : 7.948),
    scatterVariance: one.place === 1 ? 1.79e-3 : 1.17e-3,
    measurementVariance: one.place === 1 ? 5.6e-4 : 1.04e-3,
    shapeSensitivity: one.place === 1 ? -0.0169 : 0.0052,
    curve: curve(one),
    runs: runs(one.design, firstRow),
  };
}

const designs: DesignGlide[] = [
  {
    design: "alder",
    glideRatio: quantity(11.76, 0.52, "1"),
    distance: quantity(6.7239, 0.29, "m", 6.06, 7.46),
    endSpeed: quantity(3.087, 0.04, "m/s"),
    runsUsed: 7,
  },
  {
    design: "birch",
    glideRatio: quantity(12.97, 0.47, "1"),
    distance: quantity(7.9478, 0.28, "m", 7.31, 8.64),
    endSpeed: quantity(2.973, 0.015, "m/s"),
    runsUsed: 7,
  },
];

/** Birch is ahead although it was launched slower. */
export const COMPARISON: GlideComparison = {
  baseline: "alder",
  candidate: "birch",
  verdict: "candidate-better",
  ratio: {
    value: 1.1820182,
    standardUncertainty: 0.0694,
    degreesOfFreedom: 15.5714441,
    low: 1.0434176,
    high: 1.3390295,
    level: 0.95,
    kind: "interval",
    unit: "1",
  },
  probabilityCandidateBetter: 0.9940733,
  raw: {
    ratio: 0.7099541,
    launchEffect: 0.6006287,
    designEffect: 1.1820182,
    dragEffect: 1.102325,
    energyEffect: 1.0722955,
  },
  end: "own",
  varianceShares: {
    baselineScatter: 0.52,
    candidateScatter: 0.339,
    launchDifference: 0.141,
    commonErrors: 0,
  },
  fragile: false,
  restsOn: [],
  moreRuns: { now: 0, matchedLaunches: 0, never: false },
  family: "pointwise",
};

/** Whole evidence for two designs: birch ahead. */
export function inventedEvidence(comparison: Partial<GlideComparison> = {}): GlideEvidence {
  const both = [evidenceOf(ALDER, 2), evidenceOf(BIRCH, 3)];
  return {
    answer: {
      contract: 1,
      question: "glide",
      sessions: ["invented"],
      findings: [],
      versions: {},
      dataChecksums: [{ file: "glides.csv", sha256: "00" }],
      launch: { speed: 4.1, drop: 0.18, mass: 84 },
      designs,
      comparisons: [{ ...COMPARISON, ...comparison }],
      runs: both.flatMap((one) => one.runs).map((run) => ({
        run: run.run,
        design: run.design,
        used: run.used,
        reason: run.reason,
        glideRatio: run.glideRatio,
      })),
    },
    designs: both,
    naive: [{ candidate: "birch", ratio: 0.6762, low: 0.4909, high: 0.9314, pValue: 0.0236 }],
    assumptions: ["Launch speed uncertain by 0.08 m/s (stated)."],
    reports: ["Fit of alder: 7 runs used.\n", "Fit of birch: 7 runs used.\n"],
  };
}

/** The same with one run changed, by its place in the design's list. */
export function withRun(
  evidence: GlideEvidence,
  design: string,
  index: number,
  change: Partial<RunEvidence>,
): GlideEvidence {
  const changed = evidence.designs.map((one) =>
    one.design !== design ? one : {
      ...one,
      runs: one.runs.map((run, at) => at === index ? { ...run, ...change } : run),
      runsUsed: one.runs.filter((run, at) => at === index ? change.used ?? run.used : run.used)
        .length,
    }
  );
  return {
    ...evidence,
    answer: {
      ...evidence.answer,
      designs: evidence.answer.designs.map((one) => ({
        ...one,
        runsUsed: changed.find((each) => each.design === one.design)?.runsUsed ?? 0,
      })),
      runs: changed.flatMap((one) =>
        one.runs.map(({ run, design, used, reason, flag, glideRatio }) => ({
          run,
          design,
          used,
          reason: reason ?? flag,
          glideRatio,
        }))
      ),
    },
    designs: changed,
  };
}

/** Four runs of each: too few to tell. */
export function inventedCannotTell(): GlideEvidence {
  return inventedEvidence({
    verdict: "cannot-tell-yet",
    ratio: {
      value: 1.225336,
      standardUncertainty: 0.0988,
      degreesOfFreedom: 4.7005367,
      low: 0.9918658,
      high: 1.5137615,
      level: 0.95,
      kind: "interval",
      unit: "1",
    },
    probabilityCandidateBetter: 0.9718568,
    moreRuns: { now: 35, matchedLaunches: 15, never: false },
  });
}

/** Nothing can be compared: each design flew on a day of its own. */
export function inventedRefusal(): GlideEvidence {
  const whole = inventedEvidence({
    verdict: "refused",
    ratio: null,
    probabilityCandidateBetter: null,
    raw: null,
    varianceShares: null,
    moreRuns: null,
  });
  return {
    ...whole,
    answer: {
      ...whole.answer,
      findings: [finding({
        severity: "error",
        code: "own-day",
        file: "glides.csv",
        column: "block",
        what: "alder flew in block Monday only and birch in block Tuesday only.",
        wanted:
          "Fly both designs on the same day with the same rider: the day may be the difference.",
      })],
    },
  };
}
