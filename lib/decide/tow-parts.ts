/**
 * The contract's drag by parts of one towed design, and the lift-to-drag of its wing.
 *
 * @module
 */
import { type Finding, finding } from "../base/finding.ts";
import type { Quantity } from "../base/quantity.ts";
import type { DragPart, SpeedLiftToDrag, SpeedParts } from "../base/tow-answer.ts";
import type { SpeedRange } from "../fit/tow-curve.ts";
import { dragEstimate } from "../fit/tow-estimates.ts";
import { singleVariance } from "../fit/tow-variance.ts";
import { studentInterval } from "../infer/mean-interval.ts";
import { dragAt, type DragAtSpeed } from "./drag-at-speed.ts";
import type { DragSplit, PartOrigin, TakenName } from "./drag-split.ts";
import { type ExpectedWing, expectedWing, WING_DOUBT } from "./expected-wing.ts";
import { quantityFromLog } from "./log-quantity.ts";
import { towQuantity } from "./tow-quantity.ts";

/** Where the formula of a part stands, and how far it is trusted. */
const SOURCE: Readonly<Record<TakenName, string>> = {
  struts:
    "Hoerner 1965: section drag 2 C_F (1 + 2 t/c + 60 (t/c)^4), friction coefficient C_F, thickness t, chord c; good to 40 %",
  spray: "Hoerner 1965, from memory: 0.24 q t², dynamic pressure q, thickness t; good to 50 %",
  "struts and spray": "readings of the struts alone",
  junction:
    "Hoerner 1965: q t² (17 (t/c)² − 0.05), dynamic pressure q, thickness t and chord c of the strut; good to 60 %",
  "rider in the air":
    "0.55 m² of a rider who stands, in air of 1.225 kg/m³, common practice; good to 30 %",
  other: "extra_drag_area in designs.csv; good to 30 %",
};

/** Half an interval over the rest beyond which there is nothing to say about it. */
const HOPELESS = 0.8;

/** Parts, wing, and what could not be split. */
export interface TowParts {
  readonly parts: readonly SpeedParts[];
  readonly wingLiftToDrag: readonly SpeedLiftToDrag[];
  readonly findings: readonly Finding[];
}

/**
 * Parts at the ends of the speeds towed and at the best speed, where that was towed.
 *
 * @param split of a design
 * @param range speeds towed
 * @param best m/s of the best lift-to-drag; `null` where it was not towed
 * @returns parts, slowest first
 */
export function towParts(split: DragSplit, range: SpeedRange, best: number | null): TowParts {
  const { design } = split.spec;
  const expected = expectedWing(split);
  const findings: Finding[] = [];
  const parts: SpeedParts[] = [];
  const wingLiftToDrag: SpeedLiftToDrag[] = [];
  const places = [
    { at: "slowest", speed: range.from },
    ...(best === null ? [] : [{ at: "best", speed: best } as const]),
    { at: "fastest", speed: range.to },
  ] as const;
  const hopeless: string[] = [];
  for (const { at, speed } of places) {
    const found = dragAt(split, speed);
    if (found === null) continue;
    const rest = drag(found.rest, found.restVariance, found.degreesOfFreedom);
    if (!(rest.value - rest.low! < HOPELESS * rest.value)) {
      hopeless.push(speed.toFixed(2));
      continue;
    }
    parts.push({
      at,
      speed,
      total: towQuantity(singleVariance(dragEstimate(split.series, speed)!), "N"),
      parts: [
        ...found.taken.map(({ part, how, value, variance, degreesOfFreedom }): DragPart => ({
          part,
          how,
          source: sourceOf(split, part, how),
          drag: quantityFromLog({
            log: Math.log(value),
            variance: variance / value ** 2,
            degreesOfFreedom,
            unit: "N",
          }),
        })),
        { part: split.rest, how: "rest", source: "the whole less all of the above", drag: rest },
      ],
      expectedOfWing: split.rest === "wing" && expected !== null
        ? expectation(expected(speed), found)
        : null,
    });
    if (split.rest === "wing") {
      wingLiftToDrag.push({ speed, liftToDrag: liftToDrag(found) });
    }
  }
  if (hopeless.length > 0) {
    findings.push(finding({
      severity: "warning",
      code: "parts-exceed-drag",
      file: "tow.csv",
      what: `The drag of ${design} is not split at ${
        hopeless.join(" and ")
      } m/s: what would be taken off is about as much as the whole.`,
      wanted: "Sizes of the struts in mm; tare readings with nothing but the struts on the line.",
    }));
  }
  if (split.rest !== "wing") {
    const junction = split.rest === "wing and junction";
    findings.push(finding({
      severity: "note",
      code: "wing-not-split",
      file: "designs.csv",
      row: split.spec.row,
      what: `The wing of ${design} is not told apart from ${
        junction ? "its junction with the struts" : "its struts"
      }: designs.csv does not give count, chord and thickness of its struts (thickness up to 0.3 chord)${
        junction ? "" : ", and there is no tare reading"
      }. All else is answered.`,
      wanted: "strut_count, strut_chord and strut_thickness.",
    }));
  }
  return { parts, wingLiftToDrag, findings };
}

function sourceOf({ tare, rider }: DragSplit, part: TakenName, how: PartOrigin): string {
  if (how === "tare") {
    const { readings, from, to } = tare!;
    return `${readings} ${SOURCE[part]}, ${from.toFixed(2)} to ${to.toFixed(2)} m/s`;
  }
  return part === "rider in the air" && how === "stated"
    ? `air_drag_area in conditions.csv, in air of 1.225 kg/m³; good to ${
      (rider.doubt * 100).toFixed(0)
    } %`
    : SOURCE[part];
}

/** N. What is left when parts are taken off may be off to either side alike: an interval of equal arms. */
function drag(value: number, variance: number, degreesOfFreedom: number | null): Quantity {
  return studentInterval({
    value,
    standardUncertainty: Math.sqrt(variance),
    degreesOfFreedom: degreesOfFreedom ?? Infinity,
  }, { unit: "N" });
}

/** Upside down: its ends are those of drag over lift. */
function liftToDrag({ dragToLift: { value, variance, degreesOfFreedom } }: DragAtSpeed): Quantity {
  const ratio = studentInterval({
    value,
    standardUncertainty: Math.sqrt(variance),
    degreesOfFreedom: degreesOfFreedom ?? Infinity,
  });
  return {
    ...ratio,
    value: 1 / value,
    standardUncertainty: Math.sqrt(variance) / value ** 2,
    low: 1 / ratio.high!,
    high: 1 / ratio.low!,
  };
}

/** What formulas let expect of the wing, and what the measurement shows beyond it, which may be less than nothing. */
function expectation(expected: ExpectedWing, found: DragAtSpeed): SpeedParts["expectedOfWing"] {
  const of = (name: keyof ExpectedWing) =>
    quantityFromLog({
      log: Math.log(expected[name]),
      variance: WING_DOUBT[name] ** 2,
      degreesOfFreedom: null,
      unit: "N",
    });
  const names = ["frictionAndForm", "viscousLift", "inducedAndWave"] as const;
  const sum = names.reduce((total, name) => total + expected[name], 0);
  const variance = found.restVariance +
    names.reduce((total, name) => total + (WING_DOUBT[name] * expected[name]) ** 2, 0);
  return {
    frictionAndForm: of("frictionAndForm"),
    viscousLift: of("viscousLift"),
    inducedAndWave: of("inducedAndWave"),
    excess: drag(found.rest - sum, variance, null),
  };
}
