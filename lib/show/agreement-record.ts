/**
 * The short answer to "do tow and glides measure the same wing?", ready to be shown.
 *
 * @module
 */
import { printable } from "../base/printable.ts";
import type { AnswerRecord } from "../base/records.ts";
import { listInWords } from "../base/sentence-words.ts";
import type { TowEvidence } from "../decide/compare-tows.ts";
import { towAnswerObject } from "./tow-json.ts";
import { TOW_CAUTION } from "./tow-sentence.ts";

/** Options of the record. */
export interface AgreementRecordOptions {
  /** Names the files and the paths that prose refers to; "agreement" unless said otherwise. */
  readonly name?: string;
  /** Software that made the answer, by name. */
  readonly versions?: Readonly<Record<string, string>>;
}

/** A difference of the logarithms of at most its own 95 % uncertainty. */
const AGREES = 1;

const RESTS =
  "They agree where they differ by no more than the uncertainty of the difference, errors that both share " +
  "taken out. That is weak evidence, since wide intervals agree with anything; a disagreement is strong.";

/**
 * The record of an agreement: which designs' tows and glides agree, and which differ.
 *
 * @param evidence of the sessions that hold both
 * @param options name, versions
 * @returns plain data; show it with `show`
 *
 * @example Without both there is nothing to agree
 * ```ts
 * import { compareTows } from "lakeproof/decide/compare-tows.ts";
 * import { readSession } from "lakeproof/read/read-session.ts";
 * import { agreementRecord } from "lakeproof/show/agreement-record.ts";
 * const record = agreementRecord(compareTows(readSession("lake", new Map())));
 * if (record.verdict !== "refused") throw new Error(record.verdict);
 * ```
 */
export function agreementRecord(
  { answer }: TowEvidence,
  options: AgreementRecordOptions = {},
): AnswerRecord {
  const designs = [...new Set(answer.agreement.map((one) => one.design))];
  const differ = designs.filter((name) =>
    answer.agreement.some((one) => one.design === name && Math.abs(one.en) > AGREES)
  );
  const agree = designs.filter((name) => !differ.includes(name));
  const inWords = (names: readonly string[]) => listInWords(names.map(printable));
  const headline = designs.length === 0
    ? "No design was both towed and glided so that the two could be compared."
    : differ.length === 0
    ? `Tow and glides of ${inWords(agree)} agree within their uncertainties.`
    : `Tow and glides of ${inWords(differ)} differ by more than their uncertainties${
      agree.length === 0 ? "" : `; those of ${inWords(agree)} agree`
    }.`;
  return {
    name: options.name ?? "agreement",
    verdict: designs.length === 0 ? "refused" : "told",
    question: "Do tow and glides measure the same wing?",
    headline,
    ahead: null,
    details: answer.findings.filter((one) => one.code.startsWith("tow-and-glide"))
      .map((one) => printable(one.what)),
    rests: `${RESTS} ${TOW_CAUTION}`,
    strip: null,
    sides: ["", ""],
    tag: `${designs.length} ${
      designs.length === 1 ? "design" : "designs"
    }, ${answer.agreement.length} ${
      answer.agreement.length === 1 ? "quantity" : "quantities"
    } compared`,
    answer: towAnswerObject(answer, options.versions),
  };
}
