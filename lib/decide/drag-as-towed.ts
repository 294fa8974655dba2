/**
 * Drag at the speeds towed where there is no law: means of the readings, no curve between them.
 *
 * @module
 */
import type { SpeedDrag } from "../base/tow-answer.ts";
import { type TowData, towedDrag, type TowReading } from "../fit/tow-data.ts";
import { singleVariance } from "../fit/tow-variance.ts";
import { meanOf, varianceOf } from "../infer/sample.ts";
import type { PreparedDesignTow } from "./tow-errors.ts";
import { towQuantity } from "./tow-quantity.ts";

/**
 * Mean drag of the readings of each speed, with what they share.
 *
 * As towed: the line carries a part of the lift, so this is a few per cent less than the drag of the craft on its own below
 * the best speed. The scatter of repeats can widen what was stated for them, never narrow it.
 *
 * @param ready a design's readings with their shared errors
 * @returns one entry a speed, slowest first; empty where a mean drag is not above zero
 */
export function dragAsTowed({ data, errors }: PreparedDesignTow): SpeedDrag[] {
  const groups = [...new Set(data.readings.map((one) => one.group))];
  const found = groups.flatMap((group): SpeedDrag[] => {
    const of = (one: TowData) => one.readings.filter((reading) => reading.group === group);
    const mean = (one: TowData) => meanOf(of(one).map(towedDrag));
    const readings = of(data);
    const drag = mean(data);
    if (!(drag > 0)) return [];
    const count = readings.length;
    const stated = meanOf(readings.map(statedVariance)) / count;
    const seen = count > 1 ? varianceOf(readings.map(towedDrag)) / count : 0;
    const scattered = seen > stated;
    const estimate = {
      log: Math.log(drag),
      dataVariance: scattered ? seen / drag ** 2 : 0,
      dataDegreesOfFreedom: Math.max(1, count - 1),
      planformVariance: scattered ? 0 : stated / drag ** 2,
      sweepVariance: 0,
      sweepDegreesOfFreedom: 0,
      shared: errors.map(({ name, key, shifted: [plus, minus] }) => ({
        name,
        key,
        change: (mean(plus) - mean(minus)) / (2 * drag),
      })),
    };
    return [{
      speed: meanOf(readings.map((one) => one.speed)),
      drag: towQuantity(singleVariance(estimate), "N"),
    }];
  });
  return found.sort((one, other) => one.speed - other.speed);
}

function statedVariance({ tension, angle, uncertainty }: TowReading): number {
  const uTension = Math.hypot(uncertainty.tension.fixed, uncertainty.tension.share * tension);
  return (Math.cos(angle) * uTension) ** 2 + (tension * Math.sin(angle) * uncertainty.angle) ** 2;
}
