/**
 * From which speed each design carries its rider, and what it takes to get there.
 *
 * @module
 */
import { CONTRACT } from "../base/answers.ts";
import { UsageError } from "../base/errors.ts";
import { type Finding, finding } from "../base/finding.ts";
import type { Session } from "../base/session.ts";
import type { TakeoffAnswer } from "../base/takeoff-answer.ts";
import { designTakeoff, type TakeoffDesign } from "./design-takeoff.ts";
import { otherWings } from "./same-wing.ts";
import { withinNature } from "./session-medium.ts";
import { takeoffCraft } from "./takeoff-craft.ts";
import { compareTakeoffs } from "./takeoff-comparison.ts";
import { measuredIn } from "./takeoff-measured.ts";
import { type TakeoffOptions, takeoffSetting } from "./takeoff-setting.ts";

/** An answer with everything behind it. */
export interface TakeoffEvidence {
  /** The contract's object; `versions` is empty here and filled where the software is known. */
  readonly answer: TakeoffAnswer;
  readonly designs: readonly TakeoffDesign[];
}

/**
 * Speeds, tow force and power of each design of a session, in water and as the same wing in air.
 *
 * Predicted, not measured: from the planform, the load and the water. What the board does before it is clear of the water is outside the
 * model, so tow force is told from takeoff on: a steady tow must give at least that much, and the board's own hump may ask for more.
 *
 * Where this or another session towed or glided the same designs, the measured drag stands beside the predicted.
 *
 * @param session as read; it names the designs, the load and the water
 * @param options designs, load, depth, altitude, line, pull
 * @param others sessions whose tows and glides of designs of the same name are told beside the prediction
 * @returns the answer with its evidence
 * @throws UsageError for a design that the session does not know
 * @throws DataError where a stated condition can't be
 *
 * @example A session without designs has no takeoff, and says so
 * ```ts
 * import { estimateTakeoff } from "lakeproof/decide/estimate-takeoff.ts";
 * import { readSession } from "lakeproof/read/read-session.ts";
 *
 * const { answer } = estimateTakeoff(readSession("lake", new Map()));
 * if (answer.findings.at(-1)?.code !== "no-designs") throw new Error(JSON.stringify(answer.findings));
 * ```
 */
export function estimateTakeoff(
  session: Session,
  options: TakeoffOptions = {},
  others: readonly Session[] = [],
): TakeoffEvidence {
  for (const name of options.designs ?? []) {
    if (!session.designs.some((one) => one.design === name)) {
      throw new UsageError(
        `Cannot answer on ${name} as designs.csv has only: ${
          session.designs.map((one) => one.design).join(", ")
        }`,
      );
    }
  }
  const prepared = withinNature(() => takeoffSetting(session, options));
  const findings: Finding[] = [...prepared.findings];
  const all = [session, ...others];
  const measured = all.map(measuredIn);
  const designs = session.designs
    .map((spec, i) => ({ spec, place: i + 1 }))
    .filter(({ spec }) => options.designs?.includes(spec.design) ?? true)
    .flatMap(({ spec, place }) => {
      const craft = takeoffCraft(spec, place, prepared);
      if (craft === null) return [];
      const told = {
        drags: (own: typeof craft) => measured.flatMap((one) => one.drags(own)),
        stalls: (own: typeof craft) => measured.flatMap((one) => one.stalls(own)),
      };
      return [designTakeoff(craft, options, told)];
    });
  findings.push(
    ...designs.flatMap((one) => one.findings),
    ...others.flatMap((one) => otherWings(session, one)),
  );
  if (session.designs.length === 0) {
    findings.push(finding({
      severity: "error",
      code: "no-designs",
      file: "designs.csv",
      what: "There is no design to tell of.",
      wanted: "Designs with span and area in designs.csv.",
    }));
  }
  return {
    answer: {
      contract: CONTRACT,
      question: "takeoff",
      sessions: all.map((one) => one.name),
      findings,
      versions: {},
      dataChecksums: all.flatMap((one) =>
        one.checksums.map(({ file, sha256 }) => ({
          file: others.length > 0 ? `${one.name}/${file}` : file,
          sha256,
        }))
      ),
      setting: prepared.setting,
      designs: designs.map((one) => one.answer),
      comparisons: compareTakeoffs(designs),
      inputs: designs.flatMap((one) => one.prepared.inputs),
    },
    designs,
  };
}
