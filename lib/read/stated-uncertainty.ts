/**
 * A stated half width as a standard uncertainty.
 *
 * @module
 */
import { type StatedAs } from "../base/session.ts";

/** Two-sided 95 % point of the normal distribution. Source: NIST/SEMATECH e-Handbook 1.3.6.7.1 (1.96), more digits computed. */
const NORMAL_95 = 1.959963984540054;

/**
 * The standard uncertainty behind a stated one.
 *
 * `standard` is taken as it is; `95 %` is half of a normal 95 % interval; `limits` is the half width of an interval that
 * nobody leaves, taken as rectangular.
 *
 * Source: JCGM 100:2008 (GUM), 4.3.3 to 4.3.7.
 *
 * @param stated half width, any unit
 * @param as how it is meant
 * @returns in the same unit
 * @example
 * ```ts
 * import { standardUncertainty } from "lakeproof/read/stated-uncertainty.ts";
 * import { equal } from "node:assert/strict";
 * equal(standardUncertainty(0.5, "limits").toFixed(4), "0.2887");
 * ```
 */
export function standardUncertainty(stated: number, as: StatedAs): number {
  if (as === "95 %") return stated / NORMAL_95;
  return as === "limits" ? stated / Math.sqrt(3) : stated;
}
