/**
 * The fit report of one design, as plain text.
 *
 * @module
 */
import type { DesignGlide } from "../base/answers.ts";
import { formatInterval, formatNumber, formatQuantity } from "../base/rounding.ts";
import type { GlideSeries } from "../fit/glide-series.ts";
import type { DesignRuns } from "./glide-pair.ts";
import type { PreparedRun } from "./glide-runs.ts";

/** What a report tells about. */
export interface ReportInput {
  readonly design: DesignRuns;
  readonly series: GlideSeries;
  readonly glide: DesignGlide;
  /** Runs of the design that were not used. */
  readonly leftOut: readonly PreparedRun[];
  readonly end: "own" | "common";
}

/**
 * Says what was fitted, to which runs, with what result and what doubt.
 *
 * @param input design, series, results, runs left out
 * @returns lines of text
 */
export function glideReport(input: ReportInput): string {
  const { design, series, glide, leftOut } = input;
  const { reference } = design;
  const stalled = design.runs.filter((one) => one.run!.inEnd).length;
  const energy = design.runs.filter((one) => one.run!.inLevel).length;
  const error = series.levelError === null
    ? "no uncertainty: one run"
    : `± ${formatNumber(series.levelError * series.level, 3)}`;
  const part = (variance: number) => formatNumber(Math.sqrt(variance) * 100, 1);
  const lines = [
    `${design.design}: level of drag by ratio of sums, uncertainty by jackknife over runs`,
    `runs used           ${design.runs.length} (${energy} for the level, ${stalled} for the end speed)`,
    `runs left out       ${
      leftOut.length === 0
        ? "none"
        : leftOut.map((one) => `${one.glide.run} (${one.reason})`).join(", ")
    }`,
    `prior drag law      a ${formatNumber(reference.a, 3)} N s²/m², d ${
      formatNumber(reference.d, 2)
    } N, e ${formatNumber(reference.e, 1)} N m²/s²${
      reference.phi === null ? ", without free surface" : ", with free surface"
    }`,
    `level               ${formatNumber(series.level, 3)} ${error} (start 1: the prior)`,
    `end speed           ${
      input.end === "own" && glide.endSpeed !== null
        ? formatQuantity(glide.endSpeed)
        : `${formatNumber(series.endSpeed, 2)} m/s, common to both designs`
    }`,
    `height spent        ${formatNumber(series.energyHeight, 3)} m from the common launch`,
    `distance            ${glide.distance === null ? "none" : formatQuantity(glide.distance)}${
      glide.distance === null || glide.distance.low === null
        ? ""
        : ` (95 %: ${formatInterval(glide.distance)})`
    }`,
    `scatter             ${
      series.jackknifeVariance === null ? "not known" : `${part(series.jackknifeVariance)} %`
    } of the distance; stated uncertainties alone ${part(series.measurementVariance)} %`,
    `prior shape         ${
      formatNumber(Math.abs(series.shapeSensitivity) * 100, 1)
    } % of the distance for ${formatNumber(design.shapeUncertainty, 2)} on ln of the induced share`,
    `degrees of freedom  ${series.count - 1}`,
  ];
  if (series.variance !== null && series.variance > (series.jackknifeVariance ?? 0)) {
    lines.push(
      "floor               the runs agree better than their uncertainties: a floor was used",
    );
  }
  return lines.join("\n");
}
