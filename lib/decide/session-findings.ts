/**
 * What was assumed about sessions, and what is odd about them as a whole.
 *
 * @module
 */
import { type Finding, finding } from "../base/finding.ts";
import { listInWords } from "../base/sentence-words.ts";
import type { Design } from "../base/session.ts";
import { GLIDE_COLUMNS, type PreparedRun, type PreparedSession } from "./glide-runs.ts";

const UNITS = {
  launch_speed: "m/s",
  end_speed: "m/s",
  drop: "m",
  distance: "m",
  carried_mass: "kg",
};

/** What an interval and a probability take for granted, the same for every session. */
const READING = [
  "Each instrument and camera place served all designs alike: an error of one that served a single design can't be told from these tables, and would count as a difference between the designs.",
  "Probability: every ratio counted as equally likely before these runs (half as far as likely as twice as far). It speaks of these runs and the assumptions here; a cause that nobody thought of is not in it.",
];

/** What the word means to somebody who never read of it. */
const STANDARD =
  "A standard uncertainty is the size of error that about two readings in three stay within.";

/** An uncertainty in words: three digits, share in per cent. */
function sizeOf(uncertainty: number, relative: boolean, unit: string): string {
  return relative
    ? `${Number((uncertainty * 100).toPrecision(3))} %`
    : `${Number(uncertainty.toPrecision(3))} ${unit}`;
}

/**
 * Sentences on what was assumed: water, gravity, added mass, uncertainties and where each comes from.
 *
 * @param sessions made ready
 * @returns sentences; those that don't hold for every session stand behind, with the session's name in front
 */
export function sessionAssumptions(sessions: readonly PreparedSession[]): string[] {
  const each = sessions.map((prepared) => {
    const { session, medium, columns } = prepared;
    const uncertainties = GLIDE_COLUMNS.map((column) => {
      const { fixed, share, origin, instrument, common } = columns[column];
      const unit = UNITS[column];
      const parts = [
        ...(fixed > 0 ? [`${sizeOf(fixed, false, unit)}`] : []),
        ...(share > 0 ? [`${sizeOf(share, true, unit)}`] : []),
      ].join(" and ");
      const how = column === "carried_mass" ? "one error for all runs" : "from run to run";
      const own = parts === "" ? [] : [
        `${parts} ${how} (${
          origin === "stated" ? `stated: ${instrument}` : `not stated; usual for: ${instrument}`
        })`,
      ];
      const shared = common.map((one) =>
        `${sizeOf(one.uncertainty, one.relative, unit)} shared by all runs (stated: ${
          one.instrument ?? "instrument not named"
        })`
      );
      const all = [...own, ...shared].join("; ");
      return `Standard uncertainty of ${column}: ${all === "" ? "stated as none" : all}.`;
    });
    const volumes = session.designs.filter((one) => one.wetVolume === null).map((one) =>
      one.design
    );
    const lines = [
      ...medium.sentences.water,
      ...medium.sentences.gravity,
      ...(volumes.length === 0 ? [] : [
        `Wet volume of ${volumes.join(", ")}: estimated from the planform, since none was dunked.`,
      ]),
      "Effective mass: carried mass and the water that moves with the wing, from its planform.",
      "Shape of drag over speed: from the planform; its level comes from the runs.",
      ...uncertainties,
    ];
    return { name: session.name, lines };
  });
  const first = each[0]?.lines ?? [];
  const shared = first.filter((line) => each.every(({ lines }) => lines.includes(line)));
  const own = each.flatMap(({ name, lines }) =>
    lines.filter((line) => !shared.includes(line)).map((line) => `${name}: ${line}`)
  );
  return [...shared, ...own, STANDARD, ...READING];
}

/**
 * Findings on sessions as a whole.
 *
 * @param sessions made ready
 * @param runs all runs asked about
 * @returns findings
 */
export function sessionFindings(
  sessions: readonly PreparedSession[],
  runs: readonly PreparedRun[],
): Finding[] {
  const found: Finding[] = [];
  const out = runs.filter((one) => one.run === null);
  if (out.length > 0) {
    found.push(finding({
      severity: "note",
      code: "runs-left-out",
      file: "glides.csv",
      row: out.length === 1 ? out[0]!.glide.row : null,
      count: out.length,
      what: `${out.length === 1 ? "One run was" : `${out.length} runs were`} left out: ${
        byReason(out)
      }.`,
    }));
  }
  const used = runs.filter((one) => one.run !== null);
  const shallow = used.filter((one) => one.depth === null);
  if (shallow.length > 0) {
    found.push(finding({
      severity: "note",
      code: "depth-unknown",
      file: "glides.csv",
      column: "depth",
      count: shallow.length,
      what:
        `The depth of the wing is not known for ${shallow.length} of ${used.length} runs: 0.4 m is assumed for the drag that the surface adds, and the intervals are wider for it.`,
      wanted: "depth in glides.csv, or running_depth in conditions.csv.",
    }));
  }
  const open = used.filter((one) => one.glide.ended === null);
  if (open.length > 0) {
    found.push(finding({
      severity: "note",
      code: "end-unknown",
      file: "glides.csv",
      column: "ended",
      count: open.length,
      what:
        `How ${open.length} of ${used.length} runs ended is not said: they count for the drag, not for the end speed.`,
      wanted: "stalled, touched or stopped early.",
    }));
  }
  found.push(...differentPlanforms(sessions));
  return found;
}

/** So many runs that share a reason are named; of more, the rest is counted. */
const MOST_NAMED = 5;

/** Runs left out, those with one reason together: "3 (pumped), 4 and 7 (wake of a boat)". */
function byReason(out: readonly PreparedRun[]): string {
  const reasons = new Map<string, string[]>();
  for (const { reason, glide } of out) {
    const key = `${reason}`;
    reasons.set(key, [...reasons.get(key) ?? [], glide.run]);
  }
  return [...reasons].map(([reason, names]) => {
    const more = names.length - MOST_NAMED;
    const told = more > 1 ? [...names.slice(0, MOST_NAMED), `${more} more`] : names;
    return `${listInWords(told)} (${reason})`;
  }).join(", ");
}

/** One name for two wings. */
function differentPlanforms(sessions: readonly PreparedSession[]): Finding[] {
  const seen = new Map<string, { readonly design: Design; readonly session: string }>();
  const found: Finding[] = [];
  for (const { session } of sessions) {
    for (const design of session.designs) {
      const first = seen.get(design.design);
      if (first === undefined) {
        seen.set(design.design, { design, session: session.name });
        continue;
      }
      if (first.design.span === design.span && first.design.area === design.area) continue;
      found.push(finding({
        severity: "warning",
        code: "different-planforms",
        file: "designs.csv",
        row: design.row,
        what:
          `${design.design} has another span or area in ${session.name} than in ${first.session}; here they count as one design.`,
        wanted: "A name of its own for each wing.",
      }));
    }
  }
  return found;
}
