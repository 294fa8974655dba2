/**
 * Errors that all runs of a session share: what shifts when one of them is there.
 *
 * @module
 */
import type { Condition } from "../base/session.ts";
import { standardUncertaintyOf } from "../check/column-uncertainty.ts";
import { conditionOf } from "../check/condition-of.ts";
import type { GlideRun } from "../fit/glide-run.ts";
import { prepareCraft } from "./glide-craft.ts";
import { GLIDE_COLUMNS, type PreparedRun, type PreparedSession } from "./glide-runs.ts";

/** One shared error: every run it touches, moved by one standard uncertainty up or down. */
export interface CommonShift {
  readonly name: string;
  /** All runs with the error added; `null` where it is so large that one of them can't be. */
  readonly apply: (runs: readonly PreparedRun[], sign: 1 | -1) => readonly GlideRun[] | null;
}

const FIELDS = {
  launch_speed: "launchSpeed",
  end_speed: "endSpeed",
  drop: "drop",
  distance: "distance",
} as const;

/** One column's part of a shared error. */
interface Part {
  readonly column: typeof GLIDE_COLUMNS[number];
  readonly uncertainty: number;
  readonly relative: boolean;
  /** The row of conditions.csv whose drop it is: it touches only the runs that took their drop from there. */
  readonly statedDrop: Condition | null;
}

/**
 * The shared errors of all sessions.
 *
 * Rows of instruments.csv marked `common`, each a source of its own, which add in quadrature. Only one instrument named
 * for launch and end speed is one error that shifts both: the first fixed row of the one with the first of the other, and
 * shares likewise. A drop stated once in conditions.csv is one error for all runs that took it, and so is the scale that
 * weighed the riders: it hardly matters to a ratio, since both designs carry the same people. A stated drop without an
 * uncertainty is as well known as a reading of the column.
 *
 * @param sessions made ready
 * @returns one entry an error, in the order of sessions and rows
 */
export function commonShifts(sessions: readonly PreparedSession[]): CommonShift[] {
  return sessions.flatMap((prepared) => {
    const groups = new Map<string, { readonly name: string; readonly parts: Part[] }>();
    const add = (key: string, name: string, part: Part) =>
      groups.set(key, { name, parts: [...(groups.get(key)?.parts ?? []), part] });
    for (const column of GLIDE_COLUMNS) {
      const { common } = prepared.columns[column];
      common.forEach((error, i) => {
        const { uncertainty, relative, instrument } = error;
        const speed = column === "launch_speed" || column === "end_speed";
        const name = `${speed && instrument !== null ? "speed" : column.replace("_", " ")} by ${
          instrument ?? `instrument ${i + 1}`
        }`;
        const place = common.slice(0, i).filter((one) =>
          one.instrument === instrument && one.relative === relative
        ).length;
        const key = speed && instrument !== null
          ? JSON.stringify(["speed", instrument, relative, place])
          : JSON.stringify([column, i]);
        add(key, name, { column, uncertainty, relative, statedDrop: null });
      });
    }
    const scale = prepared.columns.carried_mass;
    const weighing = { column: "carried_mass", statedDrop: null } as const;
    if (scale.fixed > 0) {
      add("scale", `carried mass by ${scale.instrument}`, {
        ...weighing,
        uncertainty: scale.fixed,
        relative: false,
      });
    }
    if (scale.share > 0) {
      add("scale, share", `carried mass by ${scale.instrument}`, {
        ...weighing,
        uncertainty: scale.share,
        relative: true,
      });
    }
    for (const drop of prepared.session.conditions.filter((one) => one.quantity === "drop")) {
      const uncertainty = drop.uncertainty ??
        standardUncertaintyOf(prepared.columns.drop, drop.value, null);
      if (!(uncertainty > 0)) continue;
      const part = { column: "drop", uncertainty, relative: false, statedDrop: drop } as const;
      add(`drop of row ${drop.row}`, "drop of conditions.csv", part);
    }
    return [...groups.values()].map(({ name, parts }): CommonShift => ({
      name,
      apply: (runs, sign) => {
        const all = runs.map((run) =>
          run.prepared === prepared ? shifted(run, parts, sign) : run.run
        );
        return all.every((run) => run !== null) ? all : null;
      },
    }));
  });
}

function shifted(prepared: PreparedRun, parts: readonly Part[], sign: 1 | -1): GlideRun | null {
  let run = prepared.run!;
  for (const { column, uncertainty, relative, statedDrop } of parts) {
    if (statedDrop !== null) {
      const { glide, prepared: { session } } = prepared;
      if (glide.drop !== null || conditionOf(session, "drop", glide.block) !== statedDrop) continue;
    }
    if (column === "carried_mass") {
      const mass = prepared.mass! + sign * uncertainty * (relative ? prepared.mass! : 1);
      const { depth } = prepared;
      const medium = prepared.prepared.media.get(prepared.glide.block)!;
      const craft = prepareCraft(prepared.spec!, { mass, depth, medium });
      if (craft === null) return null;
      run = { ...run, craft: craft.craft };
      continue;
    }
    const field = FIELDS[column];
    const value = run[field];
    run = { ...run, [field]: value + sign * uncertainty * (relative ? value : 1) };
  }
  return run;
}
