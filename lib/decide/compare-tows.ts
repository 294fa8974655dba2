/**
 * Drag of towed designs against speed, and whether they differ.
 *
 * @module
 */
import { CONTRACT } from "../base/answers.ts";
import { UsageError } from "../base/errors.ts";
import { type Finding, finding } from "../base/finding.ts";
import type { Session } from "../base/session.ts";
import type { TowAnswer, TowComparison } from "../base/tow-answer.ts";
import { compareDrag, type DragComparison } from "../fit/tow-band.ts";
import { ratioVariance } from "../fit/tow-variance.ts";
import { dataFaults, faultsOf } from "./data-faults.ts";
import { type TowedDesign, towedDesign } from "./design-tow.ts";
import { towSessionFindings } from "./tow-session-findings.ts";
import { towQuantity } from "./tow-quantity.ts";
import { alternated, prepareTow, towedDesigns } from "./tow-readings.ts";

/** What the asker may set. */
export interface TowOptions {
  /** Design to compare against; the first of designs.csv that was towed unless named. */
  readonly baseline?: string;
  /** Designs to compare with it; all others that were towed unless named. */
  readonly candidates?: readonly string[];
  /** How often to draw all inputs, as a check on the first-order intervals; not at all unless set. 499 take a second or so. */
  readonly draws?: number;
}

/** Two designs compared, with the band behind the answer. */
export interface TowPair {
  readonly answer: TowComparison;
  /** `null` where a law is missing, or no speed is common to both. */
  readonly band: DragComparison | null;
  /** True where both took turns behind the boat. */
  readonly alternated: boolean;
}

/** An answer with everything behind it. */
export interface TowEvidence {
  /** The contract's object; `versions` is empty here and filled where the software is known. */
  readonly answer: TowAnswer;
  readonly designs: readonly TowedDesign[];
  readonly pairs: readonly TowPair[];
}

/** Tables that a tow rests on. */
const RESTS_ON: readonly (string | null)[] = [
  "designs.csv",
  "tow.csv",
  "calibrations.csv",
  "conditions.csv",
  "instruments.csv",
  null,
];

/**
 * Standard uncertainty, as a share of the drag, of what a day does to one design alone (wake, chop, trim) where designs did
 * not take turns. Assumed, not measured.
 */
const DAY = 0.02;

/**
 * Drag law, best lift-to-drag and its speed of each towed design of a session, and where two of them differ.
 *
 * Everything is of the **whole craft** at the same carried mass. Best lift-to-drag stands in the headline only as what the
 * speeds towed can tell: two-sided inside them, a lower bound outside. "Which is better" may have no single answer: one
 * drags less when slow, the other when fast, and the band over speed says from where to where.
 *
 * Where the tables hold errors, or a unit has slipped, there is no law that looks fine, but a finding that says what to put
 * right.
 *
 * @param session as read
 * @param options baseline and candidates
 * @returns the answer with its evidence
 * @throws UsageError for a design that the session does not know
 *
 * @example A session without tows has no law, and says so
 * ```ts
 * import { compareTows } from "lakeproof/decide/compare-tows.ts";
 * import { readSession } from "lakeproof/read/read-session.ts";
 *
 * const { answer } = compareTows(readSession("lake", new Map()));
 * if (answer.findings.at(-1)?.code !== "no-tows") throw new Error(JSON.stringify(answer.findings));
 * ```
 */
