/**
 * Drag of one design by parts over speed, stacked, as numbers to draw.
 *
 * @module
 */
import { printable } from "../base/printable.ts";
import type { TowEvidence } from "../decide/compare-tows.ts";
import { dragAt } from "../decide/drag-at-speed.ts";
import type { DragSplit } from "../decide/drag-split.ts";
import { expectedWing } from "../decide/expected-wing.ts";
import { type TowCurves, towCurves } from "./tow-curves.ts";

/** One part at one speed. */
export interface StackedPart {
  /** m/s */
  readonly speed: number;
  /** N: lower and upper edge. */
  readonly low: number;
  readonly high: number;
}

/** One part over speed. */
export interface StackLayer {
  readonly part: string;
  readonly points: readonly StackedPart[];
}

/** Everything that is drawn for one design. */
export interface DragStack {
  readonly design: string;
  readonly place: number;
  /** From below: what is taken off, then the wing; empty without a law. */
  readonly layers: readonly StackLayer[];
  /** N by speed: what is taken off plus what formulas let expect of the wing; empty where the rest is not the wing alone. */
  readonly expected: readonly { readonly speed: number; readonly drag: number }[];
  /** The whole, with its band, and the readings. */
  readonly curves: TowCurves;
}

const sum = (values: readonly number[]) => values.reduce((total, one) => total + one, 0);

/** Largest and smoothest at the bottom, so that each layer's own shape can be seen. */
const ORDER = ["rider in the air", "other", "struts and spray", "struts", "spray", "junction"];

function layersOf(split: DragSplit, curves: TowCurves): StackLayer[] {
  const speeds = curves.curve.map((one) => one.speed);
  const found = speeds.flatMap((speed) => dragAt(split, speed) ?? []);
  const names = ORDER.filter((name) =>
    found.some((one) => one.taken.some((part) => part.part === name))
  );
  const valueOf = (one: typeof found[number], name: string) =>
    one.taken.find((part) => part.part === name)?.value ?? 0;
  return [
    ...names.map((part, at) => ({
      part,
      points: found.map((one) => {
        const low = sum(names.slice(0, at).map((name) => valueOf(one, name)));
        return { speed: one.speed, low, high: low + valueOf(one, part) };
      }),
    })),
    {
      part: split.rest,
      points: found.map((one) => ({
        speed: one.speed,
        low: Math.min(one.total, one.total - one.rest),
        high: one.total,
      })),
    },
  ];
}

/**
 * Drag by parts over speed of each design.
 *
 * @param evidence of a comparison
 * @returns one entry a design
 */
export function dragStacks(evidence: TowEvidence): DragStack[] {
  return towCurves(evidence).map((curves, at) => {
    const { split } = evidence.designs[at]!;
    const empty = { design: printable(curves.design), place: curves.place, curves };
    if (split === null) return { ...empty, layers: [], expected: [] };
    const layers = layersOf(split, curves);
    const wing = split.rest === "wing" ? expectedWing(split) : null;
    return {
      ...empty,
      layers,
      expected: wing === null ? [] : layers.at(-1)!.points.map(({ speed, low }) => ({
        speed,
        drag: low + sum(Object.values(wing(speed))),
      })),
    };
  });
}
