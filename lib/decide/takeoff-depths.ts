/**
 * How deep a design's wing runs, and how deep it lies at takeoff.
 *
 * @module
 */
import { type Finding, finding } from "../base/finding.ts";
import { printable } from "../base/printable.ts";
import type { Design } from "../base/session.ts";
import { USUAL_CRAFT } from "../model/usual-craft.ts";
import type { PreparedSetting } from "./takeoff-setting.ts";

/** m a board floats deep, and m between running depth and takeoff depth, where nobody measured. */
const USUAL_DRAUGHT = 0.08, USUAL_RISE = 0.25;

/** m: standard uncertainty of a depth that is guessed, not measured. */
const GUESSED = 0.15;

const FILE = "designs.csv";

/** Depths of a design, m, with how well each is known where that is not the usual. */
export interface TakeoffDepths {
  readonly running: number;
  readonly takeoff: number;
  readonly runningUncertainty: number | null;
  readonly takeoffUncertainty: number | null;
  readonly findings: readonly Finding[];
}

/**
 * Running depth and takeoff depth of a design: the strut's length less the board's draught is the deepest that the wing ever flies.
 *
 * @param spec row of designs.csv
 * @param prepared with the running depth, where anyone told it
 * @returns depths in m; what was assumed is a finding
 */
export function takeoffDepths(spec: Design, { runningDepth }: PreparedSetting): TakeoffDepths {
  const findings: Finding[] = [];
  const name = printable(spec.design);
  const { strutLength, boardDraught } = spec;
  const takeoff = strutLength === null ? null : strutLength - (boardDraught ?? USUAL_DRAUGHT);
  const told = runningDepth?.value ?? Math.min(USUAL_CRAFT.runningDepth, takeoff ?? Infinity);
  const running = takeoff === null || takeoff <= 0 ? told : Math.min(told, takeoff);
  if (runningDepth === null) {
    findings.push(finding({
      severity: "note",
      code: "depth-assumed",
      file: "conditions.csv",
      what: `Nobody said how deep the wing runs: ${running.toFixed(2)} m is taken.`,
      wanted: "running_depth in conditions.csv.",
    }));
  }
  if (takeoff === null || takeoff <= 0) {
    findings.push(finding({
      severity: "warning",
      code: "takeoff-depth-assumed",
      file: FILE,
      row: spec.row,
      column: "strut_length",
      what: `The depth of ${name} at takeoff is not known: ${
        (running + USUAL_RISE).toFixed(2)
      } m is taken, good to 0.15 m. It is the strut's length less the board's draught.`,
      wanted: "strut_length and board_draught.",
    }));
  } else if (told > takeoff) {
    findings.push(finding({
      severity: "warning",
      code: "deeper-than-strut",
      file: FILE,
      row: spec.row,
      column: "strut_length",
      what: `A running depth of ${told.toFixed(2)} m is more than the struts of ${name} leave (${
        takeoff.toFixed(2)
      } m with the board just clear): the lesser is taken.`,
    }));
  }
  return {
    running,
    takeoff: takeoff === null || takeoff <= 0 ? running + USUAL_RISE : takeoff,
    runningUncertainty: runningDepth === null ? GUESSED : runningDepth.uncertainty,
    takeoffUncertainty: takeoff === null ? GUESSED : null,
    findings,
  };
}
