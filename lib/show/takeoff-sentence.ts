/**
 * What the takeoff of designs comes to, in sentences that the terminal and the page share.
 *
 * @module
 */
import { printable } from "../base/printable.ts";
import { formatInterval, formatQuantity, NO_BREAK_SPACE } from "../base/rounding.ts";
import { atSentenceStart, listInWords } from "../base/sentence-words.ts";
import type { Quantity } from "../base/quantity.ts";
import type { DesignTakeoff, TakeoffComparison, TakeoffSetting } from "../base/takeoff-answer.ts";
import { valueWithInterval } from "./tow-sentence.ts";

/** What the words mean, and what is not in the numbers. */
export const TAKEOFF_WORDS =
  "Stall speed: the slowest steady flight at running depth, board clear of the water; what a launch from a jetty must exceed. Takeoff speed: " +
  "the board just clear, at the depth of the whole strut. Tow force is told from takeoff on: before it the board's own drag may ask for " +
  "more. Not in it: board in the water, fuselage and stabiliser (unless given as extra drag area), air drawn down, waves of the lake, a " +
  "near bottom, a wing that bends.";

/** What the numbers in brackets are. */
export const TAKEOFF_INTERVAL =
  "In brackets stands the 95 % interval of a prediction: it carries how well each input is known, as stated or by a usual " +
  "uncertainty. Nothing in it was measured.";

/** What can hurt. */
export const TAKEOFF_CAUTION =
  "Towing and falling can hurt: a line under load whips back, a foil cuts, a fall at these speeds near a foil is no small thing. Keep a " +
  "quick release and a lookout, wear protection, start with the lowest speed and the least line tension that flies, and follow local rules and what " +
  "licensed boat handlers say. That a wing should fly has not shown that it will hold.";

/**
 * The bottom line: takeoff speed and tow force of every design.
 *
 * @param designs of the answer
 * @returns one sentence
 */
export function takeoffHeadline(designs: readonly DesignTakeoff[]): string {
  const flying = designs.filter((one) => one.takeoffSpeed !== null)
    .map(({ design, takeoffSpeed: speed, towForceAtTakeoff: force }, at) =>
      `${printable(design)}${at === 0 ? " takes off" : ""} at ${formatQuantity(speed!)} with ${
        formatQuantity(force!)
      }${at === 0 ? " of pull" : ""}`
    );
  return flying.length === 0 ? "No takeoff can be told." : `By prediction ${listInWords(flying)}.`;
}

/**
 * From which speed one design carries its load, and what that takes.
 *
 * @param one a design's answer
 * @returns one or two sentences
 */
export function takeoffSentence(one: DesignTakeoff): string {
  const design = printable(one.design);
  switch (one.outcome) {
    case "floats":
      return `${atSentenceStart(design)} floats under this load: there is no takeoff to tell of.`;
    case "no-speed":
      return `No speed lifts this load on ${design}.`;
    case "not-told":
      return `Nothing can be told of ${design}: see the findings.`;
    case "beyond-range":
      return `${atSentenceStart(design)} would lift this load only at ${
        valueWithInterval(one.takeoffSpeed!)
      }, faster than anything tows.`;
  }
  return `${atSentenceStart(design)} takes off at ${valueWithInterval(one.takeoffSpeed!)} with ${
    valueWithInterval(one.towForceAtTakeoff!)
  } of pull; it stalls at ${valueWithInterval(one.stallSpeed!)}.${
    one.outcome === "beyond-tow" ? " The tow does not give that much." : ""
  }`;
}

/** A ratio with its interval. */
function timesAs(q: Quantity | null): string {
  if (q === null) return "not told";
  const interval = ` (${formatInterval(q, { apartFrom: 1 })})`;
  return `${formatQuantity(q, { apartFrom: 1 })} times${interval}`;
}

/**
 * One design against another: what both share has cancelled.
 *
 * @param one comparison of the answer
 * @returns one sentence
 */
export function takeoffRatioSentence(one: TakeoffComparison): string {
  const [candidate, baseline] = [printable(one.candidate), printable(one.baseline)];
  return `${atSentenceStart(candidate)} beside ${baseline}: takeoff speed ${
    timesAs(one.takeoffSpeedRatio)
  }, tow force there ${timesAs(one.towForceRatio)}, least drag ${
    timesAs(one.leastDragRatio)
  }; what both share (load, water, rider, formulas) has cancelled.`;
}

