/**
 * Tow and glides of one design held against each other.
 *
 * @module
 */
import { type Finding, finding } from "../base/finding.ts";
import { listInWords } from "../base/sentence-words.ts";
import type { TowAgreement } from "../base/tow-traces.ts";
import type { FittedLaw } from "../fit/tow-curve.ts";
import { dot, type SymmetricThree, type Three } from "../fit/symmetric-three.ts";
import type { TowedCraft } from "../fit/tow-data.ts";
import type { TowEstimate } from "../fit/tow-series.ts";
import { dragEstimate, logBestLiftToDrag, logDrag, type LogValue } from "../fit/tow-estimates.ts";
import { singleVariance } from "../fit/tow-variance.ts";
import { traceEstimate } from "../fit/trace-series.ts";
import { combinedValue, type MeasuredValue, normalisedError } from "../infer/agreement.ts";
import type { TowedDesign } from "./design-tow.ts";
import { towQuantity } from "./tow-quantity.ts";
import type { PlainGlides } from "./plain-glides.ts";
import type { TracedDesign } from "./traced-design.ts";

/** Errors of a design's own that a tow and a glide of it share: what it pushes aside was dunked once. */
const SAME_WING: readonly string[] = ["wet volume"];

/** Speeds at which drag is compared, as shares of the way from the slowest to the fastest that both have. */
const PLACES = [0, 0.5, 1] as const;

/**
 * The same quantities of one design by tow and by glides: best lift-to-drag where both saw its speed, and drag at the
 * slowest, the middle and the fastest speed that both have.
 *
 * Both are told at the tow's lift and depth. They share the scale that weighed the rider, the wing's volume, the planform's
 * expectation, and the speed log if it has one name; those cancel. The two are combined only where all quantities agree.
 *
 * @param towed by tow
 * @param traced by glides
 * @param shares whether an error that both know by one key is one error
 * @returns one entry a quantity; none where one of the two has no law
 */
export function towAgreement(
  towed: TowedDesign,
  traced: TracedDesign,
  shares: (key: string) => boolean,
): TowAgreement[] {
  const { series } = towed;
  if (series === null || traced.series === null) return [];
  const { craft } = series.fit.data;
  const found: TowAgreement[] = [];
  const between = {
    design: towed.answer.design,
    session: towed.answer.session,
    kind: "traces",
    glideSession: traced.answer!.session,
  } as const;
  const add = (
    quantity: TowAgreement["quantity"],
    speed: number | null,
    one: TowEstimate,
    value: (fit: FittedLaw) => LogValue | null,
  ) => {
    // The glides' law in the tow's water: phi of its depth.
    const there = (fit: FittedLaw) => ({
      ...fit,
      data: { ...fit.data, craft: { ...fit.data.craft, phi: craft.phi } },
    });
    const other = traceEstimate(traced.series!, (fit) => value(there(fit)));
    if (other === null) return;
    const [here, glided] = [value(series.fit)!, value(there(traced.series!.fit))!];
    const covariance = sharedCovariance(one, other, shares) +
      planformCovariance([series.fit, here.gradient], [traced.series!.fit, glided.gradient]);
    found.push(sideBySide({ ...between, quantity, speed }, one, other, covariance));
  };
  if (towed.best?.towed && traced.best !== null) {
    add("bestLiftToDrag", null, towed.best.estimate, logBestLiftToDrag);
  }
  const from = Math.max(towed.range!.from, traced.range!.from);
  const to = Math.min(towed.range!.to, traced.range!.to);
  if (to > from) {
    for (const place of PLACES) {
      const speed = from + place * (to - from);
      const drag = dragEstimate(series, speed);
      if (drag !== null) add("drag", speed, drag, (fit) => logDrag(fit, speed));
    }
  }
  return found;
}

/**
 * Drag of one design by tow and by its plain glides, at the one speed that those tell it at.
 *
 * @param towed by tow
 * @param glides by launch, end, height and distance
 * @param glideSession theirs
 * @param shares whether an error that both know by one key is one error
 * @returns one entry, or none where the tow has no law
 */
export function glideAgreement(
  towed: TowedDesign,
  glides: PlainGlides,
  glideSession: string,
  shares: (key: string) => boolean,
): TowAgreement[] {
  const { series } = towed;
  const { speed } = glides;
  const drag = series === null ? null : dragEstimate(series, speed);
  if (series === null || drag === null) return [];
  const [, leaning] = planformChanges(series.fit, logDrag(series.fit, speed)!.gradient);
  const covariance = sharedCovariance(drag, glides.estimate, shares) +
    leaning * glides.shapeChange;
  const { design, session } = towed.answer;
  return [sideBySide(
    { design, session, kind: "glides", glideSession, quantity: "drag", speed },
    drag,
    glides.estimate,
    covariance,
  )];
}

