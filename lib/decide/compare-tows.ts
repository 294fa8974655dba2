/**
 * Drag of towed designs against speed, and whether they differ.
 *
 * @module
 */
import { CONTRACT } from "../base/answers.ts";
import { UsageError } from "../base/errors.ts";
import { type Finding, finding } from "../base/finding.ts";
import type { Session } from "../base/session.ts";
import type { DesignTow, TowAnswer } from "../base/tow-answer.ts";
import { dataFaults, faultsOf } from "./data-faults.ts";
import { answerHead } from "./answer-head.ts";
import { type TowedDesign, towedDesign } from "./design-tow.ts";
import { designsOf } from "./glide-options.ts";
import { agreementFindings } from "./tow-agreement.ts";
import { besideGlides, GLIDES_REST_ON, type TowEntry } from "./tow-beside-glides.ts";
import { towSessionFindings } from "./tow-session-findings.ts";
import { comparePairs, pairFindings, type TowPair } from "./tow-pairs.ts";
import { towedDesigns } from "./tow-readings.ts";
import { differingDesigns, prepareTows } from "./tow-sessions.ts";
import { prepareTraces } from "./trace-runs.ts";
import { type TracedDesign, tracedDesign } from "./traced-design.ts";

/** What the asker may set. */
export interface TowOptions {
  /** Design to compare against; the first of designs.csv that was towed unless named. */
  readonly baseline?: string;
  /** Designs to compare with it; all others that were towed unless named. */
  readonly candidates?: readonly string[];
  /** How often to draw all inputs, as a check on the first-order intervals; not at all unless set. 499 take a second or so. */
  readonly draws?: number;
  /** True to tell the robust view beside: readings far off the law count for little in it. */
  readonly robust?: boolean;
}

export type { TowPair };

