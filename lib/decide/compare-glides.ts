/**
 * Which design glides better? Distance from the same launch, with everything that stands behind the answer.
 *
 * @module
 */
import { CONTRACT, type GlideComparison, type RunUse } from "../base/answers.ts";
import { UsageError } from "../base/errors.ts";
import { type Finding, finding } from "../base/finding.ts";
import type { Design, Session } from "../base/session.ts";
import { chooseLaunch, type LaunchOptions } from "./common-launch.ts";
import { commonShifts } from "./common-errors.ts";
import { designCurve, designGlide, designSeries } from "./design-glide.ts";
import { prepareCraft } from "./glide-craft.ts";
import type { DesignEvidence, GlideEvidence, RunEvidence } from "./glide-evidence.ts";
import { type FlaggedRun, type JudgedPair, pairFindings } from "./glide-findings.ts";
import { commonEnd, type DesignRuns, type PairSetting, stalledCount } from "./glide-pair.ts";
import { glideReport } from "./glide-report.ts";
import {
  type PreparedRun,
  type PreparedSession,
  prepareRuns,
  prepareSession,
} from "./glide-runs.ts";
import { judgePair, runName } from "./glide-verdict.ts";
import { jointStatement } from "./joint-statement.ts";
import { compareRawDistances } from "./naive-comparison.ts";
import { oddRuns } from "./odd-runs.ts";
import { runGlideRatio } from "./run-glide-ratio.ts";
import { sessionAssumptions, sessionFindings } from "./session-findings.ts";

/** What the asker may set. */
export interface GlideOptions extends LaunchOptions {
  /** Design to compare against; the first of designs.csv that was flown unless named. */
  readonly baseline?: string;
  /** Designs to compare with it; all others that were flown unless named. */
  readonly candidates?: readonly string[];
  /** Smallest ratio of distances worth finding, above 1; 1.10 unless set. */
  readonly smallestRatio?: number;
}

/** A builder cares about a tenth more distance. */
const SMALLEST_RATIO = 1.1;

/**
 * Compares the glides of two or more designs from one common launch.
 *
 * Headline: the ratio of the distances that candidate and baseline cover when launched at the same speed, spending the
 * same height, carrying the same mass, each down to its own end speed. Not the ratio of raw distances, which mixes in who
 * was launched faster, and not the ratio of glide ratios, which leaves out that a foil which stalls later has more speed
 * to spend.
 *
 * The order of rows does not matter; nothing is dropped without a word; where the data can't carry a comparison, the
 * answer says why instead of giving one.
 *
 * @param sessions one or more; their blocks stay apart
 * @param options baseline, candidates, launch, smallest ratio of interest
 * @returns the answer with its evidence
 * @throws UsageError for a design that no session knows, or options that make no sense
 */
