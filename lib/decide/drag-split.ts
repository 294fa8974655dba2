/**
 * What can be taken off the drag of a fitted tow, so that the wing is the rest.
 *
 * @module
 */
import type { Design, Session } from "../base/session.ts";
import { conditionOf } from "../check/condition-of.ts";
import { tareDrag, type TareFit } from "../fit/tare-fit.ts";
import type { TowSeries } from "../fit/tow-series.ts";
import { strutDrag } from "../model/strut-drag.ts";
import type { Medium } from "./session-medium.ts";
import { type PreparedDesignTow, sharedOffs } from "./tow-errors.ts";
import type { PreparedPoint, PreparedTow } from "./tow-readings.ts";
import { strutsOf, type TowTare, towTare } from "./tow-tare.ts";

/** Everything that a split at any speed needs. */
export interface DragSplit {
  readonly spec: Design;
  readonly medium: Medium;
  readonly series: TowSeries;
  readonly tare: TowTare | null;
  /** m, as measured or the usual one. */
  readonly depth: number;
  /** m, what is independent of the other readings' depths. */
  readonly depthUncertainty: number;
  /** m that each shared error takes off the depth at plus one standard uncertainty, by name. */
  readonly depthOff: ReadonlyMap<string, number>;
  readonly rider: RiderInAir;
  /** What cannot be told apart from the wing. */
  readonly rest: RestName;
}

/** Rider and board in the air. */
export interface RiderInAir {
  /** m2: drag over dynamic pressure. */
  readonly area: number;
  /** Its standard uncertainty as a share. */
  readonly doubt: number;
  readonly how: "formula" | "stated";
}

/** What the rest holds. */
export type RestName = "wing" | "wing and junction" | "wing and struts";

/** A part that is taken off. */
export type TakenName =
  | "struts"
  | "spray"
  | "struts and spray"
  | "junction"
  | "rider in the air"
  | "other";

/** Where a part's drag comes from. */
export type PartOrigin = "tare" | "formula" | "stated";

/** kg/m3 of air (ISO 2533). */
const AIR = 1.225;

/** A rider who stands, bent; from memory, to a third. */
const USUAL_RIDER: RiderInAir = { area: 0.55, doubt: 0.3, how: "formula" };

/** m: standard uncertainty of the depth that stands in where nobody measured it. */
const UNKNOWN_DEPTH = 0.12;

/**
 * A design's split.
 *
 * @param prepared the session
 * @param spec the design
 * @param fitted its used readings, as prepared, and the fit
 * @returns what `dragAt` needs
 */
export function dragSplit(
  prepared: PreparedTow,
  spec: Design,
  { used, ready, series }: {
    readonly used: readonly PreparedPoint[];
    readonly ready: PreparedDesignTow;
    readonly series: TowSeries;
  },
): DragSplit {
  const { depth } = ready.prior;
  const struts = strutsOf(spec);
  const tare = towTare(prepared, spec, ready.depthKnown ? depth : null);
  return {
    spec,
    medium: prepared.medium,
    series,
    tare,
    depth,
    depthUncertainty: ready.depthKnown
      ? prepared.columns.depth.fixed / Math.sqrt(used.filter((one) => one.depth !== null).length)
      : UNKNOWN_DEPTH,
    depthOff: new Map(
      sharedOffs(prepared, spec).map(({ name, off }) => [name, off(1).depth ?? 0]),
    ),
    rider: riderOf(prepared.session),
    rest: struts !== null ? "wing" : tare !== null ? "wing and junction" : "wing and struts",
  };
}

/** As stated in conditions.csv; without an uncertainty it is taken to be as good as the usual one. */
function riderOf(session: Session): RiderInAir {
  const stated = conditionOf(session, "air_drag_area", null);
  if (stated === null || !(stated.value > 0)) return USUAL_RIDER;
  return {
    area: stated.value,
    doubt: stated.uncertainty === null ? USUAL_RIDER.doubt : stated.uncertainty / stated.value,
    how: "stated",
  };
}

/** A part at one speed, N. */
export interface Taken {
  readonly part: TakenName;
  readonly how: PartOrigin;
  readonly value: number;
}

/**
 * The parts to take off, values alone.
 *
 * @param split of a design
 * @param speed m/s
 * @param state depth in m, and the struts as tared where they were
 * @returns those above zero
 */
export function takenParts(
  { spec, medium, rider }: DragSplit,
  speed: number,
  { depth, tared }: { readonly depth: number; readonly tared: TareFit | null },
): Taken[] {
  const struts = strutsOf(spec);
  const { density, kinematicViscosity } = medium;
  const byFormula = struts === null || struts.count === 0
    ? null
    : strutDrag(struts, { speed, depth, density, kinematicViscosity });
  const parts: Taken[] = [
    ...(tared === null
      ? byFormula === null ? [] : [
        { part: "struts", how: "formula", value: byFormula.friction } as const,
        { part: "spray", how: "formula", value: byFormula.spray } as const,
      ]
      : [
        {
          part: "struts and spray",
          how: "tare",
          value: tareDrag(tared, speed, depth),
        } as const,
      ]),
    { part: "junction", how: "formula", value: byFormula?.junction ?? 0 },
    { part: "rider in the air", how: rider.how, value: AIR / 2 * rider.area * speed ** 2 },
    { part: "other", how: "stated", value: density / 2 * speed ** 2 * (spec.extraDragArea ?? 0) },
  ];
  return parts.filter((one) => one.value > 0);
}
