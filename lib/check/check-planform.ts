/**
 * Span, area and volume of a design against each other.
 *
 * @module
 */
import { type Finding, finding } from "../base/finding.ts";
import { excerpt } from "../base/printable.ts";
import type { Design, Session } from "../base/session.ts";
import { short } from "./rule.ts";

const USUAL_ASPECT_RATIO = [2.5, 20] as const;

function checkDesign(design: Design): Finding[] {
  const { span, area, thicknessRatio, wetVolume, row } = design;
  const findings: Finding[] = [];
  const warn = (code: string, column: string, what: string, wanted: string) =>
    findings.push(
      finding({ severity: "warning", code, file: "designs.csv", row, column, what, wanted }),
    );
  const ratio = span * span / area;
  if (ratio < USUAL_ASPECT_RATIO[0] || ratio > USUAL_ASPECT_RATIO[1]) {
    warn(
      "odd-aspect-ratio",
      "area",
      `Span ${short(span)} m and area ${short(area)} m2 make an aspect ratio of ${
        short(ratio)
      }; wings that carry a person have 2.5 to 20.`,
      "Look whether span is tip to tip and area is the whole wing's, and at their units.",
    );
  }
  // A wing of constant section has about 0.7 thickness x chord of section area (common practice, no source).
  const wing = 0.7 * (thicknessRatio ?? 0.12) * area * area / span;
  if (wetVolume !== null && (wetVolume > 12 * wing || wetVolume < 0.2 * wing)) {
    warn(
      "odd-volume",
      "wet_volume",
      `${excerpt(design.design)} pushes ${
        short(wetVolume * 1000)
      } litres aside, but a wing of its size has about ${short(wing * 1000)} litres.`,
      "The volume of wing and strut under water, in litres; the board does not count.",
    );
  }
  return findings;
}

/**
 * Warns of designs whose measures don't fit each other.
 *
 * @param session whose designs
 * @returns warnings
 */
export function checkPlanform(session: Session): Finding[] {
  return session.designs.flatMap(checkDesign);
}
