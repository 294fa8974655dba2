/**
 * What the tare readings of a session say about the struts.
 *
 * @module
 */
import { type Finding, finding } from "../base/finding.ts";
import type { Design } from "../base/session.ts";
import { fitTare, type StrutShape, type TareFit, type TareReading } from "../fit/tare-fit.ts";
import { strutDrag, type Struts } from "../model/strut-drag.ts";
import type { Medium } from "./session-medium.ts";
import { sharedOffs } from "./tow-errors.ts";
import { type Off, readingOff } from "./tow-off.ts";
import type { PreparedPoint, PreparedTow } from "./tow-readings.ts";

/** The struts' drag as tared, and what each shared error does to it. */
export interface TowTare {
  readonly fit: TareFit;
  /** The same at plus and at minus one standard uncertainty of each shared error, by its name. */
  readonly shifts: ReadonlyMap<string, readonly [TareFit, TareFit]>;
  readonly readings: number;
  /** m/s: slowest and fastest tare. */
  readonly from: number;
  readonly to: number;
}

const FILE = "tow.csv";

/** Tare over formula beyond which one of the two is not what it is taken for: formulas are good to 40 %. */
const ODD = { low: 1 / 3, high: 3 } as const;

/** Thickness over chord beyond which no formula here holds. */
const THICKEST = 0.3;

/** m: chords that struts have. */
const CHORD = { least: 0.02, most: 1 } as const;

/**
 * Struts of a design as designs.csv gives them.
 *
 * @param spec the design
 * @returns `null` where count, chord or thickness is missing, or no formula holds for them
 */
export function strutsOf(spec: Design): Struts | null {
  const { strutCount: count, strutChord: chord, strutThickness: thickness } = spec;
  if (count === 0) return { count, chord: 0, thickness: 0 };
  return count === null || chord === null || thickness === null || !(count > 0 && thickness > 0) ||
      !(thickness <= THICKEST * chord && chord >= CHORD.least && chord <= CHORD.most)
    ? null
    : { count, chord, thickness };
}

/**
 * Friction, form and spray of struts by formula.
 *
 * @param struts sizes
 * @param medium water
 * @returns N by speed and depth
 */
export function strutShape(struts: Struts, { density, kinematicViscosity }: Medium) {
  return (speed: number, depth: number) => {
    const { friction, spray } = strutDrag(struts, { speed, depth, density, kinematicViscosity });
    return friction + spray;
  };
}

/** Speeds in m/s that a tow may have. */
const TOWED = { slowest: 0.3, fastest: 30 } as const;

/** Why a tare can't serve; `null` where it can. */
function against({ reason, speed }: PreparedPoint): string | null {
  return reason ??
    (speed >= TOWED.slowest && speed <= TOWED.fastest ? null : "its speed is not that of a tow");
}

/** Tares that may be used, and whether there is only one kind of struts that they can be about. */
function tared({ tares, session, points }: PreparedTow) {
  const towed = session.designs.filter((one) =>
    points.some(({ point }) => point.design === one.design)
  );
  const kinds = new Set(towed.map((one) => JSON.stringify(strutsOf(one))));
  return { used: tares.filter((one) => against(one) === null), single: kinds.size <= 1 };
}

/**
 * The struts of a design from tare readings.
 *
 * The readings carry the errors of the same instruments as a design's: one error of the load cell moves both, so that it
 * leaves their difference nearly alone. Where sizes of the struts and the depth are known the shape over speed and depth
 * is the formula's; else the square of the speed, times the depth where that is known.
 *
 * @param prepared the session
 * @param spec the design
 * @param depth m of its wing; `null` where nobody measured it
 * @returns the fit, or `null` where there is no tare that can serve
 */