/**
 * Nothing put together of a design's tow where one quantity shows that something else is at work.
 *
 * @param found of one tow of one design
 * @returns the same, combined only where all agree
 */
export function onlyWhereAllAgree(found: readonly TowAgreement[]): readonly TowAgreement[] {
  return found.every((one) => one.combined !== null)
    ? found
    : found.map((one) => ({ ...one, combined: null }));
}

function sideBySide(
  about: Omit<TowAgreement, "tow" | "traces" | "en" | "combined">,
  one: TowEstimate,
  other: TowEstimate,
  covariance: number,
): TowAgreement {
  const [tow, glide] = [measured(one), measured(other)];
  const unit = about.quantity === "drag" ? "N" : "1";
  const en = normalisedError(tow, glide, covariance);
  const both = Math.abs(en) <= 1 ? combinedValue(tow, glide, covariance) : null;
  return {
    ...about,
    tow: towQuantity(logOf(tow), unit),
    traces: towQuantity(logOf(glide), unit),
    en,
    combined: both === null ? null : towQuantity(logOf(both), unit),
  };
}

function measured(estimate: TowEstimate): MeasuredValue {
  const { log, variance, degreesOfFreedom } = singleVariance(estimate);
  return { value: log, variance, degreesOfFreedom };
}

const logOf = ({ value, ...rest }: MeasuredValue) => ({ log: value, ...rest });

function sharedCovariance(
  one: TowEstimate,
  other: TowEstimate,
  shares: (key: string) => boolean,
): number {
  return one.shared.reduce((sum, { name, key, change }) => {
    const twin = other.shared.find((two) =>
      key === null ? two.name === name && SAME_WING.includes(name) : two.key === key && shares(key)
    );
    return twin === undefined ? sum : sum + change * twin.change;
  }, 0);
}

/** Both lean on the same expectation of the same planform, so they lean the same way. */
function planformCovariance(
  one: readonly [LeaningFit, Three],
  other: readonly [LeaningFit, Three],
): number {
  const [a, b] = [planformChanges(...one), planformChanges(...other)];
  return a[0] * b[0] + a[1] * b[1];
}

/** Change by one standard uncertainty of what is expected of the constant, and of the lift term. */
function planformChanges(fit: LeaningFit, gradient: Three): [constant: number, liftTerm: number] {
  const { expected } = fit.data.craft;
  if (expected === null) return [0, 0];
  return [
    dot(fit.covariance[1], gradient) / expected.constant.standardUncertainty,
    dot(fit.covariance[2], gradient) /
    (expected.liftTerm.standardUncertainty / fit.referenceSpeed ** 2),
  ];
}

interface LeaningFit {
  readonly data: { readonly craft: TowedCraft };
  readonly referenceSpeed: number;
  readonly covariance: SymmetricThree;
}

/** E_n beyond which more than the uncertainties is at work. */
const AGREES = 1;

/**
 * What tow and glides of a design say of each other, in words.
 *
 * @param agreement of all designs
 * @returns one finding a design: the quantities that agree, or how far the worst lies apart and where to look first
 */
export function agreementFindings(agreement: readonly TowAgreement[]): Finding[] {
  return [...new Set(agreement.map((one) => one.design))].map((design) => {
    const all = agreement.filter((one) => one.design === design);
    const worst = all.reduce((one, other) => Math.abs(other.en) > Math.abs(one.en) ? other : one);
    const named = (one: TowAgreement) =>
      one.quantity === "bestLiftToDrag"
        ? "best lift-to-drag"
        : `drag at ${one.speed!.toFixed(2)} m/s${one.kind === "glides" ? " by plain glides" : ""}`;
    if (Math.abs(worst.en) <= AGREES) {
      return finding({
        severity: "note",
        code: "tow-and-glide-agree",
        what: `Tow and glides of ${design} agree within their uncertainties in ${
          listInWords(all.map(named))
        }. That is weak evidence: only a large disagreement would show.`,
      });
    }
    const gap = Math.abs(Math.expm1(Math.log(worst.tow.value / worst.traces.value)));
    return finding({
      severity: "warning",
      code: "tow-and-glide-differ",
      what:
        `Tow and glide of ${design} differ by ${(100 * gap).toFixed(0)} % in ${
          named(worst)
        }, more than their uncertainties; likely causes in this order: slope of the boat's waves, ` +
        "splash of the launch, scale of the load cell. They are not combined.",
      wanted: `A tow beside the wake or on a longer line; ${
        worst.kind === "traces" ? "traces that begin" : "launch speeds read"
      } after the splash.`,
    });
  });
}
