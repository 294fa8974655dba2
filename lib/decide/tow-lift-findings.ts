/**
 * What is worth knowing about a lift curve, or about pitches that make none.
 *
 * @module
 */
import { type Finding, finding } from "../base/finding.ts";
import type { TowLiftCurve } from "../base/tow-views.ts";

const FILE = "tow.csv";

/** Pitches written in radians and read as degrees spread by so much of what they should. */
const RADIANS = Math.PI / 180;

/** How far off the expected slope a measured one must be for a word, beyond both uncertainties. */
const APART = { uncertainties: 2.6, share: 0.25 } as const;

const say = (
  severity: "warning" | "note",
  code: string,
  what: string,
  wanted: string,
  row: number | null = null,
) => finding({ severity, code, file: FILE, column: "pitch", row, what, wanted });

/** True where pitches spread by about a fifty-seventh of what the lift coefficients ask for. */
const likeRadians = (ratio: number) => ratio > 0.5 * RADIANS && ratio < 2 * RADIANS;

const IN_RADIANS = "Pitch in degrees, or [rad] after the column's name.";

/**
 * Why there is no lift curve.
 *
 * @param design its name
 * @param why in words
 * @param points that have a pitch
 * @param expected slope, 1/rad
 * @returns the finding
 */
export function noLiftCurve(
  design: string,
  why: string,
  points: readonly { readonly pitch: number; readonly liftCoefficient: number }[],
  expected: number,
): Finding {
  const range = (values: readonly number[]) => Math.max(...values) - Math.min(...values);
  const spread = range(points.map((one) => one.pitch));
  const wanted = range(points.map((one) => one.liftCoefficient)) / expected;
  return wanted > 0 && likeRadians(spread / wanted)
    ? say(
      "warning",
      "pitch-in-radians",
      `The pitches of ${design} spread by a fifty-seventh of what its lift asks for: are they in radians?`,
      IN_RADIANS,
    )
    : say(
      "note",
      "no-lift-curve",
      `No lift curve for ${design}: ${why}.`,
      "Pitch at three or more speeds, some degrees apart.",
    );
}

/**
 * Whether the slope disagrees with the planform, and the likely reason.
 *
 * @param design its name
 * @param curve measured and expected
 * @returns a finding, or `null` where they go together
 */
export function liftSlopeFinding(design: string, curve: TowLiftCurve): Finding | null {
  const { slope, expectedSlope: expected } = curve;
  const ratio = slope.value / expected.value;
  const u = Math.hypot(slope.standardUncertainty!, expected.standardUncertainty!);
  const off = Math.abs(slope.value - expected.value);
  if (off < APART.uncertainties * u || Math.abs(ratio - 1) < APART.share) return null;
  const told = `${slope.value.toFixed(1)} a radian, against ${
    expected.value.toFixed(1)
  } expected from its planform`;
  if (ratio < 0) {
    return say(
      "warning",
      "lift-falls-with-pitch",
      `The lift of ${design} falls as its pitch grows (${told}): is the sign of the pitch turned round?`,
      "Bow up counts as positive.",
    );
  }
  if (likeRadians(1 / ratio)) {
    return say(
      "warning",
      "pitch-in-radians",
      `The lift of ${design} grows by ${told}: are the pitches in radians?`,
      IN_RADIANS,
    );
  }
  return say(
    "warning",
    "lift-slope-apart",
    `The lift of ${design} grows by ${told}.`,
    ratio > 1
      ? "A look at span and area, and at what the level lay on: it must turn with the wing."
      : "A look at span and area, at a wing that twists or flexes, and at a fuselage that turns less than the board.",
  );
}

/**
 * The points of greatest pitch lift less than expected from the others.
 *
 * @param design its name
 * @param row of the first of them
 * @param deficit of their lift coefficient
 * @returns the finding
 */
export function fallsOffFinding(design: string, row: number, deficit: number): Finding {
  return say(
    "note",
    "lift-falls-off",
    `At the greatest pitch ${design} lifts less than the line of the others says, by ${
      deficit.toFixed(2)
    } of lift coefficient: does the wing begin to stall?`,
    "Readings at pitches between; care when flying slower than this.",
    row,
  );
}
