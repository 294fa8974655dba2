/**
 * A craft, its load and the water around it as one record of numbers.
 *
 * One record, because everything that is asked of it (a moved control, a drawn doubt, a rougher finish) is the same record with one
 * number changed.
 *
 * @module
 */

/** All numbers of a steady flight, SI. */
export interface SteadyCraft {
  /** kg, all that flies. */
  readonly mass: number;
  /** m, tip to tip. */
  readonly span: number;
  /** m2, projected. */
  readonly area: number;
  /** m3 of the wing alone; struts come on top by their depth. */
  readonly wingVolume: number;
  /** Thickness over chord of the wing, 1. */
  readonly thicknessRatio: number;
  /** Largest lift coefficient of the wing (about nine tenths of its section's) at the Reynolds number beside it, 1. */
  readonly largestLiftCoefficient: number;
  /** Reynolds number at which it is stated, 1. */
  readonly liftReference: number;
  /** Power of the Reynolds number that it grows with, 1. */
  readonly liftExponent: number;
  /** Share of it that a takeoff uses, 1. */
  readonly usableShare: number;
  readonly strutCount: number;
  /** m */
  readonly strutChord: number;
  /** m */
  readonly strutThickness: number;
  /** m of the wing under the surface when running. */
  readonly runningDepth: number;
  /** m of it when the board has just come clear: the deepest that the wing ever flies. */
  readonly takeoffDepth: number;
  /** Span efficiency of the loading, 1. */
  readonly spanEfficiency: number;
  /** Growth of section drag with lift, 1. */
  readonly viscousLiftFactor: number;
  /** Lift coefficient of least section drag, 1. */
  readonly liftCoefficientOfLeastDrag: number;
  /** Reynolds number at which the flow turns turbulent, 1. */
  readonly transitionReynolds: number;
  /** m: grains of a rough finish; 0 for a smooth one. */
  readonly roughness: number;
  /** m2 of rider and board in the air. */
  readonly airDragArea: number;
  /** m2: drag area of anything else under water. */
  readonly extraDragArea: number;
  /** Factors on what the formulas add, 1 each at best knowledge: see `Departures`. */
  readonly wingForm: number;
  readonly strutForm: number;
  readonly spray: number;
  readonly junction: number;
  readonly surface: number;
  /** K */
  readonly temperature: number;
  /** kg/kg */
  readonly salinity: number;
  /** Density over what temperature and salinity say, 1. */
  readonly densityFactor: number;
  /** m/s2 */
  readonly gravity: number;
  /** m above the sea, of the water. */
  readonly altitude: number;
  /** rad of a tow line above the horizontal. */
  readonly lineAngle: number;
  /** m/s of wind from ahead. */
  readonly headwind: number;
}
