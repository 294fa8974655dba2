/**
 * What the answer and the evidence say of one run.
 *
 * @module
 */
import type { RunUse } from "../base/answers.ts";
import type { RunEvidence } from "./glide-evidence.ts";
import type { PairSetting } from "./glide-pair.ts";
import type { PreparedRun } from "./glide-runs.ts";
import { runName } from "./glide-verdict.ts";
import { runGlideRatio } from "./run-glide-ratio.ts";

/**
 * A run with what the method made of it.
 *
 * @param prepared the run
 * @param flag what is odd about it; `null` when nothing is
 * @param pseudoValue its share of the design's ln distance; `undefined` where it has none
 * @returns the evidence of one run
 */
export function runEvidence(
  prepared: PreparedRun,
  flag: string | null,
  pseudoValue: number | undefined,
): RunEvidence {
  const { glide, run } = prepared;
  const own = run !== null && run.inLevel
    ? runGlideRatio(run, prepared.prepared.medium.gravity)
    : null;
  return {
    session: prepared.prepared.session.name,
    row: glide.row,
    run: glide.run,
    design: glide.design,
    block: glide.block,
    launchSpeed: glide.launchSpeed,
    endSpeed: glide.endSpeed,
    drop: prepared.drop,
    distance: glide.distance,
    ended: glide.ended,
    used: run !== null,
    reason: prepared.reason,
    flag,
    energyHeight: own?.energyHeight ?? null,
    glideRatio: own?.glideRatio ?? null,
    movedDistance: pseudoValue === undefined ? null : Math.exp(pseudoValue),
  };
}

/**
 * A run's line in the answer.
 *
 * @param prepared the run
 * @param seen its evidence; `undefined` where its design was not compared
 * @param setting for its name among several sessions
 * @returns what became of it
 */
export function runUse(
  prepared: PreparedRun,
  seen: RunEvidence | undefined,
  setting: PairSetting,
): RunUse {
  return {
    run: runName(prepared, setting),
    design: prepared.glide.design,
    used: seen?.used ?? false,
    reason: seen === undefined ? prepared.reason ?? "not compared" : seen.reason ?? seen.flag,
    glideRatio: seen?.glideRatio ?? null,
  };
}