/** An answer with everything behind it. */
export interface TowEvidence {
  /** The contract's object; `versions` is empty here and filled where the software is known. */
  readonly answer: TowAnswer;
  readonly designs: readonly TowedDesign[];
  readonly pairs: readonly TowPair[];
  /** One a design, in their order: what the traces of its glides say; `null` where it has none. */
  readonly traced: readonly (TracedDesign | null)[];
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
 * Drag law, best lift-to-drag and its speed of each towed design, and where two of them differ.
 *
 * Everything is of the **whole craft** at the same carried mass. Best lift-to-drag stands in the headline only as what the
 * speeds towed can tell: two-sided inside them, a lower bound outside. "Which is better" may have no single answer: one
 * drags less when slow, the other when fast, and the band over speed says from where to where.
 *
 * Where the tables hold errors, or a unit has slipped, there is no law that looks fine, but a finding that says what to put
 * right.
 *
 * Several sessions stay apart: a design towed in two has an entry for each, and whatever readings of one session share
 * counts as that session's own against another, unless instruments.csv names one instrument in both.
 *
 * @param asked a session, or several, as read
 * @param options baseline and candidates
 * @returns the answer with its evidence
 * @throws UsageError for a design that no session knows
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
export function compareTows(
  asked: Session | readonly Session[],
  options: TowOptions = {},
): TowEvidence {
  const sessions = "designs" in asked ? [asked] : asked;
  const several = sessions.length > 1;
  const names = [...designsOf(sessions).keys()];
  requireSense(names, options);
  const findings: Finding[] = [];
  const say = (session: Session, found: readonly Finding[]) =>
    findings.push(
      ...found.map((one) =>
        several && one.file !== null ? { ...one, file: `${session.name}/${one.file}` } : one
      ),
    );
  const prepared = prepareTows(sessions);
  const towed = prepared.flatMap((one) => {
    const { session } = one;
    const faults = faultsOf([session], RESTS_ON);
    if (faults.length > 0 && (session.tow.length > 0 || !several)) {
      say(session, [finding({ severity: "error", file: "tow.csv", ...dataFaults(faults) })]);
    }
    say(session, towSessionFindings(one));
    return towedDesigns(one).map((design) => ({ one, design, faulty: faults.length > 0 }));
  });
  const flown = sessions.flatMap((session) =>
    session.traces.length === 0 || faultsOf([session], GLIDES_REST_ON).length > 0
      ? []
      : [prepareTraces(session)]
  );
  const baseline = options.baseline ?? towed[0]?.design.spec.design ??
    names.find((name) =>
      flown.some((one) => one.traces.some(({ glide }) => glide.design === name))
    );
  const chosen = (name: string) =>
    name === baseline || options.candidates === undefined || options.candidates.includes(name);
  const first = (one: { readonly answer: { readonly design: string } }) =>
    Number(one.answer.design === baseline);
  const entries: TowEntry[] = towed
    .filter(({ design }) => chosen(design.spec.design))
    .map(({ one, design, faulty }) => ({
      towed: towedDesign(one, { ...design, place: names.indexOf(design.spec.design) + 1 }, {
        faulty,
        ...(options.draws === undefined ? {} : { draws: options.draws }),
        ...(options.robust === undefined ? {} : { robust: options.robust }),
      }),
      prepared: one,
      traced: null,
    }));
  entries.sort((one, other) => first(other.towed) - first(one.towed));
  entries.forEach((one) => say(one.prepared.session, one.towed.findings));
  const mass = prepared[0]?.referenceMass ?? null;
  for (const traces of flown) {
    const { session } = traces;
    for (const spec of session.designs.filter((one) => chosen(one.design))) {
      const traced = tracedDesign(traces, spec, mass);
      if (traced === null) continue;
      say(session, traced.findings);
      const same = entries.filter((one) => one.towed.answer.design === spec.design);
      const place = same.find((one) => one.prepared.session === session) ??
        same.find((one) => one.traced === null);
      if (place !== undefined) place.traced = traced;
      else {
        // Glided only: an entry without readings.
        const here = prepared[sessions.indexOf(session)]!;
        const design = { spec, place: names.indexOf(spec.design) + 1, points: [] };
        entries.push({
          towed: towedDesign(here, design, { faulty: true }),
          prepared: here,
          traced,
        });
      }
    }
  }
  if (several) findings.push(...differingDesigns(sessions));
  if (entries.length > 0 && towed.length === 0) {
    findings.push(finding({
      severity: "note",
      code: "glided-only",
      what: "There is no towed reading: all that is told rests on the speed traces of glides.",
      wanted: "A tow, for the drag at each speed within a few per cent.",
    }));
  }
  if (entries.length === 0) {
    findings.push(finding({
      severity: "error",
      code: "no-tows",
      file: several ? null : "tow.csv",
      what: "There is no towed reading of a design yet.",
      wanted: "Speed, line tension and line angle at five or more speeds of each design.",
    }));
  }
  const designs = entries.map(({ towed, traced }): TowedDesign => ({
    ...towed,
    name: entryName(towed.answer, entries.map((one) => one.towed.answer)),
    answer: { ...towed.answer, fromTraces: traced?.answer ?? null },
  }));
  const pairs = comparePairs(
    designs.map((one, i) => ({ towed: one, prepared: entries[i]!.prepared })),
    baseline,
  );
  findings.push(...pairs.flatMap(pairFindings));
  const agreement = entries.flatMap((one) => besideGlides(one, sessions));
  findings.push(...agreementFindings(agreement));
  return {
    answer: {
      contract: CONTRACT,
      question: "tow",
      sessions: sessions.map((one) => one.name),
      findings,
      versions: {},
      dataChecksums: answerHead(sessions, []).dataChecksums,
      designs: designs.map((one) => one.answer),
      comparisons: pairs.map((one) => one.answer),
      current: prepared.flatMap(({ currents }) => currents.blocks.map((one) => one.answer)),
      agreement,
    },
    designs,
    pairs,
    traced: entries.map((one) => one.traced),
  };
}

/** A design's name, with its session where it has another entry. */
function entryName(one: DesignTow, all: readonly DesignTow[]): string {
  const alike = all.filter((other) => other.design === one.design);
  return alike.length > 1 ? `${one.design} (${one.session})` : one.design;
}

function requireSense(names: readonly string[], options: TowOptions): void {
  for (const name of [options.baseline, ...(options.candidates ?? [])]) {
    if (name !== undefined && !names.includes(name)) {
      throw new UsageError(`Cannot answer on ${name} as designs.csv has only: ${names.join(", ")}`);
    }
  }
  const { draws } = options;
  if (draws !== undefined && !(Number.isInteger(draws) && draws >= 100)) {
    throw new UsageError(`Cannot draw ${draws} times: a whole number of 100 or more is needed`);
  }
  if (options.baseline !== undefined && options.candidates?.includes(options.baseline)) {
    throw new UsageError(`Cannot compare ${options.baseline} with itself`);
  }
}
