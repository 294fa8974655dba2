/**
 * The free-surface factor of one wing at one depth, tabulated for the many speeds that a glide's sums ask for.
 *
 * @module
 */
import { type EllipticLine, ellipticLinePhi } from "../model/free-surface.ts";

/** Nodes of the table: 2e-6 of phi for spans up to 2 m, 1.4e-5 at 4 m. */
const COUNT = 16;

/** m/s: speeds between which the table stands; the formula itself serves outside. */
const SLOWEST = 1.2, FASTEST = 12;

const NODES = Array.from({ length: COUNT }, (_, i) => Math.cos(Math.PI * (i + 0.5) / COUNT));
const COSINES = Array.from(
  { length: COUNT },
  (_, k) =>
    Array.from({ length: COUNT }, (_, i) => Math.cos(Math.PI * k * (i + 0.5) / COUNT) * 2 / COUNT),
);

/**
 * phi as a function of speed alone, by Chebyshev series in `asinh(sqrt(g b)/v)`, in which phi is smooth from the slowest
 * speeds to the fastest.
 *
 * Good to 2e-6 of phi between 1.2 and 12 m/s for spans up to 2 m (1.4e-5 at 4 m), far below the 15 % of phi - 1 that
 * the model itself is in doubt, and many times faster than the integral.
 *
 * @param line span and depth in m
 * @param gravity m/s2
 * @returns phi by speed in m/s
 * @throws RangeError when span, depth or gravity is not above zero
 *
 * @example
 * ```ts
 * import { phiTable } from "lakeproof/fit/phi-table.ts";
 * import { ellipticLinePhi } from "lakeproof/model/free-surface.ts";
 *
 * const line = { span: 1.1, depth: 0.35 };
 * const gap = phiTable(line, 9.81)(3.3) / ellipticLinePhi(line)(3.3, 9.81) - 1;
 * if (Math.abs(gap) > 2e-6) throw new Error(`unexpected ${gap}`);
 * ```
 */
export function phiTable(line: EllipticLine, gravity: number): (speed: number) => number {
  const exact = ellipticLinePhi(line);
  if (line.depth === Infinity) return () => 1;
  const scale = Math.sqrt(gravity * line.span);
  const left = Math.asinh(scale / FASTEST);
  const half = (Math.asinh(scale / SLOWEST) - left) / 2;
  const values = NODES.map((x) => exact(scale / Math.sinh(left + half * (x + 1)), gravity));
  const series = new Float64Array(COUNT);
  for (let k = 0; k < COUNT; k++) {
    let sum = 0;
    for (let i = 0; i < COUNT; i++) sum += COSINES[k]![i]! * values[i]!;
    series[k] = sum;
  }
  return (speed) => {
    if (!(speed >= SLOWEST && speed <= FASTEST)) return exact(speed, gravity);
    const x = (Math.asinh(scale / speed) - left) / half - 1;
    let here = 0, before = 0;
    for (let k = COUNT - 1; k > 0; k--) {
      const next = 2 * x * here - before + series[k]!;
      before = here;
      here = next;
    }
    return x * here - before + series[0]! / 2;
  };
}
