/**
 * What a published check is: a value that someone else has published, the inputs it belongs to, and how close we must come.
 *
 * @module
 */
import type { PublishedValue } from "../base/published-value.ts";

export type { Certainty, PublishedValue } from "../base/published-value.ts";

/** A published value with ours beside it. */
export interface CheckResult extends PublishedValue {
  /** `null` where our function refused. */
  readonly ours: number | null;
  /** Ours less published; `null` where our function refused. */
  readonly difference: number | null;
  readonly agrees: boolean;
  /** Why there is no value of ours; `null` when there is one. */
  readonly reason: string | null;
}

/** The inputs of a row, by name. */
export interface CheckInputs {
  /** One number; throws when it is missing or a list. */
  number(name: string): number;
  /** A list of numbers; throws when it is missing. */
  list(name: string): readonly number[];
  /** A word; throws when it is missing. */
  text(name: string): string;
}

/** Computes one quantity of a check; throws a RangeError for a quantity it does not know. */
export type PublishedCheck = (inputs: CheckInputs, quantity: string) => number;

/**
 * The inputs of a row from their text.
 *
 * @param text `name=value; name=value`
 * @returns readers by name
 * @throws RangeError from the readers, when a name is missing or not a number
 * @example
 * ```ts
 * import { checkInputs } from "lakeproof/decide/published-check.ts";
 * const inputs = checkInputs("t=21.5 22.0; t0=20");
 * if (inputs.number("t0") !== 20 || inputs.list("t").length !== 2) throw new Error("misread");
 * ```
 */
export function checkInputs(text: string): CheckInputs {
  const parts = new Map(
    text.split(";").map((part) => part.trim()).filter((part) => part !== "").map((part) => {
      const at = part.indexOf("=");
      return [part.slice(0, at).trim(), part.slice(at + 1).trim()] as const;
    }),
  );
  const word = (name: string): string => {
    const value = parts.get(name);
    if (value === undefined) {
      throw new RangeError(`Cannot run the check as it needs the input ${name}: ${text}`);
    }
    return value;
  };
  const list = (name: string): readonly number[] =>
    word(name).split(/\s+/).map((piece) => {
      const value = Number(piece);
      if (piece === "" || !Number.isFinite(value)) {
        throw new RangeError(`Cannot run the check as ${name} must be numbers: ${word(name)}`);
      }
      return value;
    });
  return {
    text: word,
    list,
    number(name) {
      const values = list(name);
      if (values.length !== 1) {
        throw new RangeError(`Cannot run the check as ${name} must be one number: ${word(name)}`);
      }
      return values[0]!;
    },
  };
}

/**
 * Throws the error for a quantity that a check does not know.
 *
 * @param check name of the check
 * @param quantity that the row asks for
 * @throws RangeError always, with both names
 */
export function unknownQuantity(check: string, quantity: string): never {
  throw new RangeError(`Cannot run the check ${check} as it has no quantity "${quantity}"`);
}

/**
 * The named one of several results: for checks whose quantities all come from one computation.
 *
 * @param results by quantity
 * @param quantity the wanted one
 * @returns its value
 * @throws RangeError when there is none of that name
 */
export function quantityOf(results: Readonly<Record<string, number>>, quantity: string): number {
  return Object.hasOwn(results, quantity)
    ? results[quantity]!
    : unknownQuantity(`with ${Object.keys(results).join(", ")}`, quantity);
}
