/**
 * End speeds below what the wing can carry.
 *
 * @module
 */
import { type Finding, finding } from "../base/finding.ts";
import { excerpt } from "../base/printable.ts";
import type { Design, Glide, Session } from "../base/session.ts";
import { weightInWater } from "../model/buoyancy.ts";
import { gravity, STANDARD_GRAVITY } from "../model/gravity.ts";
import { stallSpeed } from "../model/stall.ts";
import { waterDensity } from "../model/water.ts";
import { conditionOf } from "./condition-of.ts";
import { keptGlides, median, short } from "./rule.ts";

/** Share of the stated stall speed below which an end speed is odd. */
const SHARE = 0.9;

/** From so many runs on, a design whose every run is odd is told once. */
const WHOLE_DESIGN = 3;

/**
 * Warns of runs that end more than 10 % slower than the stall speed that the design's own largest lift coefficient gives.
 *
 * Nobody glides slower than the stall, so either the coefficient is stated too low, the mass too high, or the end speed
 * was read after the board touched. Water and gravity are the session's, else fresh water of 15 degrees Celsius.
 *
 * @param session runs without mass and designs without a largest lift coefficient are passed over
 * @returns warnings
 */
export function checkStall(session: Session): Finding[] {
  const density = waterDensity({
    temperature: conditionOf(session, "water_temperature", null)?.value ?? 288.15,
    salinity: conditionOf(session, "salinity", null)?.value ?? 0,
  });
  const latitude = conditionOf(session, "latitude", null)?.value;
  const g = latitude === undefined ? STANDARD_GRAVITY : gravity(latitude);
  return session.designs.flatMap((design) => {
    const runs = keptGlides(session).filter((one) => one.design === design.design);
    return checkDesign(session, design, runs, { density, gravity: g });
  });
}

function checkDesign(
  session: Session,
  design: Design,
  runs: readonly Glide[],
  medium: { readonly density: number; readonly gravity: number },
): Finding[] {
  const lift = design.largestLiftCoefficient;
  if (lift === null) return [];
  const slow: SlowRun[] = [];
  let told = 0;
  for (const glide of runs) {
    const mass = glide.carriedMass ?? conditionOf(session, "carried_mass", glide.block)?.value;
    if (mass === undefined || glide.endSpeed === null) continue;
    const weight = weightInWater({ mass, wetVolume: design.wetVolume ?? 0, ...medium });
    if (!(weight > 0)) return [floats(design, mass)];
    told++;
    const { area } = design;
    const { density } = medium;
    const stall = stallSpeed({
      weightInWater: weight,
      density,
      area,
      largestLiftCoefficient: lift,
    });
    if (glide.endSpeed < SHARE * stall) slow.push({ glide, endSpeed: glide.endSpeed, stall });
  }
  if (slow.length >= WHOLE_DESIGN && slow.length === told) return [allSlow(design, lift, slow)];
  return slow.map(({ glide, endSpeed, stall }) =>
    finding({
      severity: "warning",
      code: "below-stall",
      file: "glides.csv",
      row: glide.row,
      column: "end_speed",
      what: `The run ends at ${short(endSpeed)} m/s, but by its largest_lift_coefficient of ${
        short(lift)
      } the wing stalls at ${short(stall)} m/s. The run stays in.`,
      wanted:
        "Look at the end speed (read before the board touched?), the area and the coefficient.",
    })
  );
}

interface SlowRun {
  readonly glide: Glide;
  readonly endSpeed: number;
  readonly stall: number;
}

function allSlow(design: Design, lift: number, slow: readonly SlowRun[]): Finding {
  const end = median(slow.map((one) => one.endSpeed))!;
  const stall = median(slow.map((one) => one.stall))!;
  return finding({
    severity: "warning",
    code: "below-stall",
    file: "designs.csv",
    row: design.row,
    column: "largest_lift_coefficient",
    count: slow.length,
    what: `All runs of ${excerpt(design.design)} end below the stall that a coefficient of ${
      short(lift)
    } gives (about ${short(end)} m/s, stall ${short(stall)} m/s). The runs stay in.`,
    wanted: `Look at area, mass and end speeds; they mean a coefficient of about ${
      short(lift * (stall / end) ** 2)
    }.`,
  });
}

function floats(design: Design, mass: number): Finding {
  return finding({
    severity: "warning",
    code: "floats",
    file: "designs.csv",
    row: design.row,
    column: "wet_volume",
    what: `${short((design.wetVolume ?? 0) * 1000)} litres of wing and strut float ${
      short(mass)
    } kg: nothing glides down.`,
    wanted: "The volume of water that wing and strut push aside, in litres.",
  });
}
