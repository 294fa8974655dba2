/**
 * Checks the claims that prose makes: `ratio/low>1`, `verdict=candidate-better`.
 *
 * @module
 */
import { locate } from "./answer-path.ts";
import { isQuantity } from "./prose-text.ts";

/** Whether a claim holds, or why that can't be told. */
export type ClaimCheck =
  | { readonly ok: true; readonly holds: boolean; readonly now: string }
  | { readonly ok: false; readonly reason: string };

type Comparison = "=" | "!=" | ">" | "<" | ">=" | "<=";

/** The path up to the first sign outside square brackets, the sign, and what it is compared with. */
const CLAIM = /^((?:\[[^\]]*\]|[^[=<>!])+)(>=|<=|!=|=|>|<)(.*)$/s;

function compareNumbers(left: number, sign: Comparison, right: number): boolean {
  switch (sign) {
    case "=":
      return left === right;
    case "!=":
      return left !== right;
    case ">":
      return left > right;
    case "<":
      return left < right;
    case ">=":
      return left >= right;
    case "<=":
      return left <= right;
  }
}

/**
 * Whether a claim holds for the answers shown in a notebook. A quantity counts with its value.
 *
 * @param answers the JSON of each shown answer, by name
 * @param claim a path, one of `=`, `!=`, `>`, `<`, `>=`, `<=`, and what to compare with
 * @returns whether it holds and what the value is now, or why there is nothing to compare
 *
 * @example
 * ```ts
 * import { checkClaim } from "lakeproof/publish/prose-claims.ts";
 * const check = checkClaim(new Map([["glide", { verdict: "refused" }]]), "glide/verdict=refused");
 * console.assert(check.ok && check.holds);
 * ```
 */
export function checkClaim(answers: ReadonlyMap<string, unknown>, claim: string): ClaimCheck {
  const match = CLAIM.exec(claim);
  if (match === null) {
    return {
      ok: false,
      reason: `no =, !=, >, <, >= or <= with something to compare in "${claim}"`,
    };
  }
  const [, path, sign, written] = match as unknown as [string, string, Comparison, string];
  const found = locate(answers, path.trim());
  if (!found.ok) return found;
  if (found.form !== null && found.form !== "@count") {
    return { ok: false, reason: `${found.form} is a way to write a value, not one to compare` };
  }
  const value = found.form === "@count" && Array.isArray(found.value)
    ? found.value.length
    : isQuantity(found.value)
    ? found.value.value
    : found.value;
  const wanted = written.trim();
  if (typeof value === "number") {
    const number = wanted === "" ? NaN : Number(wanted);
    if (!Number.isFinite(number)) {
      return { ok: false, reason: `${path} is a number, but "${wanted}" is not` };
    }
    return { ok: true, holds: compareNumbers(value, sign, number), now: String(value) };
  }
  if (typeof value === "object" && value !== null) {
    return { ok: false, reason: `${path} is a list or a group, not one value to compare` };
  }
  const now = String(value);
  if (sign !== "=" && sign !== "!=") {
    return value === null
      ? { ok: true, holds: false, now }
      : { ok: false, reason: `${path} is "${now}", which is not a number to compare by ${sign}` };
  }
  return { ok: true, holds: (now === wanted) === (sign === "="), now };
}
