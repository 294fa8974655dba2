/**
 * Table of how well a speed is known from two marks and a camera, for the field guide.
 *
 * @module
 */
import { formatNumber, formatPercent } from "../base/rounding.ts";
import type { TableRecord } from "../base/records.ts";
import { timedSpeedUncertainty } from "../model/timed-speed.ts";
import { formattedCell, numberCell } from "./table-cells.ts";
import { right } from "./table-columns.ts";

/** What the table spans. */
export interface TimedSpeedChoice {
  /** m/s, the speed that is timed. */
  readonly speed: number;
  /** m between the marks, a row each. */
  readonly spacings: readonly number[];
  /** Pictures a second, a column each. */
  readonly frameRates: readonly number[];
  /** Standard uncertainty of the spacing as a share; 1 % by default (a tape, and the camera not quite square). */
  readonly spacingShare?: number;
}

/**
 * Standard uncertainty of a timed speed for each spacing and frame rate.
 *
 * @param choice speed in m/s, spacings in m, frame rates a second
 * @returns a table with one row a spacing
 */
export function timedSpeedTable(choice: TimedSpeedChoice): TableRecord {
  const share = choice.spacingShare ?? 0.01;
  return {
    name: "timed-speed",
    caption:
      `The further apart the marks and the faster the camera, the better: standard uncertainty of a speed near ` +
      `${formatNumber(choice.speed, 0)}\u00a0m/s, with the spacing good to ${
        formatPercent(share)
      }.`,
    columns: [
      right("marks apart", "m"),
      ...choice.frameRates.map((rate) => right(`${rate} pictures a second`, "m/s")),
    ],
    rows: choice.spacings.map((spacing) => [
      formattedCell(String(spacing), spacing),
      ...choice.frameRates.map((frameRate) => {
        const u = timedSpeedUncertainty({
          spacing,
          spacingUncertainty: share * spacing,
          frameRate,
          speed: choice.speed,
        });
        return numberCell(u, 2);
      }),
    ]),
  };
}
