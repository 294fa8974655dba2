/**
 * Tow force and power over speed for every design at a setting: the same drawing as a still figure and while it is moved.
 *
 * @module
 */
import type { DrawingSize } from "./drawing-size.ts";
import type { LiveFlight, LiveLeast, LivePoint, LiveState } from "./live-state.ts";
import { liveSentence } from "./live-words.ts";
import { type Panel, type PanelCurve, speedPanels } from "./speed-panels.ts";

type Flying = LiveState & LiveFlight;

const flying = (states: readonly LiveState[]): Flying[] =>
  states.filter((one): one is Flying => one.flies);

function curves(
  states: readonly Flying[],
  form: PanelCurve["form"],
  quantity: (point: LivePoint) => LivePoint["force"],
): PanelCurve[] {
  return states.map(({ design, place, curve }) => ({
    design,
    place,
    form,
    points: curve.map((point) => {
      const { value, low, high } = quantity(point);
      return { speed: point.speed, value, low, high };
    }),
  }));
}

/** What is drawn. */
export interface LiveDrawing {
  /** Unique on a page. */
  readonly id: string;
  readonly states: readonly LiveState[];
  /** As published; `null` while nothing was moved. */
  readonly before: readonly LiveState[] | null;
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
  const all = [...now, ...then].flatMap(({ curve, takeoffSpeed }) => [
    curve[0]!.speed,
    curve.at(-1)!.speed,
    takeoffSpeed.value,
  ]);
  const words = now.length === 1;
  const least = (what: (one: Flying) => LiveLeast, label: string) =>
    now.map((one) => ({
      place: one.place,
      kind: "least" as const,
      speed: what(one).speed.value,
      value: what(one).value.value,
      label: words ? label : null,
    }));
  const panel = (label: string, of: (point: LivePoint) => LivePoint["force"]): Panel => ({
    label,
    curves: [...curves(then, "before", of), ...curves(now, "now", of)],
    marks: [],
  });
  return speedPanels({
    id,
    title: "Tow force and power over speed",
    description: states.map(liveSentence).join(" "),
    speeds: all.length === 0 ? [2, 8] : [Math.min(...all), Math.max(...all)],
    empty: "nothing lifts it",
    panels: [
      {
        ...panel("tow force (N)", (point) => point.force),
        marks: [
          ...least((one) => one.leastDrag, "least drag"),
          ...now.map((one) => ({
            place: one.place,
            kind: "takeoff" as const,
            speed: one.takeoffSpeed.value,
            value: one.forceAtTakeoff.value,
            label: words ? "takeoff" : null,
          })),
        ],
      },
      {
        ...panel("power into water and air (W)", (point) => point.power),
        marks: least((one) => one.leastPower, "least power"),
      },
    ],
  }, size);
}
