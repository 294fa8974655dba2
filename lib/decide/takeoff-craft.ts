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
import { USUAL_CRAFT, usualLargestLift } from "../model/usual-craft.ts";
import { takeoffDepths } from "./takeoff-depths.ts";
import type { PreparedSetting } from "./takeoff-setting.ts";
import { ownShare, wingVolumeOf } from "./takeoff-volume.ts";

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

/** Where the kind of section, or the largest lift coefficient itself, is stated. */
const LIFT_KNOWN = 0.12;

const FILE = "designs.csv";

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
  const depths = takeoffDepths(spec, prepared);
  const volume = wingVolumeOf(spec, struts, prepared.toldDepth ?? depths.running);
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
    airDragArea: prepared.airDragArea?.value ?? USUAL_CRAFT.airDragArea,
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
    airDragArea: prepared.airDragArea?.uncertainty == null
      ? null
      : prepared.airDragArea.uncertainty / prepared.airDragArea.value,
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
    prepared.airDragArea === null ? null : "airDragArea",
  ];
  return new Set(keys.filter((one) => one !== null));
}
