/**
 * A row of designs.csv turned into the numbers of a steady craft, with how well each is known and where it came from.
 *
 * @module
 */
import { type Finding, finding } from "../base/finding.ts";
import { printable } from "../base/printable.ts";
import { atSentenceStart, listInWords } from "../base/sentence-words.ts";
import type { Design } from "../base/session.ts";
import type { TakeoffDefault } from "../base/takeoff-answer.ts";
import { type Doubt, USUAL_DOUBTS } from "../fit/takeoff-doubts.ts";
import type { SteadyCraft } from "../model/steady-craft.ts";
import { strutVolume } from "../model/strut-drag.ts";
import { USUAL_CRAFT, usualLargestLift } from "../model/usual-craft.ts";
import type { PreparedSetting } from "./takeoff-setting.ts";

/** A craft made ready. */
export interface PreparedTakeoff {
  readonly spec: Design;
  /** Place in designs.csv, from 1. */
  readonly place: number;
  readonly craft: SteadyCraft;
  readonly doubts: readonly Doubt[];
  readonly inputs: readonly TakeoffDefault[];
  readonly findings: readonly Finding[];
}

/** Area of a four-digit symmetric section over chord times thickness. */
const SECTION_FULLNESS = 0.685;

/** m a board floats deep, and m between running depth and takeoff depth, where nobody measured. */
const USUAL_DRAUGHT = 0.08, USUAL_RISE = 0.25;

/** Standard uncertainties where a number is guessed, not measured. */
const GUESSED = { volume: 0.3, depth: 0.15 } as const;

/** Where the kind of section, or the largest lift coefficient itself, is stated. */
const LIFT_KNOWN = 0.12;

const FILE = "designs.csv";

/** A row's own uncertainty as a share of the value. */
function ownShare(spec: Design, column: string, value: number): number | null {
  const own = spec.own[column];
  return own === undefined || !(value > 0) ? null : own / value;
}

interface Depths {
  readonly running: number;
  readonly takeoff: number;
  readonly runningUncertainty: number | null;
  readonly takeoffUncertainty: number | null;
  readonly findings: readonly Finding[];
}

function depthsOf(spec: Design, { runningDepth }: PreparedSetting): Depths {
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
    runningUncertainty: runningDepth === null ? GUESSED.depth : runningDepth.uncertainty,
    takeoffUncertainty: takeoff === null ? GUESSED.depth : null,
    findings,
  };
}

function volumeOf(
  spec: Design,
  struts: { readonly count: number; readonly chord: number; readonly thickness: number },
  running: number,
): { readonly wing: number; readonly share: number | null; readonly findings: readonly Finding[] } {
  const ratio = spec.thicknessRatio ?? USUAL_CRAFT.thicknessRatio;
  const estimate = SECTION_FULLNESS * ratio * spec.area * spec.area / spec.span;
  const name = printable(spec.design);
  const common = { file: FILE, row: spec.row, column: "wet_volume" } as const;
  if (spec.wetVolume === null) {
    return {
      wing: estimate,
      share: GUESSED.volume,
      findings: [finding({
        ...common,
        severity: "note",
        code: "volume-estimated",
        what: `Wet volume of ${name} is estimated from its planform, good to 30 %: ${
          (estimate * 1000).toFixed(1)
        } litres of wing.`,
        wanted: "The water that wing and strut push aside, by dunking them.",
      })],
    };
  }
  const wing = spec.wetVolume - strutVolume(struts, running);
  if (wing > 0) {
    const own = ownShare(spec, "wet_volume", spec.wetVolume);
    return { wing, share: own === null ? null : own * spec.wetVolume / wing, findings: [] };
  }
  return {
    wing: estimate,
    share: GUESSED.volume,
    findings: [finding({
      ...common,
      severity: "warning",
      code: "volume-below-struts",
      what: `${atSentenceStart(name)} pushes ${
        (spec.wetVolume * 1000).toFixed(1)
      } litres aside, less than its struts alone: the volume of its planform is taken.`,
      wanted: "The volume of wing and struts under water, in litres.",
    })],
  };
}

/** Numbers of designs.csv that stand in by a usual value where they are missing. */
const FILLED = [
  ["thicknessRatio", "thickness_ratio", "thicknessRatio"],
  ["strutCount", "strut_count", "strutCount"],
  ["strutChord", "strut_chord", "strutChord"],
  ["strutThickness", "strut_thickness", "strutThickness"],
] as const satisfies readonly (readonly [keyof Design, string, keyof SteadyCraft])[];

/**
 * A design made ready.
 *
 * What is missing stands in by a usual value, with a finding that says so: the answer goes on.
 *
 * @param spec row of designs.csv
 * @param place of it, from 1
 * @param prepared load and water
 * @returns craft, doubts, inputs as the answer tells them, findings; `null` where the load is not known
 */
