/**
 * Quantiles from tail probabilities, by root finding in logarithms.
 *
 * @module
 */
import { bracketedRoot } from "./roots.ts";

/**
 * The positive argument at which a monotone probability takes a given value.
 *
 * Works on ln(argument) and ln(probability), where tails are close to straight, so that 1e-300 is as easy as 0.3. This
 * replaces ready-made inverse functions that would make the whole library ask for permission to read the environment.
 *
 * @param probability monotone function of a positive argument
 * @param target its wanted value, in (0, 1)
 * @returns the argument
 * @throws RangeError when no argument from 1e-300 to 1e300 gives the value
 * @example
 * ```ts
 * import { invertTail } from "lakeproof/numeric/invert-tail.ts";
 * import { assertAlmostEqual } from "lakeproof/base/assert.ts";
 * assertAlmostEqual(invertTail((x) => Math.exp(-x), 0.5), Math.LN2, 1e-14);
 * ```
 */
export function invertTail(probability: (x: number) => number, target: number): number {
  const goal = Math.log(target);
  // Probabilities that underflow count as the smallest double, which keeps their sign and order.
  const f = (u: number) => Math.log(Math.max(probability(Math.exp(u)), 5e-324)) - goal;
  let low = 0;
  let high = 0;
  const start = f(0);
  if (start === 0) return 1;
  for (let width = 1; width <= 1024; width *= 2) {
    low = Math.max(-690, -width);
    high = Math.min(690, width);
    if (f(low) > 0 !== start > 0) {
      high = low / 2 === -0.5 ? 0 : low / 2;
      break;
    }
    if (f(high) > 0 !== start > 0) {
      low = high / 2 === 0.5 ? 0 : high / 2;
      break;
    }
  }
  const [from, to] = low < high ? [low, high] : [high, low];
  const u = bracketedRoot(f, { low: from, high: to });
  return Math.exp(u);
}