export function compareGlides(
  sessions: readonly Session[],
  options: GlideOptions = {},
): GlideEvidence {
  requireSense(options);
  const prepared = sessions.map(prepareSession);
  const specs = designsOf(sessions);
  const names = chosenNames(specs, options);
  const runs = prepared.flatMap(prepareRuns).filter((one) =>
    names === null || names.includes(one.glide.design)
  );
  const findings: Finding[] = [...sessionFindings(prepared, runs)];
  const flown = [...specs.keys()].filter((name) =>
    runs.some((one) => one.glide.design === name && one.run !== null)
  );
  for (const name of names ?? specs.keys()) {
    if (!flown.includes(name)) findings.push(notFlown(name, runs));
  }
  const baseline = options.baseline ?? flown[0];
  const order = baseline === undefined
    ? []
    : [baseline, ...(options.candidates ?? flown).filter((name) => name !== baseline)]
      .filter((name) => flown.includes(name));
  const compared = runs.filter((one) => one.run !== null && order.includes(one.glide.design));
  const chosen = order.length === 0 ? null : chooseLaunch(
    order.map((name) => compared.filter((one) => one.glide.design === name)),
    prepared,
    options,
  );
  if (chosen === null) {
    return withoutLaunch(sessions, prepared, runs, [
      ...findings,
      finding({
        severity: "error",
        code: "no-runs",
        file: "glides.csv",
        what: "There is no run yet that tells how far a design glides.",
        wanted: "Launch speed, end speed, drop and distance of some runs of each design.",
      }),
    ]);
  }
  const { launch } = chosen;
  const setting: PairSetting = {
    launch,
    shifts: commonShifts(prepared),
    severalSessions: sessions.length > 1,
  };
  const designs = order.map((name) =>
    designRuns(name, specs, compared.filter((one) => one.glide.design === name), launch.mass)
  );
  const shared = commonEnd(designs, launch.speed);
  const parts = designs.map((design) => {
    const end = stalledCount(design) >= 2 ? null : shared;
    const series = designSeries(design, launch, end);
    const flags = oddRuns(design.runs.map((one) => one.run!), series, design.gravity);
    return { design, end, series, flags, glide: designGlide(design, series, setting, end) };
  });
  const flagged = (design: DesignRuns): FlaggedRun[] => {
    const { flags } = parts.find((one) => one.design === design)!;
    return design.runs.flatMap((run, i) => flags[i] == null ? [] : [{ run, flag: flags[i] }]);
  };
  const judged: JudgedPair[] = designs.slice(1).map((candidate) => ({
    ...judgePair(designs[0]!, candidate, setting, options.smallestRatio ?? SMALLEST_RATIO),
    baselineRuns: designs[0]!,
    candidateRuns: candidate,
  }));
  for (const pair of judged) {
    const odd = [...flagged(pair.baselineRuns), ...flagged(pair.candidateRuns)];
    findings.push(...pairFindings(pair, setting, odd));
  }
  if (designs.length < 2) {
    findings.push(finding({
      severity: "error",
      code: "one-design",
      file: "glides.csv",
      what: `Only ${order[0]} was flown: a comparison needs two designs.`,
      wanted: "Runs of at least two designs.",
    }));
  }
  findings.push(...jointStatement(judged));

  const seen = new Map<PreparedRun, RunEvidence>();
  for (const part of parts) {
    for (const run of runs.filter((one) => one.glide.design === part.design.design)) {
      const at = part.design.runs.indexOf(run);
      const pseudo = at < 0 ? undefined : part.series?.pseudoValues[at];
      seen.set(run, runEvidence(run, at < 0 ? null : part.flags[at]!, pseudo));
    }
  }
  const evidence = parts.flatMap(({ design, series, end }): DesignEvidence[] =>
    series === null ? [] : [{
      design: design.design,
      place: design.place,
      law: lawOf(design, series.level),
      level: series.level,
      runsUsed: design.runs.length,
      logDistance: series.logDistance,
      scatterVariance: series.variance ?? 0,
      measurementVariance: series.measurementVariance,
      shapeSensitivity: series.shapeSensitivity,
      curve: designCurve(design, setting, end),
      runs: [...seen.values()].filter((one) => one.design === design.design),
    }]
  );
  return {
    answer: {
      contract: CONTRACT,
      question: "glide",
      sessions: sessions.map((one) => one.name),
      findings,
      versions: {},
      dataChecksums: sessions.flatMap((one) => checksumsOf(one, sessions.length > 1)),
      launch,
      designs: parts.map((one) => one.glide),
      comparisons: judged.map((one): GlideComparison => one.comparison),
      runs: runs.map((one) => runUse(one, seen.get(one), setting)),
    },
    designs: evidence,
    naive: judged.flatMap((one) => {
      const naive = compareRawDistances(one.comparison.candidate, {
        baseline: distancesOf(one.baselineRuns),
        candidate: distancesOf(one.candidateRuns),
      });
      return naive === null ? [] : [naive];
    }),
    assumptions: [...chosen.assumptions, ...sessionAssumptions(prepared)],
    reports: parts.flatMap((one) =>
      one.series === null ? [] : [glideReport({
        design: one.design,
        series: one.series,
        glide: one.glide,
        leftOut: runs.filter((run) => run.run === null && run.glide.design === one.design.design),
        end: one.end === null ? "own" : "common",
      })]
    ),
  };
}

function requireSense(options: GlideOptions): void {
  const positive = { launchSpeed: options.launchSpeed, mass: options.mass };
  for (const [name, value] of Object.entries(positive)) {
    if (value !== undefined && !(value > 0 && value < Infinity)) {
      throw new UsageError(`Cannot compare glides as ${name} must be above zero: ${value}`);
    }
  }
  const { drop, smallestRatio } = options;
  if (drop !== undefined && !(drop >= 0 && drop < Infinity)) {
    throw new UsageError(`Cannot compare glides as drop must be zero or more: ${drop}`);
  }
  if (smallestRatio !== undefined && !(smallestRatio > 1 && smallestRatio < Infinity)) {
    throw new UsageError(
      `Cannot compare glides as the smallest ratio must be above 1: ${smallestRatio}`,
    );
  }
}

/** Every design by name, in the order in which the sessions name them, with the description that comes first. */
function designsOf(sessions: readonly Session[]): Map<string, Design> {
  const specs = new Map<string, Design>();
  for (const session of sessions) {
    for (const one of session.designs) if (!specs.has(one.design)) specs.set(one.design, one);
  }
  return specs;
}

