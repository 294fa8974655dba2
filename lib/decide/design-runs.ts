/**
 * The usable runs of one design, with its craft at the mass to compare at.
 *
 * @module
 */
import { UsageError } from "../base/errors.ts";
import { type Finding, finding } from "../base/finding.ts";
import type { Design } from "../base/session.ts";
import { meanOf } from "../infer/sample.ts";
import { prepareCraft } from "./glide-craft.ts";
import type { DesignRuns } from "./glide-pair.ts";
import type { PreparedRun } from "./glide-runs.ts";
import type { Medium } from "./session-medium.ts";

/**
 * Gathers a design's runs; its craft is taken at the mass and in the water to compare at, at its runs' mean depth.
 *
 * @param name of the design
 * @param specs every design by name
 * @param runs usable runs of the design, at least one
 * @param at mass in kg and medium, the same for every design of one answer
 * @returns runs and reference craft
 * @throws UsageError where the design floats at that mass
 */
export function designRuns(
  name: string,
  specs: ReadonlyMap<string, Design>,
  runs: readonly PreparedRun[],
  at: { readonly mass: number; readonly medium: Medium },
): DesignRuns {
  const spec = specs.get(name)!;
  const { mass, medium } = at;
  const depths = runs.flatMap((one) => one.depth === null ? [] : [one.depth]);
  const depth = depths.length < runs.length ? null : meanOf(depths);
  const craft = prepareCraft(spec, { mass, depth, medium });
  if (craft === null) {
    throw new UsageError(`Cannot compare glides at ${mass} kg as ${name} floats that much`);
  }
  return {
    design: name,
    place: [...specs.keys()].indexOf(name) + 1,
    spec,
    runs,
    reference: craft.craft,
    shapeUncertainty: Math.max(craft.shapeUncertainty, ...runs.map((one) => one.shapeUncertainty)),
    gravity: medium.gravity,
  };
}

/**
 * Says that a design has no usable run.
 *
 * @param name of the design
 * @param runs all runs asked about
 * @returns a warning
 */
export function notFlown(name: string, runs: readonly PreparedRun[]): Finding {
  const rows = runs.filter((one) => one.glide.design === name).length;
  return finding({
    severity: "warning",
    code: "design-without-runs",
    file: "glides.csv",
    what: rows === 0
      ? `${name} has no run.`
      : `None of the ${rows} runs of ${name} can be used; each run's reason stands in the list of runs.`,
    wanted: "Launch speed, end speed, drop and distance.",
  });
}
