/**
 * Lakeproof: evidence from the water for people who build their own hydrofoils. This is what notebooks import.
 *
 * @module
 */
export * from "./base/answers.ts";
export * from "./base/errors.ts";
export * from "./base/finding.ts";
export * from "./base/quantity.ts";
export * from "./base/records.ts";
export * from "./base/session.ts";
export * from "./base/tables.ts";
export { formatInterval, formatPlusMinus, formatQuantity } from "./base/rounding.ts";

export { answerable } from "./check/answerable.ts";
export { checkSession } from "./check/check-session.ts";
export { columnUncertainty } from "./check/column-uncertainty.ts";

export { compareTows, type TowEvidence, type TowOptions } from "./decide/compare-tows.ts";
export { compareGlides, type GlideOptions } from "./decide/compare-glides.ts";
export { estimateTakeoff, type TakeoffEvidence } from "./decide/estimate-takeoff.ts";
export type * from "./decide/glide-evidence.ts";
export { distributionDigits } from "./decide/published-checks/distribution-digits.ts";
export { linearDigits, nonlinearDigits } from "./decide/published-checks/certified-digits.ts";
export { runPublishedChecks } from "./decide/published-checks.ts";
export type { TakeoffOptions } from "./decide/takeoff-setting.ts";

export { calibratedValue, calibrationLine } from "./fit/calibration-line.ts";
export { zeroDrift } from "./fit/zero-drift.ts";

export { bootstrapInterval } from "./infer/bootstrap.ts";
export { fitReport, formatFitReport } from "./infer/fit-report.ts";
export { lineWithErrors } from "./infer/line-with-errors.ts";
export { meanInterval } from "./infer/mean-interval.ts";
export { pairedPermutationTest, permutationTest } from "./infer/permutation.ts";
export { propagate } from "./infer/propagate.ts";
export { propagateByDrawing } from "./infer/propagate-by-drawing.ts";
export { welchComparison } from "./infer/welch.ts";

export { linearLeastSquares } from "./numeric/linear-least-squares.ts";
export { nonlinearLeastSquares } from "./numeric/nonlinear-least-squares.ts";
export { integrate } from "./numeric/quadrature.ts";
export { seededRandom } from "./numeric/random.ts";

export { air } from "./model/air.ts";
export { weightInWater } from "./model/buoyancy.ts";
export { decay } from "./model/decay.ts";
export { decayByQuadrature } from "./model/decay-by-quadrature.ts";
export { fitDecayTrace } from "./fit/decay-trace.ts";
export {
  bestLiftToDrag,
  dragForce,
  type DragLaw,
  dragLawOfPolar,
  leastDrag,
  leastDragSpeed,
  leastPowerSpeed,
} from "./model/drag-law.ts";
export { effectiveMass } from "./model/effective-mass.ts";
export { biplaneFactor, ellipticLinePhi } from "./model/free-surface.ts";
export { gravity, STANDARD_GRAVITY } from "./model/gravity.ts";
export { dragBuildUp } from "./model/planform-drag.ts";
export { stallSpeed } from "./model/stall.ts";
export { timedSpeedUncertainty } from "./model/timed-speed.ts";
export { water, waterDensity } from "./model/water.ts";

export { readLinearCertifiedSets, readNonlinearCertifiedSets } from "./read/certified-sets.ts";
export { readDistributionValues } from "./read/distribution-values.ts";
export { demoTowTruth, demoTruth, trueRatioAt } from "./read/demo-truth.ts";
export { framesOf } from "./read/frame.ts";
export { filesRead, openSession } from "./read/open-session.ts";
export { readPublishedValues } from "./read/published-values.ts";
export { readSharedTable } from "./read/shared-table.ts";

export { certifiedDigitsTable } from "./show/certified-digits-table.ts";
export { coverageTable } from "./show/coverage-table.ts";
export { courseFigure } from "./show/figure-course.ts";
export { figurePower } from "./show/figure-power.ts";
export { figurePredictedParts } from "./show/figure-predicted-parts.ts";
export { figureTowForce } from "./show/figure-tow-force.ts";
export { figureWaterAir } from "./show/figure-water-air.ts";
export { liveTakeoff } from "./show/live-record.ts";
export {
  takeoffChangesTable,
  takeoffInputsTable,
  whatMattersTable,
} from "./show/takeoff-doubt-tables.ts";
export { measuredDragTable } from "./show/takeoff-measured-table.ts";
export { takeoffBothWaysTable } from "./show/takeoff-both-ways-table.ts";
export { takeoffRecord } from "./show/takeoff-record.ts";
export { takeoffPartsTable, takeoffTable, waterBesideAirTable } from "./show/takeoff-table.ts";
export { agreementRecord } from "./show/agreement-record.ts";
export { agreementTable, familySentence, tracesTable } from "./show/tow-traces-text.ts";
export { figureAgreement } from "./show/figure-agreement.ts";
export { figureCalibration } from "./show/figure-calibration.ts";
export { figureDecomposition } from "./show/figure-decomposition.ts";
export { figureDistance } from "./show/figure-distance.ts";
export { figureDrag } from "./show/figure-drag.ts";
export { figureDragDifference } from "./show/figure-drag-difference.ts";
export { figureDragParts } from "./show/figure-drag-parts.ts";
export { figureGlideRatio } from "./show/figure-glide-ratio.ts";
export { figureLiftCurve } from "./show/figure-lift-curve.ts";
export { figureLiftToDrag } from "./show/figure-lift-to-drag.ts";
export { figurePolar } from "./show/figure-polar.ts";
export { figureRatios } from "./show/figure-ratios.ts";
export { designsTable } from "./show/designs-table.ts";
export { figureTowResiduals } from "./show/figure-tow-residuals.ts";
export { figureUncertaintyShares } from "./show/figure-uncertainty-shares.ts";
export { figureTraces } from "./show/figure-traces.ts";
export { fitTable } from "./show/fit-table.ts";
export { frameTable } from "./show/frame-table.ts";
export { glossaryTable } from "./show/glossary-table.ts";
export { naiveTable } from "./show/naive-table.ts";
export { publishedTable } from "./show/published-table.ts";
export { resultsTable } from "./show/results-table.ts";
export { runsTable } from "./show/runs-table.ts";
export { show } from "./show/show.ts";
export { tamperingTable } from "./show/tampering-table.ts";
export { timedSpeedTable } from "./show/timed-speed-table.ts";
export { sharedErrorsTable, towClaimsTable, towCoverageTable } from "./show/tow-coverage-table.ts";
export { falseWordsTable, unitSlipsTable } from "./show/tow-findings-table.ts";
export { towPartsTable, towWingTable } from "./show/tow-parts-table.ts";
export { passOrderTable, towCautionTable, towGuideTable } from "./show/tow-guide-table.ts";
export { towRecord } from "./show/tow-record.ts";
export { towLawTable, towReadingTable, towSpeedTable, towTable } from "./show/tow-table.ts";
export { towTruthTable } from "./show/tow-truth-table.ts";
export { towDrawnTable, towRobustTable } from "./show/tow-views-table.ts";
export { truthTable } from "./show/truth-table.ts";
export { usualUncertaintyTable } from "./show/usual-uncertainty-table.ts";
export { verdictRecord } from "./show/verdict-record.ts";