/** Names the asker chose, or `null` for all. */
function chosenNames(specs: ReadonlyMap<string, Design>, options: GlideOptions): string[] | null {
  const asked = [
    ...(options.baseline === undefined ? [] : [options.baseline]),
    ...(options.candidates ?? []),
  ];
  for (const name of asked) {
    if (!specs.has(name)) {
      throw new UsageError(
        `Cannot compare glides of ${name} as designs.csv has only: ${[...specs.keys()].join(", ")}`,
      );
    }
  }
  if (options.candidates === undefined || options.baseline === undefined) return null;
  return [...new Set(asked)];
}

function notFlown(name: string, runs: readonly PreparedRun[]): Finding {
  const rows = runs.filter((one) => one.glide.design === name).length;
  return finding({
    severity: "warning",
    code: "design-without-runs",
    file: "glides.csv",
    what: rows === 0
      ? `${name} has no run.`
      : `None of the ${rows} runs of ${name} can be used; each run's reason stands in the list of runs.`,
    wanted: "Launch speed, end speed, drop and distance.",
  });
}

/** A design with its usable runs, and its craft at the mass to compare at and its own mean depth. */
function designRuns(
  name: string,
  specs: ReadonlyMap<string, Design>,
  runs: readonly PreparedRun[],
  mass: number,
): DesignRuns {
  const spec = specs.get(name)!;
  const { medium } = runs[0]!.prepared;
  const depths = runs.flatMap((one) => one.depth === null ? [] : [one.depth]);
  const depth = depths.length < runs.length
    ? null
    : depths.reduce((total, value) => total + value, 0) / depths.length;
  const craft = prepareCraft(spec, { mass, depth, medium });
  if (craft === null) {
    throw new UsageError(`Cannot compare glides at ${mass} kg as ${name} floats that much`);
  }
  return {
    design: name,
    place: [...specs.keys()].indexOf(name) + 1,
    spec,
    runs,
    reference: craft.craft,
    shapeUncertainty: Math.max(craft.shapeUncertainty, ...runs.map((one) => one.shapeUncertainty)),
    gravity: medium.gravity,
  };
}

function lawOf({ reference }: DesignRuns, level: number) {
  return { a: level * reference.a, d: level * reference.d, e: level * reference.e };
}

const distancesOf = (design: DesignRuns) =>
  design.runs.filter((one) => one.run!.inLevel).map((one) => one.run!.distance);

function runEvidence(
  prepared: PreparedRun,
  flag: string | null,
  pseudoValue: number | undefined,
): RunEvidence {
  const { glide, run } = prepared;
  const own = run !== null && run.inLevel
    ? runGlideRatio(run, prepared.prepared.medium.gravity)
    : null;
  return {
    session: prepared.prepared.session.name,
    row: glide.row,
    run: glide.run,
    design: glide.design,
    block: glide.block,
    launchSpeed: glide.launchSpeed,
    endSpeed: glide.endSpeed,
    drop: prepared.drop,
    distance: glide.distance,
    ended: glide.ended,
    used: run !== null,
    reason: prepared.reason,
    flag,
    energyHeight: own?.energyHeight ?? null,
    glideRatio: own?.glideRatio ?? null,
    movedDistance: pseudoValue === undefined ? null : Math.exp(pseudoValue),
  };
}

function runUse(
  prepared: PreparedRun,
  seen: RunEvidence | undefined,
  setting: PairSetting,
): RunUse {
  return {
    run: runName(prepared, setting),
    design: prepared.glide.design,
    used: seen?.used ?? false,
    reason: seen === undefined ? prepared.reason ?? "not compared" : seen.reason ?? seen.flag,
    glideRatio: seen?.glideRatio ?? null,
  };
}

function checksumsOf(session: Session, several: boolean) {
  return session.checksums.map((one) =>
    several ? { file: `${session.name}/${one.file}`, sha256: one.sha256 } : one
  );
}

/** The answer where no run tells anything. */
function withoutLaunch(
  sessions: readonly Session[],
  prepared: readonly PreparedSession[],
  runs: readonly PreparedRun[],
  findings: readonly Finding[],
): GlideEvidence {
  return {
    answer: {
      contract: CONTRACT,
      question: "glide",
      sessions: sessions.map((one) => one.name),
      findings,
      versions: {},
      dataChecksums: sessions.flatMap((one) => checksumsOf(one, sessions.length > 1)),
      launch: null,
      designs: [],
      comparisons: [],
      runs: runs.map((one) => ({
        run: one.glide.run,
        design: one.glide.design,
        used: false,
        reason: one.reason,
        glideRatio: null,
      })),
    },
    designs: [],
    naive: [],
    assumptions: sessionAssumptions(prepared),
    reports: [],
  };
}