export function towTare(
  prepared: PreparedTow,
  spec: Design,
  depth: number | null,
): TowTare | null {
  const { used, single } = tared(prepared);
  if (used.length === 0 || !single) return null;
  const struts = strutsOf(spec);
  if (struts?.count === 0) return null;
  const depthsKnown = depth !== null && used.every((one) => one.depth !== null);
  const formula = struts !== null && depthsKnown ? strutShape(struts, prepared.medium) : null;
  const shape: StrutShape = (speed, at) =>
    formula !== null ? formula(speed, at!) : speed ** 2 * (depthsKnown ? at! : 1);
  const readings = (off: Off) => used.map((one) => readingOf(prepared, one, off));
  const fit = fitTare(readings({}), shape);
  if (!fit.ok || (formula !== null && isOdd(fit.factor))) return null;
  const shifts = new Map<string, readonly [TareFit, TareFit]>();
  for (const { name, off } of sharedOffs(prepared, spec)) {
    const [plus, minus] = ([1, -1] as const).map((sign) => {
      const shifted = readings(off(sign));
      return shifted.every((one) => one.speed > 0)
        ? fitTare(shifted, shape, { scatterScale: fit.scatterScale })
        : null;
    });
    if (!plus?.ok || !minus?.ok) return null;
    shifts.set(name, [plus, minus]);
  }
  const speeds = used.map((one) => one.speed);
  return {
    fit,
    shifts,
    readings: used.length,
    from: Math.min(...speeds),
    to: Math.max(...speeds),
  };
}

const isOdd = (factor: number) => !(factor > ODD.low && factor < ODD.high);

function readingOf(prepared: PreparedTow, one: PreparedPoint, off: Off): TareReading {
  const { columns } = prepared;
  return {
    ...readingOff(prepared, one, off),
    // Struts and what holds them weigh little; without a mass the drift of a window counts as none.
    inertia: one.mass * (one.point.speedChange ?? 0),
    depth: one.depth === null ? null : Math.max(0.02, one.depth - (off.depth ?? 0)),
    depthUncertainty: one.point.own.depth ?? columns.depth.fixed,
  };
}

/**
 * Findings about the tare readings as a whole.
 *
 * @param prepared a session
 * @returns findings; none without tare readings
 */
export function tareFindings(prepared: PreparedTow): Finding[] {
  const { tares, session, medium } = prepared;
  if (tares.length === 0) return [];
  const { used, single } = tared(prepared);
  const found: Finding[] = [];
  const out = tares.filter((one) => against(one) !== null);
  if (out.length > 0) {
    found.push(finding({
      severity: "note",
      code: "tares-left-out",
      file: FILE,
      row: out.length === 1 ? out[0]!.point.row : null,
      count: out.length,
      what: `${
        out.length === 1 ? "One tare reading was" : `${out.length} tare readings were`
      } left out: ${out.map((one) => `${one.point.point} (${against(one)})`).join(", ")}.`,
    }));
  }
  if (used.length === 0) return found;
  if (!single) {
    found.push(finding({
      severity: "warning",
      code: "tare-of-which-struts",
      file: FILE,
      row: used[0]!.point.row,
      what:
        "The designs have different struts, and a tare reading does not say which: none is used.",
      wanted: "Designs on the same struts, or a session for each.",
    }));
    return found;
  }
  const design = session.designs.find((one) =>
    prepared.points.some(({ point }) => point.design === one.design)
  );
  const struts = design === undefined ? null : strutsOf(design);
  if (struts === null || struts.count === 0 || used.some((one) => one.depth === null)) return found;
  const fit = fitTare(
    used.map((one) => readingOf(prepared, one, {})),
    (speed, depth) => strutShape(struts, medium)(speed, depth!),
  );
  if (!fit.ok || isOdd(fit.factor)) {
    found.push(finding({
      severity: "warning",
      code: "tare-is-odd",
      file: FILE,
      row: used[0]!.point.row,
      what: fit.ok
        ? `The tare readings show ${
          fit.factor.toPrecision(2)
        } times the drag that a formula gives for these struts: not used.`
        : `The tare readings can't be used: ${fit.reason}.`,
      wanted:
        "Unit of line_tension, sizes of the struts in mm, depth; nothing but the struts on the line.",
    }));
  }
  return found;
}
