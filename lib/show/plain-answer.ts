/**
 * Parts that the JSON of every answer is made of.
 *
 * @module
 */
import type { AnswerBase } from "../base/answer-base.ts";
import type { Finding } from "../base/finding.ts";
import type { Quantity } from "../base/quantity.ts";

const SIGNIFICANT_DIGITS = 12;

/** What JSON can hold. */
export type Plain = null | boolean | number | string | readonly Plain[] | {
  readonly [key: string]: Plain;
};

/**
 * A value with every number in it rounded to 12 significant digits.
 *
 * @param value anything that JSON can hold
 * @param path where it stands in the answer, for the message
 * @returns a copy
 * @throws RangeError when a number is not finite
 */
export function rounded(value: Plain, path: string): Plain {
  if (typeof value === "number") {
    if (!Number.isFinite(value)) {
      throw new RangeError(
        `Cannot write an answer as JSON as every number must be finite: ${value} at ${path}`,
      );
    }
    return Number(value.toPrecision(SIGNIFICANT_DIGITS)) + 0;
  }
  if (value === null || typeof value !== "object") return value;
  if (Array.isArray(value)) return value.map((one, index) => rounded(one, `${path}/${index}`));
  return Object.fromEntries(
    Object.entries(value).map(([key, one]) => [key, rounded(one, `${path}/${key}`)]),
  );
}

/**
 * A quantity with its keys in the contract's order.
 *
 * @param q any quantity, numbers in its own unit
 * @returns plain JSON; `null` stays
 */
export function quantityObject(q: Quantity | null): Plain {
  if (q === null) return null;
  const { value, standardUncertainty, degreesOfFreedom, low, high, level, kind, unit } = q;
  return { value, standardUncertainty, degreesOfFreedom, low, high, level, kind, unit };
}

/**
 * A finding with its keys in the contract's order.
 *
 * @param one any finding
 * @returns plain JSON
 */
export function findingObject(one: Finding): Plain {
  const { severity, code, file, row, column, count, what, wanted } = one;
  return { severity, code, file, row, column, count, what, wanted };
}

/**
 * A record with its keys in alphabetical order.
 *
 * @param record texts by key
 * @returns plain JSON
 */
export function sortedRecord(record: Readonly<Record<string, string>>): Plain {
  return Object.fromEntries(
    Object.keys(record).sort().map((key) => [key, record[key]!] as const),
  );
}

/**
 * What stands at the head of every answer, with its keys in the contract's order.
 *
 * @param answer of any question
 * @param versions software that made it, by name; what the answer already holds is kept beside them
 * @returns plain JSON by key
 */
export function headObject(
  answer: AnswerBase,
  versions: Readonly<Record<string, string>>,
): Readonly<Record<string, Plain>> {
  return {
    contract: answer.contract,
    question: answer.question,
    sessions: [...answer.sessions],
    findings: answer.findings.map(findingObject),
    versions: sortedRecord({ ...answer.versions, ...versions }),
    dataChecksums: answer.dataChecksums.map(({ file, sha256 }) => ({ file, sha256 })),
  };
}
