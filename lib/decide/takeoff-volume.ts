/**
 * Volume of a design's wing without its struts.
 *
 * @module
 */
import { type Finding, finding } from "../base/finding.ts";
import { printable } from "../base/printable.ts";
import { atSentenceStart } from "../base/sentence-words.ts";
import type { Design } from "../base/session.ts";
import { type Struts, strutVolume } from "../model/strut-drag.ts";
import { USUAL_CRAFT } from "../model/usual-craft.ts";

/** Area of a four-digit symmetric section over chord times thickness. */
const SECTION_FULLNESS = 0.685;

/** Standard uncertainty of a volume that is guessed from the planform, as a share. */
const GUESSED = 0.3;

const FILE = "designs.csv";

/**
 * A row's own uncertainty as a share of its value.
 *
 * @param spec row of designs.csv
 * @param column name without unit
 * @param value SI
 * @returns 1; `null` where the row states none
 */
export function ownShare(spec: Design, column: string, value: number): number | null {
  const own = spec.own[column];
  return own === undefined || !(value > 0) ? null : own / value;
}

/**
 * Volume of the wing alone: what was dunked less the struts, else the planform's.
 *
 * @param spec row of designs.csv
 * @param struts count, chord and thickness in m
 * @param running m of strut under water where the volume was told
 * @returns m3, with its standard uncertainty as a share where that is not the usual
 */
export function wingVolumeOf(
  spec: Design,
  struts: Struts,
  running: number,
): { readonly wing: number; readonly share: number | null; readonly findings: readonly Finding[] } {
  const ratio = spec.thicknessRatio ?? USUAL_CRAFT.thicknessRatio;
  const estimate = SECTION_FULLNESS * ratio * spec.area * spec.area / spec.span;
  const name = printable(spec.design);
  const common = { file: FILE, row: spec.row, column: "wet_volume" } as const;
  if (spec.wetVolume === null) {
    return {
      wing: estimate,
      share: GUESSED,
      findings: [finding({
        ...common,
        severity: "note",
        code: "volume-estimated",
        what: `Wet volume of ${name} is estimated from its planform, good to 30 %: ${
          (estimate * 1000).toFixed(1)
        } litres of wing.`,
        wanted: "The water that wing and strut push aside, by dunking them.",
      })],
    };
  }
  const wing = spec.wetVolume - strutVolume(struts, running);
  if (wing > 0) {
    const own = ownShare(spec, "wet_volume", spec.wetVolume);
    return { wing, share: own === null ? null : own * spec.wetVolume / wing, findings: [] };
  }
  return {
    wing: estimate,
    share: GUESSED,
    findings: [finding({
      ...common,
      severity: "warning",
      code: "volume-below-struts",
      what: `${atSentenceStart(name)} pushes ${
        (spec.wetVolume * 1000).toFixed(1)
      } litres aside, less than its struts alone: the volume of its planform is taken.`,
      wanted: "The volume of wing and struts under water, in litres.",
    })],
  };
}
