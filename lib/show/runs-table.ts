/**
 * Every run with what the method made of it: used or left out and why, its own glide ratio, its share of the result.
 *
 * @module
 */
import type { TableCell, TableRecord } from "../base/records.ts";
import { decimalsOf } from "../base/rounding.ts";
import type { GlideEvidence, RunEvidence } from "../decide/glide-evidence.ts";
import { designCell, numberCell, textCell } from "./table-cells.ts";
import { left, right } from "./table-columns.ts";
import { settingText } from "./verdict-sentence.ts";

function remark(run: RunEvidence): string {
  const reason = run.reason ?? "no reason given";
  const out = /^left out/.test(reason) ? reason : `left out: ${reason}`;
  const reasons = [run.used ? "" : out, run.flag ?? ""];
  return reasons.filter((one) => one !== "").join("; ");
}

function row(run: RunEvidence, place: number, sessions: number): TableCell[] {
  const ratio = run.glideRatio;
  const decimals = ratio === null ? 0 : decimalsOf(ratio);
  return [
    textCell(sessions > 1 ? `${run.session}: ${run.run}` : run.run),
    designCell(run.design, place),
    textCell(run.block ?? ""),
    numberCell(run.launchSpeed, 2),
    numberCell(run.endSpeed, 2),
    numberCell(run.drop, 2),
    numberCell(run.distance, 2),
    textCell(run.ended ?? ""),
    numberCell(ratio?.value ?? null, decimals),
    numberCell(ratio?.standardUncertainty ?? null, decimals),
    numberCell(run.movedDistance, 2),
    textCell(remark(run)),
  ];
}

/**
 * All runs in the order of designs and rows.
 *
 * @param evidence whole
 * @param name names the files; "runs" unless said otherwise
 * @returns one row a run
 */
export function runsTable(evidence: GlideEvidence, name = "runs"): TableRecord {
  const { launch, sessions } = evidence.answer;
  const moved = launch === null ? "one common speed" : `${settingText(launch.speed)}\u00a0m/s`;
  return {
    name,
    caption:
      "Every run: as measured, its glide ratio corrected for the speed it gained or lost (± one standard uncertainty), " +
      `and its share of the design's distance, moved to a launch at ${moved}.`,
    columns: [
      left("run"),
      left("design"),
      left("block"),
      right("launch", "m/s"),
      right("end", "m/s"),
      right("drop", "m"),
      right("distance", "m"),
      left("ended"),
      right("glide ratio"),
      right("±"),
      right("moved", "m"),
      left("remark"),
    ],
    rows: evidence.designs.flatMap((one) =>
      one.runs.map((run) => row(run, one.place, sessions.length))
    ),
  };
}
