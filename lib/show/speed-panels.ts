/**
 * Panels of curves over speed, one above the other, drawn with a few lines of code: small enough to go into a page, where
 * the reader moves what is drawn.
 *
 * @module
 */
import { escapeHtml } from "../base/escape-html.ts";
import { printable } from "../base/printable.ts";
import { designColour, designStyle, INK, INK_SOFT, PAPER } from "./design-style.ts";
import type { DrawingSize } from "./drawing-size.ts";
import { FIGURE_FONTS } from "./finish-svg.ts";
import { cutToWidth, pushApart, textWidth } from "./label-room.ts";
import { markOutline } from "./mark-svg.ts";
import { niceAxis } from "./nice-axis.ts";
import {
  axes,
  type Frame,
  frameOf,
  type Panel,
  type PanelCurve,
  type PanelMark,
  units,
} from "./panel-frame.ts";

/** The whole drawing. */
export interface PanelDrawing {
  /** Unique on a page; prefix of all ids inside. */
  readonly id: string;
  readonly title: string;
  readonly description: string;
  /** m/s that the axis must hold. */
  readonly speeds: readonly [from: number, to: number];
  readonly panels: readonly Panel[];
  /** Said in the middle of an empty drawing. */
  readonly empty: string;
}

const pathOf = (points: readonly (readonly [number, number])[]) =>
  `M${points.map(([x, y]) => `${units(x)},${units(y)}`).join("L")}`;

const HALO = `stroke="${PAPER}" stroke-width="5" stroke-linejoin="round" paint-order="stroke"`;

/** Bands of many designs lie on each other: thinner then, so that the curves stay in sight. */
const bandOpacity = ({ curves }: Panel) =>
  curves.filter((one) => one.form === "now").length > 2 ? 0.1 : 0.16;

function curveParts({ x, y }: Frame, curve: PanelCurve, opacity: number): string[] {
  const { points, place, form } = curve;
  if (points.length < 2) return [];
  const line = pathOf(points.map((one) => [x(one.speed), y(one.value)]));
  if (form === "before") {
    return [
      `<path d="${line}" fill="none" stroke="${INK_SOFT}" stroke-width="1.5" stroke-dasharray="1.5 4"/>`,
    ];
  }
  const { dash } = designStyle(place);
  const band = pathOf([
    ...points.map((one) => [x(one.speed), y(one.high)] as const),
    ...points.toReversed().map((one) => [x(one.speed), y(one.low)] as const),
  ]);
  return [
    `<path d="${band}Z" fill="${designColour(place)}" fill-opacity="${opacity}"/>`,
    `<path d="${line}" fill="none" stroke="${designColour(place)}" stroke-width="2.25"` +
    `${dash === null ? "" : ` stroke-dasharray="${dash}"`}/>`,
  ];
}

function markParts({ x, y }: Frame, mark: PanelMark): string {
  const [at, up] = [units(x(mark.speed)), units(y(mark.value))];
  return mark.kind === "takeoff"
    ? `<circle cx="${at}" cy="${up}" r="5.5" fill="${PAPER}" stroke="${
      designColour(mark.place)
    }" ` +
      `stroke-width="2.25"/>`
    : `<path d="${markOutline(mark.place)}" transform="translate(${at},${up})" ` +
      `fill="${designColour(mark.place)}" stroke="${PAPER}"/>`;
}

function markWords({ x, y }: Frame, mark: PanelMark): string[] {
  if (mark.label === null) return [];
  return [
    `<text x="${units(x(mark.speed))}" y="${units(y(mark.value) + 23)}" ` +
    `text-anchor="middle" ${HALO}>${escapeHtml(mark.label)}</text>`,
  ];
}

/** Names of the designs to the right of their curves' ends, pushed apart. */
function endLabels(frame: Frame, panel: Panel, size: DrawingSize): string[] {
  const ends = panel.curves.filter((one) => one.form === "now" && one.points.length > 0);
  const places = pushApart(
    ends.map((one) => Math.max(frame.top, frame.y(one.points.at(-1)!.value))),
    size.fontSize + 2,
    frame.top,
    frame.bottom - 6,
  );
  return ends.map((one, at) =>
    `<path d="${markOutline(one.place)}" transform="translate(${frame.right + 12},${
      units(places[at]!)
    }) scale(0.8)" fill="${designColour(one.place)}"/>` +
    `<text x="${frame.right + 22}" y="${units(places[at]! + 4.5)}">${
      escapeHtml(cutToWidth(one.design, nameRoom(size), size.fontSize))
    }</text>`
  );
}

const nameRoom = (size: DrawingSize) => size.narrow ? 76 : 120;

/**
 * The drawing as a finished SVG: it stands alone as a file, and takes the colours of a page that it stands in.
 *
 * @param parts what is drawn; names in it may be any text
 * @param size of the drawing
 * @returns one SVG element as well-formed XML, coordinates rounded to a hundredth of a unit
 */
export function speedPanels(parts: PanelDrawing, size: DrawingSize): string {
  const { id, panels } = parts;
  const { width, fontSize, narrow } = size;
  const names = panels.flatMap((one) => one.curves).map((one) =>
    textWidth(cutToWidth(one.design, nameRoom(size), fontSize), fontSize)
  );
  const left = narrow ? 34 : 42;
  const right = width - (names.length === 0 ? 12 : 26 + Math.max(...names));
  const [inner, head, foot, last] = narrow ? [150, 34, 26, 48] : [185, 34, 30, 48];
  const height = panels.length * (head + inner) + (panels.length - 1) * foot + last;
  const speeds = niceAxis(...parts.speeds, narrow ? 5 : 9);

  const drawn = panels.flatMap((panel, n) => {
    const top = n * (head + inner + foot) + head;
    const box = { left, right, top, bottom: top + inner };
    const frame = frameOf(panel, speeds, box, narrow ? 4 : 6);
    const isLast = n === panels.length - 1;
    const empty = panel.curves.every((one) => one.form === "before" || one.points.length < 2);
    return [
      `<clipPath id="${id}-clip-${n + 1}"><rect x="${left}" y="${top - 4}" width="${
        units(right - left)
      }" height="${inner + 4}"/></clipPath>`,
      ...axes(frame, panel.label, isLast ? "speed through the water (m/s)" : null),
      `<g clip-path="url(#${id}-clip-${n + 1})">`,
      ...panel.curves.toSorted((a, b) => Number(a.form === "now") - Number(b.form === "now"))
        .flatMap((one) => curveParts(frame, one, bandOpacity(panel))),
      "</g>",
      ...panel.marks.map((one) => markParts(frame, one)),
      ...panel.marks.flatMap((one) => markWords(frame, one)),
      ...endLabels(frame, panel, size),
      ...(empty
        ? [
          `<text x="${units((left + right) / 2)}" y="${
            top + inner / 2
          }" text-anchor="middle" ${HALO}>${escapeHtml(parts.empty)}</text>`,
        ]
        : []),
    ];
  });
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" role="img" aria-labelledby="${id}-title" ` +
    `aria-describedby="${id}-desc" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}" ` +
    `font-family="${FIGURE_FONTS}" font-size="${fontSize}" font-variant="tabular-nums" ` +
    `fill="currentColor" color="${INK}">`,
    `<title id="${id}-title">${escapeHtml(printable(parts.title))}</title>`,
    `<desc id="${id}-desc">${escapeHtml(printable(parts.description))}</desc>`,
    `<rect width="${width}" height="${height}" fill="${PAPER}"/>`,
    ...drawn,
    "</svg>",
  ].join("");
}
