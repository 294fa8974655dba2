/**
 * What the asker may set, and which designs that makes.
 *
 * @module
 */
import { UsageError } from "../base/errors.ts";
import type { Design, Session } from "../base/session.ts";
import type { LaunchOptions } from "./common-launch.ts";

/** What the asker may set. */
export interface GlideOptions extends LaunchOptions {
  /** Design to compare against; the first of designs.csv that was flown unless named. */
  readonly baseline?: string;
  /** Designs to compare with it; all others that were flown unless named. */
  readonly candidates?: readonly string[];
  /** Smallest ratio of distances worth finding, above 1; 1.10 unless set. */
  readonly smallestRatio?: number;
}

/**
 * Refuses options that make no sense.
 *
 * @param options as given
 * @throws UsageError
 */
export function requireSense(options: GlideOptions): void {
  const positive = { "the launch speed": options.launchSpeed, "the mass": options.mass };
  for (const [name, value] of Object.entries(positive)) {
    if (value !== undefined && !(value > 0 && value < Infinity)) {
      throw new UsageError(`Cannot compare glides as ${name} must be above zero: ${value}`);
    }
  }
  const { drop, smallestRatio } = options;
  if (drop !== undefined && !(drop >= 0 && drop < Infinity)) {
    throw new UsageError(`Cannot compare glides as the drop must be zero or more: ${drop}`);
  }
  if (smallestRatio !== undefined && !(smallestRatio > 1 && smallestRatio < Infinity)) {
    throw new UsageError(
      `Cannot compare glides as the smallest ratio must be above 1: ${smallestRatio}`,
    );
  }
}

/**
 * Every design by name, in the order in which the sessions name them, with the description that comes first.
 *
 * @param sessions one or more
 * @returns designs by name
 */
export function designsOf(sessions: readonly Session[]): Map<string, Design> {
  const specs = new Map<string, Design>();
  for (const session of sessions) {
    for (const one of session.designs) if (!specs.has(one.design)) specs.set(one.design, one);
  }
  return specs;
}

/**
 * Names the asker chose, or `null` for all.
 *
 * @param specs every design by name
 * @param options as given
 * @returns names, the baseline first
 * @throws UsageError for a name that no session knows
 */
export function chosenNames(
  specs: ReadonlyMap<string, Design>,
  options: GlideOptions,
): string[] | null {
  const asked = [
    ...(options.baseline === undefined ? [] : [options.baseline]),
    ...(options.candidates ?? []),
  ];
  for (const name of asked) {
    if (!specs.has(name)) {
      throw new UsageError(
        `Cannot compare glides of ${name} as designs.csv has only: ${[...specs.keys()].join(", ")}`,
      );
    }
  }
  if (options.baseline !== undefined && options.candidates?.includes(options.baseline)) {
    throw new UsageError(
      `Cannot compare glides of ${options.baseline} with itself: baseline and candidate are the same design.`,
    );
  }
  if (options.candidates === undefined || options.baseline === undefined) return null;
  return [...new Set(asked)];
}
