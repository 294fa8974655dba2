/**
 * Which questions a session can answer with what is there, and what the others still need.
 *
 * @module
 */
import { hasErrors } from "../base/finding.ts";
import { excerpt } from "../base/printable.ts";
import { listInWords } from "../base/sentence-words.ts";
import type { Design, Glide, Session, TowPoint } from "../base/session.ts";
import { checkSession } from "./check-session.ts";
import { conditionOf } from "./condition-of.ts";
import { keptGlides } from "./rule.ts";

/** A question of a builder. */
export type Question = "glide" | "tow" | "takeoff";

/** Whether one question can be answered. */
export interface Answerable {
  readonly question: Question;
  /** The question in a builder's words. */
  readonly asks: string;
  readonly can: boolean;
  /** What there is, in one sentence. */
  readonly has: string;
  /** What is still needed, each a phrase that ends without a full stop; empty when nothing is. */
  readonly needs: readonly string[];
}

/** Runs of a design from which its scatter can be told at all. */
export const LEAST_RUNS = 2;

/** Runs a design from which a comparison has a fair chance to tell a real difference. */
const GOOD_RUNS = 6;

/** Speeds at which a design must have been towed for a drag law of three terms. */
const LEAST_SPEEDS = 4;

/** Quantities without which a run has no energy balance, and where they may stand. */
function missingIn(session: Session, glide: Glide): string[] {
  const mass = glide.carriedMass ?? conditionOf(session, "carried_mass", glide.block)?.value;
  const drop = glide.drop ?? conditionOf(session, "drop", glide.block)?.value;
  return [
    ...(glide.launchSpeed === null ? ["launch_speed"] : []),
    ...(glide.distance === null ? ["distance"] : []),
    ...(glide.endSpeed === null ? ["end_speed"] : []),
    ...(drop === undefined ? ["drop"] : []),
    ...(mass === undefined ? ["carried_mass"] : []),
  ];
}

const PLACES: Readonly<Record<string, string>> = {
  launch_speed: "launch_speed in glides.csv",
  distance: "distance in glides.csv",
  end_speed: "end_speed in glides.csv",
  drop: "drop in glides.csv, or one for all runs in conditions.csv",
  carried_mass: "carried_mass in glides.csv, or one for all runs in conditions.csv",
};

const runs = (n: number) => n === 1 ? "1 run" : `${n} runs`;

function glide(session: Session): Answerable {
  const asks = "Which design glides better, and how sure is that?";
  const kept = keptGlides(session);
  const common = { question: "glide", asks } as const;
  if (kept.length === 0) {
    const left = session.glides.length;
    return {
      ...common,
      can: false,
      has: left === 0
        ? "No runs yet."
        : `No runs yet: ${left === 1 ? "the one" : `all ${left}`} in glides.csv ${
          left === 1 ? "is" : "are"
        } marked in leave_out.`,
      needs: ["glides of two designs in glides.csv, three or more each, flown in turns"],
    };
  }
  const flown = session.designs.filter((one) => kept.some((run) => run.design === one.design));
  const complete = (design: Design) =>
    kept.filter((run) => run.design === design.design && missingIn(session, run).length === 0);
  const needs: string[] = [];
  const lacking = new Map<string, number>();
  for (const run of kept) {
    for (const what of missingIn(session, run)) lacking.set(what, (lacking.get(what) ?? 0) + 1);
  }
  const ready = flown.filter((one) => complete(one).length >= LEAST_RUNS);
  const can = ready.length >= 2;
  if (flown.length < 2) needs.push("glides of a second design, flown in turns with the first");
  if (!can) {
    for (const [what, count] of lacking) needs.push(`${PLACES[what]!} (missing in ${runs(count)})`);
    for (const design of flown.filter((one) => complete(one).length < LEAST_RUNS)) {
      needs.push(
        `at least ${LEAST_RUNS} complete runs of ${excerpt(design.design)} (there ${
          complete(design).length === 1 ? "is 1" : `are ${complete(design).length}`
        })`,
      );
    }
  }
  const few = flown.filter((one) => complete(one).length < GOOD_RUNS);
  const has = `${
    listInWords(flown.map((one) => `${excerpt(one.design)} ${runs(complete(one).length)}`))
  }${can && few.length > 0 ? `; ${GOOD_RUNS} or more each tell smaller differences` : ""}.`;
  return { ...common, can, has, needs };
}

/** Samples of a logger share a point. */
const pointsOf = (rows: readonly TowPoint[]) => new Set(rows.map((one) => one.point)).size;

