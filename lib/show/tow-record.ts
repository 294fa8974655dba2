/**
 * The short answer to "how much drag has each design, at which speed?", ready to be shown.
 *
 * @module
 */
import { rowsWithFaults } from "./rests-sentence.ts";
import { printable } from "../base/printable.ts";
import type { AnswerRecord } from "../base/records.ts";
import { NO_BREAK_SPACE } from "../base/rounding.ts";
import { listInWords } from "../base/sentence-words.ts";
import type { DesignTow, TowComparison } from "../base/tow-answer.ts";
import type { TowEvidence } from "../decide/compare-tows.ts";
import { findingWords } from "./findings-text.ts";
import { currentSentence } from "./tow-current-sentence.ts";
import { namedComparison, namedTow } from "./tow-entry-name.ts";
import { familySentence } from "./tow-traces-text.ts";
import { towAnswerObject } from "./tow-json.ts";
import {
  bestSentence,
  doubtSentence,
  TOW_CAUTION,
  TOW_INTERVAL,
  towChanceSentence,
  towHeadline,
  towRatioSentence,
} from "./tow-sentence.ts";

/** Options of the record. */
export interface TowRecordOptions {
  /** Names the files and the paths that prose refers to; "tow" unless said otherwise. */
  readonly name?: string;
  /** Software that made the answer, by name. */
  readonly versions?: Readonly<Record<string, string>>;
}

/** Findings that change how the answer is read, by code. */
const TOLD = [
  "not-alternated",
  "stands-out",
  "slowest-drag-more",
  "speed-strays",
  "line-on-other-side",
  "weighted-down",
  "tow-and-glide-agree",
  "tow-and-glide-differ",
];

/** What the answer says of readings that nobody left out, of a design without a law. */
const NO_LAW = "no law from these readings";

/** Readings left out that are named one by one. */
const MOST_NAMED = 4;

const count = (n: number, noun: string) => `${n} ${noun}${n === 1 ? "" : "s"}`;

/**
 * How a comparison reads at a glance. A candidate that drags less when slow and more when fast is not ahead: neither is.
 *
 * @param one as decided
 * @returns the verdict of its box
 */
export function towVerdict(one: TowComparison): AnswerRecord["verdict"] {
  if (one.jointTest === null) return "refused";
  const [less, more] = [one.candidateLessDrag.length > 0, one.candidateMoreDrag.length > 0];
  if (less === more) return "cannot-tell-yet";
  return less ? "candidate-better" : "baseline-better";
}

/**
 * The first candidate that drags less, else the first that does so at some speeds and more at others, else the first that
 * drags more: the baseline is ahead only where no candidate drags less anywhere.
 */
function leadingOf(comparisons: readonly TowComparison[]): TowComparison | null {
  const find = (fits: (one: TowComparison) => boolean) => comparisons.find(fits);
  return find((one) => towVerdict(one) === "candidate-better") ??
    find((one) => one.candidateLessDrag.length > 0) ??
    find((one) => towVerdict(one) === "baseline-better") ??
    find((one) => towVerdict(one) === "cannot-tell-yet") ?? comparisons[0] ?? null;
}

const readingsOf = (one: DesignTow) => one.points.filter((point) => point.used).length;

function headlineOf(evidence: TowEvidence, inTurn: readonly TowComparison[]): string {
  if (inTurn.length > 0) return inTurn.map(towHeadline).join(" ");
  const [alone] = evidence.answer.designs;
  if (alone?.law) return `Only ${bestSentence(alone)}`;
  return "No answer yet: there is no towed design with a drag law.";
}

function restsOf(evidence: TowEvidence): string {
  const { answer, designs } = evidence;
  const named = answer.designs.map((one) => namedTow(evidence, one));
  const used = named.filter((one) => readingsOf(one) > 0);
  const ranges = designs.flatMap(({ range }) => range === null ? [] : [range]);
  const sweeps = new Set(
    designs.flatMap(({ series }) => series?.fit.data.readings.map((one) => one.block) ?? []),
  ).size;
  const speeds = ranges.length === 0
    ? ""
    : `, at ${Math.min(...ranges.map((one) => one.from)).toFixed(2)} to ${
      Math.max(...ranges.map((one) => one.to)).toFixed(2)
    }${NO_BREAK_SPACE}m/s`;
  const out = named.flatMap(({ design, points }) =>
    points.filter((one) => !one.used && one.reason !== NO_LAW).map((one) =>
      `reading ${printable(one.point)} of ${printable(design)}` +
      (one.reason === null ? "" : ` (${printable(one.reason).replace(/\.$/, "")})`)
    )
  );
  const faulty = rowsWithFaults(answer.findings, "tow.csv");
  const first = out.slice(0, MOST_NAMED);
  if (out.length > first.length) first.push(`${out.length - first.length} more`);
  return [
    used.length === 0 ? "There is no reading to rest on." : `Rests on ${
      listInWords(
        used.map((one) => `${count(readingsOf(one), "reading")} of ${printable(one.design)}`),
      )
    }${sweeps > 0 ? ` in ${count(sweeps, "sweep")}` : ""}${speeds}.`,
    out.length === 0
      ? used.length === 0 || faulty !== "" ? "" : "No reading was left out."
      : `Left out: ${listInWords(first)}.`,
    faulty,
    TOW_INTERVAL,
    TOW_CAUTION,
  ].filter((one) => one !== "").join(" ");
}

