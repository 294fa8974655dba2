/**
 * Figure: predicted tow force against speed by design, with its band and the takeoff.
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
 * Tow force against speed.
 *
 * @param evidence whole
 * @param name names the files; "tow-force" unless said otherwise
 * @returns the figure, with the curves as its table
 */
export function figureTowForce(evidence: TakeoffEvidence, name = "tow-force"): FigureRecord {
  const curves = takeoffCurves(evidence, "tension");
  const takeoffs = curves.map(({ design, takeoffSpeed, atTakeoff }) =>
    `${design} at ${formatNumber(takeoffSpeed.value, 1)}${NO_BREAK_SPACE}m/s with ${
      formatNumber(atTakeoff.value, 0)
    }${NO_BREAK_SPACE}N`
  );
  const caption = curves.length === 0
    ? "No design flies under this load: there is no curve to draw."
    : `The mark is the takeoff: ${listInWords(takeoffs)}, at the depth of the whole strut; ` +
      "the bars are its 95\u00a0% intervals. " +
      "A steady tow must give at least that much. The curve begins at the stall speed, runs at running depth, and its band is the 95\u00a0% " +
      "interval of the prediction speed by speed.";
  return figureRecord({
    name,
    title: "Predicted tow force against speed",
    description: caption,
    caption,
    breakout: false,
    table: takeoffCurvesTable(curves, { name, label: "tow force", unit: "N" }),
  }, (size) => takeoffPlot(curves, size, size.narrow ? "tow force (N)" : "pull in the line (N)"));
}
