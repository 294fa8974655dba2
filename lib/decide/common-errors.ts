/**
 * Errors that all runs of a session share: what shifts when one of them is there.
 *
 * @module
 */
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
  /** True where it touches only runs without a drop of their own. */
  readonly statedDrop: boolean;
}

/**
 * The shared errors of all sessions.
 *
 * Rows of instruments.csv marked `common`. One instrument named for launch and end speed is one error and shifts both.
 * A drop stated once for the whole session in conditions.csv is one error too, and so is the scale that weighed the
 * riders: it hardly matters to a ratio, since both designs carry the same people.
 *
 * @param sessions made ready
 * @returns one entry an error, in the order of sessions and rows
 */
export function commonShifts(sessions: readonly PreparedSession[]): CommonShift[] {
  return sessions.flatMap((prepared) => {
    const groups = new Map<string, Part[]>();
    const add = (key: string, part: Part) => groups.set(key, [...(groups.get(key) ?? []), part]);
    for (const column of GLIDE_COLUMNS) {
      prepared.columns[column].common.forEach((error, i) => {
        const speed = column === "launch_speed" || column === "end_speed";
        const key = speed && error.instrument !== null
          ? `speed by ${error.instrument}`
          : `${column.replace("_", " ")} by ${error.instrument ?? `instrument ${i + 1}`}`;
        const { uncertainty, relative } = error;
        add(key, { column, uncertainty, relative, statedDrop: false });
      });
    }
    const scale = prepared.columns.carried_mass;
    const weighing = { column: "carried_mass", statedDrop: false } as const;
    if (scale.fixed > 0) {
      add(`carried mass by ${scale.instrument}`, {
        ...weighing,
        uncertainty: scale.fixed,
        relative: false,
      });
    }
    if (scale.share > 0) {
      add(`carried mass by ${scale.instrument}, share`, {
        ...weighing,
        uncertainty: scale.share,
        relative: true,
      });
    }
    const drop = conditionOf(prepared.session, "drop", null);
    if (drop !== null && drop.uncertainty !== null && drop.uncertainty > 0) {
      const part = { uncertainty: drop.uncertainty, relative: false, statedDrop: true } as const;
      add("drop of conditions.csv", { column: "drop", ...part });
    }
    return [...groups].map(([name, parts]): CommonShift => ({
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
    if (statedDrop && prepared.glide.drop !== null) continue;
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