export function compareTows(session: Session, options: TowOptions = {}): TowEvidence {
  for (const name of [options.baseline, ...(options.candidates ?? [])]) {
    if (name !== undefined && !session.designs.some((one) => one.design === name)) {
      throw new UsageError(
        `Cannot answer on ${name} as designs.csv has only: ${
          session.designs.map((one) => one.design).join(", ")
        }`,
      );
    }
  }
  const { draws } = options;
  if (draws !== undefined && !(Number.isInteger(draws) && draws >= 100)) {
    throw new UsageError(`Cannot draw ${draws} times: a whole number of 100 or more is needed`);
  }
  if (options.baseline !== undefined && options.candidates?.includes(options.baseline)) {
    throw new UsageError(`Cannot compare ${options.baseline} with itself`);
  }
  const faults = faultsOf([session], RESTS_ON);
  const findings: Finding[] = [];
  if (faults.length > 0) {
    findings.push(finding({ severity: "error", file: "tow.csv", ...dataFaults(faults) }));
  }
  const prepared = prepareTow(session);
  findings.push(...towSessionFindings(prepared));
  const towed = towedDesigns(prepared);
  const baseline = options.baseline ?? towed[0]?.spec.design;
  const asked = (name: string) =>
    name === baseline || options.candidates === undefined || options.candidates.includes(name);
  const designs = towed.filter((one) => asked(one.spec.design))
    .map((one) =>
      towedDesign(prepared, one, {
        faulty: faults.length > 0,
        ...(options.draws === undefined ? {} : { draws: options.draws }),
      })
    )
    .sort((one, other) =>
      Number(other.answer.design === baseline) - Number(one.answer.design === baseline)
    );
  findings.push(...designs.flatMap((one) => one.findings));
  if (designs.length === 0) {
    findings.push(finding({
      severity: "error",
      code: "no-tows",
      file: "tow.csv",
      what: "There is no towed reading of a design yet.",
      wanted: "Speed, line tension and line angle at five or more speeds of each design.",
    }));
  }
  const [first, ...others] = designs;
  const pairs = first === undefined || first.answer.design !== baseline
    ? []
    : others.map((other) => {
      const turns = alternated(prepared, [first.answer.design, other.answer.design]);
      const pair = comparePair(first, other, turns);
      findings.push(...pairFindings(pair));
      return pair;
    });
  return {
    answer: {
      contract: CONTRACT,
      question: "tow",
      sessions: [session.name],
      findings,
      versions: {},
      dataChecksums: session.checksums,
      designs: designs.map((one) => one.answer),
      comparisons: pairs.map((one) => one.answer),
    },
    designs,
    pairs,
  };
}

function comparePair(baseline: TowedDesign, candidate: TowedDesign, turns: boolean): TowPair {
  const names = { baseline: baseline.answer.design, candidate: candidate.answer.design };
  const dayShare = turns ? 0 : DAY;
  const [one, two] = [baseline.best, candidate.best];
  const inside = one !== null && two !== null && one.where === null && two.where === null;
  const bestLiftToDragRatio = !inside ? null : towQuantity(
    ratioVariance(one.estimate, two.estimate, {
      alternated: turns,
      dayVariance: 2 * dayShare ** 2,
    }),
    "1",
  );
  const band = bandOf(baseline, candidate, dayShare);
  return {
    answer: {
      ...names,
      bestLiftToDragRatio,
      candidateLessDrag: band?.candidateLess ?? [],
      candidateMoreDrag: band?.candidateMore ?? [],
      jointTest: band === null ? null : { ...band.jointTest, numerator: 3 },
    },
    band,
    alternated: turns,
  };
}

function bandOf(
  baseline: TowedDesign,
  candidate: TowedDesign,
  dayShare: number,
): DragComparison | null {
  if (baseline.series === null || candidate.series === null) return null;
  const range = {
    from: Math.max(baseline.range!.from, candidate.range!.from),
    to: Math.min(baseline.range!.to, candidate.range!.to),
  };
  if (!(range.to > range.from)) return null;
  const band = compareDrag(baseline.series, candidate.series, { range, dayShare });
  return band.ok ? band : null;
}

function pairFindings({ answer, band, alternated }: TowPair): Finding[] {
  const { baseline, candidate } = answer;
  const found: Finding[] = [];
  if (band === null) {
    found.push(finding({
      severity: "warning",
      code: "no-comparison",
      file: "tow.csv",
      what: `${baseline} and ${candidate} are not compared: both need a law, and speeds in common.`,
    }));
  } else if (!alternated) {
    found.push(finding({
      severity: "warning",
      code: "not-alternated",
      file: "tow.csv",
      what:
        `${baseline} and ${candidate} did not take turns behind the boat, so the day may be the ` +
        `difference: ${
          DAY * 100
        } % of each drag is allowed for that, and a claim under 6 % is out of reach.`,
      wanted: "Designs in turn, sweep by sweep.",
    }));
  }
  return found;
}