export function takeoffCraft(
  spec: Design,
  place: number,
  prepared: PreparedSetting,
): PreparedTakeoff | null {
  const { setting } = prepared;
  if (setting === null) return null;
  const findings: Finding[] = [];
  const name = printable(spec.design);
  const missing = FILLED.filter(([field]) => spec[field] === null);
  if (missing.length > 0) {
    findings.push(finding({
      severity: "note",
      code: "usual-taken",
      file: FILE,
      row: spec.row,
      column: missing.length === 1 ? missing[0]![1] : null,
      what: `${atSentenceStart(name)} has no ${
        listInWords(missing.map((one) => one[1]))
      }: usual values stand in.`,
      wanted: "These numbers in designs.csv.",
    }));
  }
  const usualLift = usualLargestLift(spec.section);
  const largest = spec.largestLiftCoefficient ?? usualLift.largest;
  if (spec.largestLiftCoefficient === null) {
    findings.push(finding({
      severity: "warning",
      code: "lift-assumed",
      file: FILE,
      row: spec.row,
      column: "largest_lift_coefficient",
      what: `The largest lift coefficient of ${name} is not known: ${largest} is taken${
        spec.section === null ? "" : ` for a ${spec.section} section`
      }. It is the largest doubt about takeoff.`,
      wanted: "largest_lift_coefficient, from a stall speed that you measured.",
    }));
  }
  const chord = spec.strutChord ?? USUAL_CRAFT.strutChord;
  const struts = {
    count: spec.strutCount ?? USUAL_CRAFT.strutCount,
    chord,
    thickness: spec.strutThickness ?? 0.12 * chord,
  };
  const depths = depthsOf(spec, prepared);
  const volume = volumeOf(spec, struts, depths.running);
  findings.push(...depths.findings, ...volume.findings);
  const craft: SteadyCraft = {
    ...USUAL_CRAFT,
    mass: setting.mass,
    span: spec.span,
    area: spec.area,
    wingVolume: volume.wing,
    thicknessRatio: spec.thicknessRatio ?? USUAL_CRAFT.thicknessRatio,
    largestLiftCoefficient: largest,
    liftCoefficientOfLeastDrag: usualLift.leastDrag,
    strutCount: struts.count,
    strutChord: struts.chord,
    strutThickness: struts.thickness,
    runningDepth: depths.running,
    takeoffDepth: depths.takeoff,
    extraDragArea: spec.extraDragArea ?? 0,
    temperature: setting.waterTemperature,
    salinity: setting.salinity,
    gravity: setting.gravity,
    altitude: setting.altitude,
    lineAngle: setting.lineAngle,
    headwind: setting.headwind,
  };
  const known = spec.largestLiftCoefficient !== null || spec.section !== null;
  // What the surface does to the largest lift itself: nothing known, and this bound on it.
  const surface = largest * (spec.area / spec.span) / (4 * Math.PI * depths.takeoff);
  const own: Partial<Record<keyof SteadyCraft, number | null>> = {
    largestLiftCoefficient: Math.hypot(
      ownShare(spec, "largest_lift_coefficient", largest) ?? (known ? LIFT_KNOWN : 0.14),
      surface,
    ),
    mass: prepared.mass?.uncertainty == null ? null : prepared.mass.uncertainty / setting.mass,
    area: ownShare(spec, "area", spec.area),
    span: ownShare(spec, "span", spec.span),
    wingVolume: volume.share,
    temperature: prepared.temperature.uncertainty,
    runningDepth: depths.runningUncertainty,
    takeoffDepth: depths.takeoffUncertainty,
    extraDragArea: spec.extraDragArea === null
      ? null
      : ownShare(spec, "extra_drag_area", spec.extraDragArea),
  };
  const doubts: Doubt[] = USUAL_DOUBTS
    .filter(({ key, kind }) => kind === "offset" || craft[key] !== 0)
    .map((one) => ({ ...one, standardUncertainty: own[one.key] ?? one.standardUncertainty }));
  if (prepared.wind > 0) {
    doubts.push({
      key: "headwind",
      name: "wind along the course",
      unit: "m/s",
      kind: "offset",
      standardUncertainty: prepared.wind / Math.SQRT2,
      basis: "its direction is not told",
    });
  }
  const stated = statedKeys(spec, prepared);
  const inputs = doubts.map(({ key, name: input, unit, kind, standardUncertainty }) => ({
    design: spec.design,
    input,
    value: craft[key],
    unit,
    standardUncertainty,
    kind,
    stated: stated.has(key),
  }));
  return { spec, place, craft, doubts, inputs, findings };
}

function statedKeys(spec: Design, prepared: PreparedSetting): ReadonlySet<keyof SteadyCraft> {
  const keys: (keyof SteadyCraft | null)[] = [
    "mass",
    "span",
    "area",
    spec.wetVolume === null ? null : "wingVolume",
    spec.largestLiftCoefficient === null ? null : "largestLiftCoefficient",
    spec.strutLength === null ? null : "takeoffDepth",
    spec.extraDragArea === null ? null : "extraDragArea",
    prepared.runningDepth === null ? null : "runningDepth",
    prepared.temperature.stated ? "temperature" : null,
    prepared.wind > 0 ? "headwind" : null,
  ];
  return new Set(keys.filter((one) => one !== null));
}
