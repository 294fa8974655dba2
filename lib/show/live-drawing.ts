/**
 * Tow force and power over speed for every design at a setting: the same drawing as a still figure and while it is moved.
 *
 * @module
 */
import type { TakeoffCurvePoint, TakeoffLeast } from "../fit/takeoff-curve.ts";
import type { DrawingSize } from "./drawing-size.ts";
import type { LiveFlight, LiveState } from "./live-state.ts";
import { liveSentence } from "./live-words.ts";
import type { Panel, PanelCurve, PanelMark } from "./panel-frame.ts";
import { speedPanels } from "./speed-panels.ts";

/** What is drawn. */
export interface LiveDrawing {
  /** Unique on a page. */
  readonly id: string;
  readonly states: readonly LiveState[];
  /** As published; `null` while nothing was moved. */
  readonly before: readonly LiveState[] | null;
}

interface Flying {
  readonly design: string;
  readonly place: number;
  readonly flight: LiveFlight;
}

const flying = (states: readonly LiveState[]): Flying[] =>
  states.flatMap(({ design, place, result }) =>
    result.ok ? [{ design, place, flight: result }] : []
  );

/** Where nothing flies, the speeds that foils fly at: m/s. */
const USUAL_SPEEDS = [2, 8] as const;

function curvesOf(
  designs: readonly Flying[],
  form: PanelCurve["form"],
  of: "force" | "power",
): PanelCurve[] {
  const point = (one: TakeoffCurvePoint) => ({ speed: one.speed, ...one[of] });
  return designs.map(({ design, place, flight }) => ({
    design,
    place,
    form,
    points: flight.curve.map(point),
  }));
}

/**
 * The drawing as a finished SVG.
 *
 * @param drawing states now and, once something was moved, as published
 * @param size of the drawing
 * @returns one SVG element
 */
export function liveDrawing({ id, states, before }: LiveDrawing, size: DrawingSize): string {
  const now = flying(states);
  const then = flying(before ?? []);
  const speeds = [...now, ...then].flatMap(({ flight: { curve, takeoffSpeed } }) => [
    curve[0]!.speed,
    curve.at(-1)!.speed,
    takeoffSpeed.value,
  ]);
  // Words beside the marks have room where there is one design.
  const words = (label: string) => now.length === 1 ? label : null;
  const least = (of: (flight: LiveFlight) => TakeoffLeast, label: string): PanelMark[] =>
    now.map(({ place, flight }) => ({
      place,
      kind: "least",
      speed: of(flight).speed.value,
      value: of(flight).value.value,
      label: words(label),
    }));
  const takeoff = now.map(({ place, flight }): PanelMark => ({
    place,
    kind: "takeoff",
    speed: flight.takeoffSpeed.value,
    value: flight.towForceAtTakeoff.value,
    label: words("takeoff"),
  }));
  const panel = (label: string, of: "force" | "power", marks: readonly PanelMark[]): Panel => ({
    label,
    curves: [...curvesOf(then, "before", of), ...curvesOf(now, "now", of)],
    marks,
  });
  return speedPanels({
    id,
    title: "Tow force and power over speed",
    description: states.map(liveSentence).join(" "),
    speeds: speeds.length === 0 ? USUAL_SPEEDS : [Math.min(...speeds), Math.max(...speeds)],
    empty: "nothing lifts it",
    panels: [
      panel("tow force (N)", "force", [
        ...least((flight) => flight.leastDrag, "least drag"),
        ...takeoff,
      ]),
      panel(
        "power into water and air (W)",
        "power",
        least((flight) => flight.leastPower, "least power"),
      ),
    ],
  }, size);
}
