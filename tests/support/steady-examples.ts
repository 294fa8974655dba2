/** The invented craft of `tests/golden/steady-flight.py`. */
import type { SteadyCraft } from "lakeproof/model/steady-craft.ts";
import { USUAL_CRAFT } from "lakeproof/model/usual-craft.ts";

/** Gravity at 50 degrees, and what all three share. */
const COMMON: SteadyCraft = {
  ...USUAL_CRAFT,
  gravity: 9.8107021356,
  liftCoefficientOfLeastDrag: 0.2,
};

/** 88 kg on 0.15 m2 in a lake of 15 degrees. */
export const SMALL: SteadyCraft = {
  ...COMMON,
  mass: 88,
  span: 0.9,
  area: 0.15,
  wingVolume: 0.0016,
  largestLiftCoefficient: 1.05,
  runningDepth: 0.4,
  takeoffDepth: 0.65,
};

/** 92 kg under a wing of 3.8 m in the sea at 20 degrees, on a line that slopes down by 8 degrees. */
export const WIDE: SteadyCraft = {
  ...COMMON,
  mass: 92,
  span: 3.8,
  area: 0.55,
  wingVolume: 0.007,
  largestLiftCoefficient: 1,
  strutCount: 2,
  strutChord: 0.1,
  strutThickness: 0.012,
  runningDepth: 0.3,
  takeoffDepth: 0.45,
  temperature: 293.15,
  // Practical salinity 35.
  salinity: 0.03516504,
  lineAngle: -8 * Math.PI / 180,
};

/** A light rider on the wide wing, level line: its drag has a hump. */
export const LIGHT: SteadyCraft = { ...WIDE, mass: 75, lineAngle: 0 };