function tow(session: Session): Answerable {
  const common = {
    question: "tow",
    asks: "How much drag does each design have, at which speed?",
  } as const;
  const kept = session.tow.filter((one) => one.leaveOut === null);
  const whole = kept.filter((one) => one.speed !== null && one.lineTension !== null);
  if (whole.length === 0 && session.traces.length > 0) {
    const { length } = session.traces;
    return {
      ...common,
      can: true,
      has: `No towed readings, but speed traces of ${
        length === 1 ? "1 glide" : `${length} glides`
      }.`,
      needs: [],
    };
  }
  if (whole.length === 0) {
    return {
      ...common,
      can: false,
      has: kept.length === 0 ? "No towed readings yet." : "No complete towed readings yet.",
      needs: [
        `readings in tow.csv with speed and line_tension, at ${LEAST_SPEEDS} or more speeds a design`,
      ],
    };
  }
  const towed = session.designs.filter((one) => whole.some((two) => two.design === one.design));
  // Speeds nearer than a quarter of a metre per second count as one set speed.
  const speeds = (design: Design) =>
    new Set(
      whole.filter((one) => one.design === design.design).map((one) =>
        Math.round((one.setSpeed ?? one.speed!) * 4)
      ),
    ).size;
  const short = towed.filter((one) => speeds(one) < LEAST_SPEEDS);
  // Struts alone carry nobody.
  const alone = pointsOf(whole.filter((one) => one.design === "tare"));
  const mass = whole.every((one) => one.design === "tare" || one.carriedMass !== null) ||
    conditionOf(session, "carried_mass", null) !== null;
  const needs = [
    ...short.map((one) =>
      `readings of ${excerpt(one.design)} at ${LEAST_SPEEDS} or more speeds (there are ${
        speeds(one)
      })`
    ),
    ...(towed.length === 0 ? ["readings of a design, not of the struts alone"] : []),
    ...(mass ? [] : ["carried_mass in tow.csv or conditions.csv"]),
  ];
  return {
    ...common,
    can: needs.length === 0,
    has: towed.length === 0
      ? `${alone} readings of the struts alone.`
      : `${pointsOf(whole) - alone} readings of ${
        listInWords(towed.map((one) => excerpt(one.design)))
      }${alone === 0 ? "" : `, ${alone} of the struts alone`}.`,
    needs,
  };
}

function takeoff(session: Session): Answerable {
  const common = {
    question: "takeoff",
    asks: "From which speed does each design carry me, and what does it take to get there?",
  } as const;
  if (session.designs.length === 0) {
    return {
      ...common,
      can: false,
      has: "No designs yet.",
      needs: ["designs in designs.csv with span and area"],
    };
  }
  const without = session.designs.filter((one) => one.largestLiftCoefficient === null);
  const mass = conditionOf(session, "carried_mass", null) ??
    conditionOf(session, "reference_mass", null) ??
    session.glides.find((one) => one.carriedMass !== null) ??
    session.tow.find((one) => one.carriedMass !== null) ?? null;
  const needs = mass === null ? ["carried_mass in conditions.csv"] : [];
  const names = listInWords(session.designs.map((one) => excerpt(one.design)));
  const usual = without.length === 0
    ? ""
    : `; a usual largest lift coefficient stands in for ${
      without.length === session.designs.length
        ? "each"
        : listInWords(without.map((one) => excerpt(one.design)))
    }`;
  return {
    ...common,
    can: needs.length === 0,
    has: `${names} with span and area${usual}.`,
    needs,
  };
}

/** Files that each question rests on. */
const FILES: Readonly<Record<Question, readonly string[]>> = {
  glide: ["designs.csv", "glides.csv", "conditions.csv", "instruments.csv", "datapackage.json"],
  tow: [
    "designs.csv",
    "tow.csv",
    "calibrations.csv",
    "conditions.csv",
    "instruments.csv",
    "datapackage.json",
  ],
  takeoff: ["designs.csv", "conditions.csv", "datapackage.json"],
};

/**
 * For each question whether it can be answered, with what there is and what is missing in plain words.
 *
 * An error in a table that a question rests on forbids its answer: what was left out might have turned it.
 *
 * @param session as read
 * @returns one entry a question
 * @example
 * ```ts
 * import { answerable } from "lakeproof/check/answerable.ts";
 * import { readSession } from "lakeproof/read/read-session.ts";
 * import { equal } from "node:assert/strict";
 * equal(answerable(readSession("empty", new Map()))[0]?.has, "No runs yet.");
 * ```
 */
export function answerable(session: Session): Answerable[] {
  const findings = [...session.findings, ...checkSession(session)];
  return [glide(session), tow(session), takeoff(session)].map((one) => {
    const wrong = FILES[one.question].filter((file) =>
      hasErrors(findings.filter((two) => two.file === file))
    );
    if (wrong.length === 0) return one;
    return {
      ...one,
      can: false,
      needs: [`the errors in ${listInWords(wrong)} put right`, ...one.needs],
    };
  });
}