/**
 * What a design's own stalled glides say of its largest lift coefficient.
 *
 * @param one a design's answer
 * @param assumed largest lift coefficient in the answer
 * @returns one sentence a session; empty where no glide stalled
 */
export function stallSentence({ design, measuredStalls }: DesignTakeoff, assumed: number): string {
  return measuredStalls.map(({ session, endSpeed, predicted, largestLiftCoefficient: lift }) =>
    `Glides of ${printable(design)} in ${printable(session)} ended in a stall at ${
      valueWithInterval(endSpeed)
    }, predicted ${predicted.toFixed(2)}${NO_BREAK_SPACE}m/s: a largest lift coefficient of ${
      valueWithInterval(lift)
    }, where ${assumed} is assumed. Written into designs.csv, with its standard uncertainty of ${
      lift.standardUncertainty!.toFixed(2)
    } as u_largest_lift_coefficient, it narrows the takeoff speed.`
  ).join(" ");
}

/**
 * Best speeds of one design.
 *
 * @param one a design's answer
 * @returns one sentence; empty where nothing flies
 */
export function bestSpeedsSentence(one: DesignTakeoff): string {
  if (one.leastDrag === null || one.leastDragSpeed === null) return "";
  const power = one.leastPowerAtStall
    ? "least power right at its stall speed"
    : `least power ${valueWithInterval(one.leastPower!)} at ${
      valueWithInterval(one.leastPowerSpeed!)
    }`;
  return `Least drag of ${printable(one.design)}: ${valueWithInterval(one.leastDrag)} at ${
    valueWithInterval(one.leastDragSpeed)
  }; ${power}.`;
}

/**
 * Which speeds the available pull or power holds.
 *
 * @param one a design's answer
 * @param available N of pull or W of power
 * @param unit which of the two; N unless said otherwise
 * @returns one sentence; empty where none was asked about
 */
export function heldSentence(
  { design, speedsHeld }: DesignTakeoff,
  available: number,
  unit: "N" | "W" = "N",
): string {
  if (speedsHeld === null) return "";
  const given = `${available.toFixed(0)}${NO_BREAK_SPACE}${unit}`;
  const stretches = speedsHeld.map(([from, to]) => `${from.toFixed(2)} to ${to.toFixed(2)}`);
  return stretches.length === 0
    ? `${given} hold ${printable(design)} at no speed.`
    : `${given} hold ${printable(design)} at ${stretches.join(" and at ")}${NO_BREAK_SPACE}m/s.`;
}

/**
 * The same wing in air.
 *
 * @param one a design's answer
 * @returns one sentence; empty where nothing flies
 */
export function inAirSentence(
  { design, inAir, takeoffSpeed, liftEqualMass }: DesignTakeoff,
): string {
  if (inAir === null || inAir.takeoffSpeed === null || takeoffSpeed === null) return "";
  const equal = liftEqualMass === null
    ? ""
    : ` At the same speed and lift coefficient as in water it would carry ${
      (liftEqualMass * 1000).toFixed(0)
    }${NO_BREAK_SPACE}g.`;
  return `The wing of ${printable(design)} under the same load in air, ${
    inAir.altitude.toFixed(0)
  }${NO_BREAK_SPACE}m up, would take off at ${valueWithInterval(inAir.takeoffSpeed)}: ${
    (inAir.takeoffSpeed.value / takeoffSpeed.value).toFixed(1)
  } times as fast.${equal}`;
}

/**
 * What the numbers are told at.
 *
 * @param one setting of the answer
 * @returns one sentence; empty where the load is not known
 */
export function settingSentence(one: TakeoffSetting | null): string {
  if (one === null) return "";
  const salt = one.salinity === 0
    ? "fresh"
    : `${(one.salinity * 1000).toFixed(0)} g of salt a kilogram`;
  const line = one.lineAngle === 0
    ? "level line"
    : `line ${(one.lineAngle * 180 / Math.PI).toFixed(0)} degrees above the horizontal`;
  return `Holds for ${one.mass.toFixed(1)} kg, water of ${
    (one.waterTemperature - 273.15).toFixed(1)
  } °C (${salt}), ${one.altitude.toFixed(0)} m above the sea, ${line}.`;
}
