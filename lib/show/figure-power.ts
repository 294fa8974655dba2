/**
 * Figure: predicted power against speed by design, with its band and the takeoff.
 *
 * @module
 */
import type { FigureRecord } from "../base/records.ts";
import { formatNumber, NO_BREAK_SPACE } from "../base/rounding.ts";
import { listInWords } from "../base/sentence-words.ts";
import type { TakeoffEvidence } from "../decide/estimate-takeoff.ts";
import { figureRecord } from "./drawing.ts";
import { takeoffCurves, takeoffCurvesTable } from "./takeoff-curves.ts";
import { takeoffPlot } from "./takeoff-plot.ts";

/**
 * Power against speed.
 *
 * @param evidence whole
 * @param name names the files; "tow-power" unless said otherwise
 * @returns the figure, with the curves as its table
 */
export function figurePower(evidence: TakeoffEvidence, name = "tow-power"): FigureRecord {
  const curves = takeoffCurves(evidence, "power");
  const least = evidence.answer.designs.flatMap((one) => {
    if (one.leastPower === null || one.leastPowerSpeed === null) return [];
    const at = one.leastPowerAtStall
      ? "right at stall"
      : `at ${formatNumber(one.leastPowerSpeed.value, 1)}${NO_BREAK_SPACE}m/s`;
    return [
      `${one.design} ${formatNumber(one.leastPower.value, 0)}${NO_BREAK_SPACE}W ${at}`,
    ];
  });
  const caption = curves.length === 0
    ? "No design flies under this load: there is no curve to draw."
    : `Least power: ${
      listInWords(least)
    }. It is what the line gives to the craft, not what an engine burns. ` +
      "The mark is the takeoff, deeper than the curve; bars and bands are 95\u00a0% intervals of the prediction.";
  return figureRecord({
    name,
    title: "Predicted power against speed",
    description: caption,
    caption,
    breakout: false,
    table: takeoffCurvesTable(curves, { name, label: "power", unit: "W" }),
  }, (size) => takeoffPlot(curves, size, size.narrow ? "power (W)" : "power of the pull (W)"));
}
