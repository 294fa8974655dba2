/**
 * Reads numbers back from a drawing, by its own axes: what a reader with a ruler would find.
 */
import { DOMParser } from "linkedom";

interface Element {
  readonly tagName: string;
  readonly textContent: string;
  getAttribute(name: string): string | null;
  querySelectorAll(selector: string): Iterable<Element>;
}

/** A drawing, parsed. */
export function parsed(svg: string): Element {
  const parser = new DOMParser() as unknown as {
    parseFromString(text: string, type: string): { documentElement: Element };
  };
  return parser.parseFromString(svg, "image/svg+xml").documentElement;
}

function shift(element: Element): [number, number] {
  const match = /^translate\(([-\d.]+),([-\d.]+)\)/.exec(element.getAttribute("transform") ?? "");
  return match === null ? [0, 0] : [Number(match[1]), Number(match[2])];
}

/** Turns units of the drawing into values of an axis, by its first and last tick. */
export function scaleOf(
  svg: string,
  axis: "x" | "y",
  kind: "linear" | "log" = "linear",
): (unit: number) => number {
  const labels = [...parsed(svg).querySelectorAll("g")].filter((group) =>
    group.getAttribute("font-variant") === "tabular-nums" &&
    (shift(group)[0] === 0) === (axis === "x")
  ).flatMap((group) => [...group.querySelectorAll("text")]);
  const ticks = labels.map((label) => ({
    unit: shift(label)[axis === "x" ? 0 : 1],
    value: Number(label.textContent.replace("\u2212", "-")),
  }));
  const [first, last] = [ticks[0]!, ticks[ticks.length - 1]!];
  const [to, from] = kind === "log"
    ? [Math.log, Math.exp]
    : [(value: number) => value, (value: number) => value];
  const slope = (to(last.value) - to(first.value)) / (last.unit - first.unit);
  return (unit) => from(to(first.value) + slope * (unit - first.unit));
}

/** Places of the marks in groups that have the given attributes, in units, in the order drawn. */
export function marks(
  svg: string,
  attributes: Readonly<Record<string, string>>,
): [number, number][] {
  const groups = [...parsed(svg).querySelectorAll("g")].filter((group) =>
    Object.entries(attributes).every(([name, value]) => group.getAttribute(name) === value)
  );
  return groups.flatMap((group) => [
    ...[...group.querySelectorAll("circle")].map((one): [number, number] => [
      Number(one.getAttribute("cx")),
      Number(one.getAttribute("cy")),
    ]),
    ...[...group.querySelectorAll("path")].map(shift),
  ]);
}

/** Lines in groups that have the given attributes: [x1, y1, x2, y2] in units. */
export function lines(
  svg: string,
  attributes: Readonly<Record<string, string>>,
): [number, number, number, number][] {
  const groups = [...parsed(svg).querySelectorAll("g")].filter((group) =>
    Object.entries(attributes).every(([name, value]) => group.getAttribute(name) === value)
  );
  const number = (line: Element, name: string) => Number(line.getAttribute(name));
  return groups.flatMap((group) =>
    [...group.querySelectorAll("line")].map((line): [number, number, number, number] => [
      number(line, "x1"),
      number(line, "y1"),
      number(line, "x2"),
      number(line, "y2"),
    ])
  );
}

/** Points of the paths in groups that have the given attributes, one list a path, in units. */
export function paths(
  svg: string,
  attributes: Readonly<Record<string, string>>,
): [number, number][][] {
  const groups = [...parsed(svg).querySelectorAll("g")].filter((group) =>
    Object.entries(attributes).every(([name, value]) => group.getAttribute(name) === value)
  );
  return groups.flatMap((group) =>
    [...group.querySelectorAll("path")].map((path) =>
      [...(path.getAttribute("d") ?? "").matchAll(/(-?[\d.]+),(-?[\d.]+)/g)]
        .map((point): [number, number] => [Number(point[1]), Number(point[2])])
    )
  );
}
