/**
 * Which design glides better? Distance from the same launch, with everything that stands behind the answer.
 *
 * @module
 */
import type { GlideComparison } from "../base/answers.ts";
import { type Finding, finding } from "../base/finding.ts";
import type { Session } from "../base/session.ts";
import { answerHead, answerWithoutLaunch } from "./answer-head.ts";
import { chooseLaunch } from "./common-launch.ts";
import { commonShifts } from "./common-errors.ts";
import { faultsOf } from "./data-faults.ts";
import { designCurve, designGlide, designSeries } from "./design-glide.ts";
import { designRuns, notFlown } from "./design-runs.ts";
import type { DesignEvidence, GlideEvidence, RunEvidence } from "./glide-evidence.ts";
import { type FlaggedRun, pairFindings } from "./glide-findings.ts";
import type { JudgedPair } from "./judged-pair.ts";
import { commonEnd, type DesignRuns, type PairSetting, stalledCount } from "./glide-pair.ts";
import { chosenNames, designsOf, type GlideOptions, requireSense } from "./glide-options.ts";
import { glideReport } from "./glide-report.ts";
import { type PreparedRun, prepareRuns, prepareSession } from "./glide-runs.ts";
import { judgePair } from "./glide-verdict.ts";
import { jointStatement } from "./joint-statement.ts";
import { compareRawDistances } from "./naive-comparison.ts";
import { oddRuns } from "./odd-runs.ts";
import { runEvidence, runUse } from "./run-evidence.ts";
import { sessionAssumptions, sessionFindings } from "./session-findings.ts";
import { meanMedium } from "./session-medium.ts";

export type { GlideOptions };

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
 *
 * @example The demo session: the design with the shorter raw distances glides farther from the same launch
 * ```ts
 * import { compareGlides } from "lakeproof/decide/compare-glides.ts";
 * import { openSession } from "lakeproof/read/open-session.ts";
 *
 * const session = await openSession("quillwater-evening");
 * const { answer } = compareGlides([session], { baseline: "alder", candidates: ["birch"] });
 * const [comparison] = answer.comparisons;
 * if (!(comparison!.raw!.ratio < 1 && comparison!.verdict === "candidate-better")) {
 *   throw new Error(JSON.stringify(comparison));
 * }
 * ```
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
  const order = baseline === undefined || !flown.includes(baseline)
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
    return answerWithoutLaunch(sessions, prepared, runs, [
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
    faults: faultsOf(sessions),
  };
  const flownIn = prepared.filter((one) => compared.some((run) => run.prepared === one));
  const at = { mass: launch.mass, medium: meanMedium(flownIn.map((one) => one.medium)) };
  const designs = order.map((name) =>
    designRuns(name, specs, compared.filter((one) => one.glide.design === name), at)
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
      ...answerHead(sessions, once(findings)),
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

function lawOf({ reference }: DesignRuns, level: number) {
  return { a: level * reference.a, d: level * reference.d, e: level * reference.e };
}

const distancesOf = (design: DesignRuns) =>
  design.runs.filter((one) => one.run!.inLevel).map((one) => one.run!.distance);

/** Each finding once: what concerns the baseline is found again with every candidate. */
function once(findings: readonly Finding[]): Finding[] {
  return [...new Map(findings.map((one) => [`${one.code} ${one.row} ${one.what}`, one])).values()];
}
