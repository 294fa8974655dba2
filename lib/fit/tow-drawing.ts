/**
 * Uncertainty of a tow by drawing its inputs: the check on the first-order law.
 *
 * @module
 */
import { sampleQuantile } from "../infer/sample.ts";
import { chiSquareQuantile } from "../numeric/distributions.ts";
import type { SeededRandom } from "../numeric/random.ts";
import { towDrag, towedBestSpeed } from "./tow-curve.ts";
import type { TowData, TowReading } from "./tow-data.ts";
import { fitTow } from "./tow-fit.ts";
import type { SharedError, TowSeries } from "./tow-series.ts";

/** An interval on the logarithm. */
export interface DrawnInterval {
  readonly low: number;
  readonly high: number;
}

/** What drawing makes of a tow. */
export interface DrawnTow {
  /** ln of 1. */
  readonly bestLiftToDrag: DrawnInterval;
  /** ln of m/s. */
  readonly bestSpeed: DrawnInterval;
  /** Draws that gave a law with a least drag. */
  readonly used: number;
  readonly draws: number;
}

/** Share of draws that must give a law before their interval means anything. */
const ENOUGH = 0.95;

/**
 * 95 % intervals of best lift-to-drag and its speed by drawing every input and fitting anew.
 *
 * Readings scatter by what was stated for them, the pull by the scale that the fit found, which is itself uncertain and drawn
 * as such; shared errors move all readings together, those told by few readings by as much more; the planform's two expectations move by their doubts. Speeds are not
 * scaled: with few readings a drawn scale can be so large that speeds below zero would come up.
 *
 * Source: JCGM 101:2008, clause 7, on the inputs of the fit.
 *
 * @param series the fit
 * @param errors shared by its readings, as given to the fit
 * @param options random stream; how often to draw, 999 unless set
 * @returns intervals, or `null` where too few draws give a law with a least drag
 */
export function drawTow(
  series: TowSeries,
  errors: readonly SharedError[],
  options: { readonly random: SeededRandom; readonly draws?: number },
): DrawnTow | null {
  const { random, draws = 999 } = options;
  const { fit } = series;
  const nu = fit.degreesOfFreedom;
  const found: { readonly best: number; readonly speed: number }[] = [];
  for (let draw = 0; draw < draws; draw++) {
    const scale = fit.scatterScale * drawnScale(nu, random);
    const moved = drawn(fit.data, errors, { random, scale });
    if (moved === null) continue;
    const again = fitTow(moved, { scatterScale: fit.scatterScale });
    if (!again.ok) continue;
    const best = towedBestSpeed(again);
    if (best === null) continue;
    const drag = towDrag(again, best.speed);
    if (!(drag > 0)) continue;
    found.push({ best: Math.log(moved.craft.lift / drag), speed: Math.log(best.speed) });
  }
  if (found.length < ENOUGH * draws) return null;
  const interval = (values: readonly number[]): DrawnInterval => {
    const sorted = [...values].sort((a, b) => a - b);
    return { low: sampleQuantile(sorted, 0.025), high: sampleQuantile(sorted, 0.975) };
  };
  return {
    bestLiftToDrag: interval(found.map((one) => one.best)),
    bestSpeed: interval(found.map((one) => one.speed)),
    used: found.length,
    draws,
  };
}

/** A variance over its estimate with so many degrees of freedom. */
function drawnScale(degreesOfFreedom: number, random: SeededRandom): number {
  const share = (random.uniform() + 1e-12) / (1 + 2e-12);
  return degreesOfFreedom / chiSquareQuantile(share, degreesOfFreedom);
}

/** One draw of all inputs, or `null` where it leaves no positive speed or pull. */
function drawn(
  data: TowData,
  errors: readonly SharedError[],
  { random, scale }: { readonly random: SeededRandom; readonly scale: number },
): TowData | null {
  const origins = new Map<string, number>();
  for (const { knownBy } of errors) {
    if (knownBy === undefined || origins.has(knownBy.origin)) continue;
    origins.set(knownBy.origin, Math.sqrt(drawnScale(knownBy.degreesOfFreedom, random)));
  }
  const shares = errors.map(({ knownBy }) =>
    random.normal() * (knownBy === undefined ? 1 : origins.get(knownBy.origin)!)
  );
  /** A number of the inputs with all shared errors on it. */
  const shared = (of: (one: TowData) => number) =>
    errors.reduce(
      (sum, { shifted: [plus, minus] }, k) => sum + shares[k]! * (of(plus) - of(minus)) / 2,
      of(data),
    );
  const readings = data.readings.map((one, i): TowReading => {
    const { uncertainty: u } = one;
    const uSpeed = Math.hypot(u.speed.fixed, u.speed.share * one.speed);
    const uTension = Math.hypot(u.tension.fixed, u.tension.share * one.tension) * Math.sqrt(scale);
    return {
      ...one,
      speed: shared((each) => each.readings[i]!.speed) + uSpeed * random.normal(),
      tension: shared((each) => each.readings[i]!.tension) + uTension * random.normal(),
      angle: shared((each) => each.readings[i]!.angle) + u.angle * random.normal(),
      weight: shared((each) => each.readings[i]!.weight),
    };
  });
  if (!readings.every((one) => one.speed > 0 && one.tension > 0)) return null;
  const surfaces = errors.flatMap(({ shifted: [{ craft: plus }, { craft: minus }] }, k) =>
    plus.phi === minus.phi ? [] : [{ share: shares[k]!, plus: plus.phi, minus: minus.phi }]
  );
  const { expected } = data.craft;
  const part = (which: "constant" | "liftTerm") => ({
    mean: shared((each) => each.craft.expected![which].mean) +
      expected![which].standardUncertainty * random.normal(),
    standardUncertainty: expected![which].standardUncertainty,
  });
  return {
    readings,
    craft: {
      lift: shared((each) => each.craft.lift),
      // Most shared errors leave the surface as it is.
      phi: (speed) =>
        surfaces.reduce(
          (sum, { share, plus, minus }) => sum + share * (plus(speed) - minus(speed)) / 2,
          data.craft.phi(speed),
        ),
      expected: expected === null ? null : {
        constant: part("constant"),
        liftTerm: part("liftTerm"),
      },
    },
  };
}
