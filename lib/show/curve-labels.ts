/**
 * Places of the labels beside the curves of a figure.
 *
 * @module
 */
import type { CurvePoint } from "../decide/glide-evidence.ts";
import { pushApart } from "./drawing.ts";

interface Place {
  readonly launchSpeed: number;
  readonly distance: number;
}

function nearest(line: readonly Place[], speed: number): Place {
  return line.reduce((a, b) =>
    Math.abs(b.launchSpeed - speed) < Math.abs(a.launchSpeed - speed) ? b : a
  );
}

/**
 * Where the designs' labels stand: at the height of their curves' ends, but in the order of the distances from the common
 * launch, since curves may end at different speeds.
 *
 * @param series one a design; its runs stand in where there is no curve
 * @param launch m/s; `null` where there is none: then by the curves' ends
 * @param pixel units from the top of a distance in m
 * @param room smallest gap and the range of places, in units
 * @returns places in units by index; none for a series without curve and runs
 */
export function curveLabelPlaces(
  series: readonly {
    readonly curve: readonly CurvePoint[];
    readonly points: readonly Place[];
  }[],
  launch: number | null,
  pixel: (distance: number) => number,
  room: { readonly gap: number; readonly low: number; readonly high: number },
): Map<number, number> {
  const drawn = series.flatMap(({ curve, points }, at) => {
    const line = curve.length > 0 ? curve : points;
    const [first] = line;
    if (first === undefined) return [];
    const end = line.reduce((a, b) => b.launchSpeed > a.launchSpeed ? b : a, first);
    const ranked = launch === null ? end : nearest(line, launch);
    return [{ at, rank: ranked.distance, end: pixel(end.distance) }];
  });
  const ends = pushApart(drawn.map((one) => one.end), room.gap, room.low, room.high);
  const downwards = [...ends].sort((a, b) => a - b);
  const byRank = [...drawn].sort((a, b) => b.rank - a.rank || a.at - b.at);
  return new Map(byRank.map((one, rank) => [one.at, downwards[rank]!]));
}
