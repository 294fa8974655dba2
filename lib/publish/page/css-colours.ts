/**
 * Colours of the site as custom properties, light and dark, and what switches between them.
 *
 * Tested contrast on paper and on tint: text at least 7:1, borders that carry meaning and design marks at least 3:1.
 *
 * @module
 */
import { DESIGN_STYLES, OTHER_STYLE } from "../../show/design-style.ts";

/** Name, light value, dark value. */
export const COLOURS: readonly (readonly [string, string, string])[] = [
  ["--paper", "#fcfcfa", "#14181c"],
  ["--tint", "#f1f3f0", "#1d2328"],
  ["--ink", "#1a1e23", "#e4e7ea"],
  ["--ink-soft", "#474f58", "#b0b8c0"],
  ["--link", "#0b4c86", "#93c4f3"],
  ["--edge", "#727b84", "#8b949d"],
  ["--rule", "#cfd4d6", "#3a424a"],
  ["--caution-edge", "#9a5200", "#f0b35a"],
  ["--caution-tint", "#fff5e3", "#2a2115"],
  ["--target", "#fff3c4", "#3d3516"],
  ["--code-word", "#7b1f6a", "#e3a6d8"],
  ["--code-text", "#245a1c", "#a6d59a"],
  ["--code-number", "#7f3500", "#f2b27d"],
  ["--code-name", "#0b4c86", "#93c4f3"],
  ["--code-note", "#4a525a", "#b0b8c0"],
  ...[...DESIGN_STYLES, OTHER_STYLE].map(({ property, light, dark }) =>
    [property, light, dark] as const
  ),
];

const list = (value: (light: string, dark: string) => string) =>
  COLOURS.map(([name, light, dark]) => `${name}:${value(light, dark)}`).join(";");

/** Custom properties, and the three-way switch that works without a script. */
export const COLOUR_CSS = `
:root{color-scheme:light dark;${list((light, dark) => `light-dark(${light},${dark})`)}}
@supports not (color:light-dark(#000,#fff)){:root{color-scheme:light;${list((light) => light)}}}
:root:has(#theme-light:checked){color-scheme:light}
:root:has(#theme-dark:checked){color-scheme:dark}
@supports not selector(:has(*)){.theme{display:none}}
`;