/** What forbids an answer, with its place and what would be right. */
function refusals({ answer }: TowEvidence): string[] {
  return answer.findings.filter((one) => one.severity === "error").slice(0, 3).map((one) => {
    const { where, what, wanted } = findingWords(one);
    return `${where === "" ? "" : `${where}: `}${what}${wanted === "" ? "" : ` Wanted: ${wanted}`}`;
  });
}

/**
 * The record of a tow answer.
 *
 * The strip shows the ratio of best lift-to-drag, which is not what the headline claims: two designs may differ at some
 * speeds and not in their best.
 *
 * @param evidence from the comparison
 * @param options name, versions
 * @returns plain data; show it with `show`
 *
 * @example Without tows there is no answer, and the box says so
 * ```ts
 * import { compareTows } from "lakeproof/decide/compare-tows.ts";
 * import { readSession } from "lakeproof/read/read-session.ts";
 * import { towRecord } from "lakeproof/show/tow-record.ts";
 * const record = towRecord(compareTows(readSession("lake", new Map())));
 * if (record.verdict !== "refused") throw new Error(record.verdict);
 * ```
 */
export function towRecord(evidence: TowEvidence, options: TowRecordOptions = {}): AnswerRecord {
  const { answer, designs } = evidence;
  const leading = leadingOf(answer.comparisons);
  const inTurn = [...answer.comparisons]
    .sort((a, b) => Number(b === leading) - Number(a === leading))
    .map((one) => namedComparison(evidence, one));
  const shown = inTurn[0] ?? null;
  const verdict = leading === null ? "refused" : towVerdict(leading);
  const aheadName = verdict === "candidate-better"
    ? leading!.candidate
    : verdict === "baseline-better"
    ? leading!.baseline
    : null;
  const aheadSession = verdict === "candidate-better"
    ? leading!.candidateSession
    : leading?.baselineSession;
  const ahead = designs.find(({ answer: one }) =>
    one.design === aheadName && one.session === aheadSession
  );
  const ratio = leading?.bestLiftToDragRatio ?? null;
  const names = new Set([
    shown?.baseline,
    ...answer.comparisons.map((one) => namedComparison(evidence, one).candidate),
  ]);
  const named = answer.designs.map((one) => namedTow(evidence, one));
  const readings = answer.designs.reduce((sum, one) => sum + readingsOf(one), 0);
  const several = answer.comparisons.length > 1;
  const sentencesOf = (one: TowComparison) => [
    several && one.jointTest !== null
      ? `${printable(one.candidate)} and ${printable(one.baseline)}: ${
        towChanceSentence(one).replace(/^C/, "c")
      }`
      : towChanceSentence(one),
    towRatioSentence(one),
  ];
  return {
    name: options.name ?? "tow",
    verdict,
    question: leading === null
      ? "How much drag does each design have, at which speed?"
      : `How much drag do ${
        listInWords([...names].map((one) => printable(one ?? "")))
      } have, at which speed?`,
    headline: headlineOf(evidence, inTurn),
    ahead: ahead === undefined ? null : { design: printable(ahead.name), place: ahead.place },
    details: [
      ...inTurn.flatMap(sentencesOf),
      familySentence(answer),
      currentSentence(answer),
      ...(verdict === "refused" ? refusals(evidence) : []),
      ...named.map(bestSentence),
      ...named.map(doubtSentence),
      ...answer.findings.filter((one) => TOLD.includes(one.code))
        .map((one) => printable(one.what)),
    ].filter((sentence) => sentence !== ""),
    rests: restsOf(evidence),
    strip: ratio === null || ratio.low === null || ratio.high === null
      ? null
      : { low: ratio.low, value: ratio.value, high: ratio.high },
    sides: leading === null
      ? ["", ""]
      : [`${printable(shown!.baseline)} better`, `${printable(shown!.candidate)} better`],
    tag: `${count(answer.designs.length, "design")}, ${count(readings, "towed reading")}`,
    answer: towAnswerObject(answer, options.versions),
  };
}
