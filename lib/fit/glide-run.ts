/**
 * A glide as plain numbers, and the launch that glides are moved to.
 *
 * @module
 */
import type { GlidingCraft } from "./gliding-craft.ts";

/** Standard uncertainties of one run's readings that differ from run to run. */
export interface GlideUncertainty {
  /** m/s */
  readonly launchSpeed: number;
  /** m/s */
  readonly endSpeed: number;
  /** m */
  readonly drop: number;
  /** m */
  readonly distance: number;
}

/** One run as the sums take it. */
export interface GlideRun {
  /** m/s */
  readonly launchSpeed: number;
  /** m/s */
  readonly endSpeed: number;
  /** m of height lost. */
  readonly drop: number;
  /** m */
  readonly distance: number;
  /** True where all four readings are there: the run counts for the level of drag. */
  readonly inLevel: boolean;
  /** True where the run stalled and its end speed was read: it counts for the design's own end speed. */
  readonly inEnd: boolean;
  readonly craft: GlidingCraft;
  readonly uncertainty: GlideUncertainty;
}

/** What every design is moved to. */
export interface GlideTarget {
  /** m/s */
  readonly speed: number;
  /** m of height used. */
  readonly drop: number;
  /** m/s: the end speed to glide to; `null` for the design's own. */
  readonly end: number | null;
  /** m/s2 */
  readonly gravity: number;
  /** Standard uncertainty of ln of the induced share. */
  readonly shapeUncertainty: number;
}
