/**
 * The controls of a live figure: native sliders, each with its label, its value and its range in words.
 *
 * @module
 */
import type { LiveControl } from "../base/records.ts";
import { formatNumber } from "../base/rounding.ts";
import { controlText } from "../show/live-words.ts";
import { element, type PageDocument, type PageElement } from "./page-element.ts";

/** The controls in a page. */
export interface Controls {
  readonly fieldset: PageElement;
  /** Those that do not stand at their start, by name, in their units. */
  moved(): Record<string, number>;
  /** Puts all back to the published setting. */
  reset(): void;
}

interface Slider {
  readonly control: LiveControl;
  readonly input: PageElement;
  /** Writes its value beside it and for a screen reader. */
  say(): void;
}

/** One slider; `id` is unique on the page. */
function slider(document: PageDocument, control: LiveControl, id: string) {
  const { from, to, step, start, decimals, label } = control;
  const input = element(document, "input", {
    type: "range",
    id,
    name: control.name,
    min: String(from),
    max: String(to),
    step: String(step),
    value: String(start),
  });
  const output = element(document, "output", { for: id, "aria-live": "off" });
  const end = (value: number) =>
    element(document, "small", { "aria-hidden": "true" }, formatNumber(value, decimals));
  const row = element(
    document,
    "div",
    { class: "control" },
    element(document, "label", { for: id }, label),
    output,
    end(from),
    input,
    end(to),
  );
  const say = () => {
    const value = Number(input.value);
    output.textContent = controlText(control, value);
    input.setAttribute(
      "aria-valuetext",
      `${formatNumber(value, decimals)} ${control.spokenUnit}`.trim(),
    );
  };
  say();
  return { row, slider: { control, input, say } };
}

/**
 * Makes the controls.
 *
 * @param document of the page
 * @param legend what they are for
 * @param controls in order
 * @param id prefix of all ids inside
 * @param onMove called after each movement, and after a reset
 * @returns the controls, not yet in the page
 */
export function makeControls(
  document: PageDocument,
  { legend, controls, id }: {
    readonly legend: string;
    readonly controls: readonly LiveControl[];
    readonly id: string;
  },
  onMove: () => void,
): Controls {
  const made = controls.map((control) => slider(document, control, `${id}-${control.name}`));
  const sliders: Slider[] = made.map((one) => one.slider);
  const back = element(document, "button", { type: "button" }, "Back to the published setting");
  const fieldset = element(
    document,
    "fieldset",
    { class: "controls" },
    element(document, "legend", {}, legend),
    ...made.map((one) => one.row),
    back,
  );
  const reset = () => {
    for (const { control, input, say } of sliders) {
      input.value = String(control.start);
      say();
    }
    onMove();
  };
  for (const { input, say } of sliders) {
    input.addEventListener("input", () => {
      say();
      onMove();
    });
  }
  back.addEventListener("click", reset);
  return {
    fieldset,
    moved: () =>
      Object.fromEntries(
        sliders.map(({ control, input }) => [control, Number(input.value)] as const)
          .filter(([control, value]) => value !== control.start)
          .map(([control, value]) => [control.name, value]),
      ),
    reset,
  };
}
