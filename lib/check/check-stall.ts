/**
 * End speeds below what the wing can carry.
 *
 * @module
 */
import { type Finding, finding } from "../base/finding.ts";
import type { Session } from "../base/session.ts";
import { weightInWater } from "../model/buoyancy.ts";
import { gravity, STANDARD_GRAVITY } from "../model/gravity.ts";
import { stallSpeed } from "../model/stall.ts";
import { waterDensity } from "../model/water.ts";
import { conditionOf } from "./condition-of.ts";
import { keptGlides, short } from "./rule.ts";

/** Share of the stated stall speed below which an end speed is odd. */
const SHARE = 0.9;

/**
 * Warns of runs that end more than 10 % slower than the stall speed that the design's own largest lift coefficient gives.
 *
 * Nobody glides slower than the stall, so either the coefficient is stated too low, the mass too high, or the end speed
 * was read after the board touched. Water and gravity are the session's, else fresh water of 15 degrees Celsius.
 *
 * @param session runs without mass and designs without a largest lift coefficient are passed over
 */
export function checkStall(session: Session): Finding[] {
  const density = waterDensity({
    temperature: conditionOf(session, "water_temperature", null)?.value ?? 288.15,
    salinity: conditionOf(session, "salinity", null)?.value ?? 0,
  });
  const latitude = conditionOf(session, "latitude", null)?.value;
  const g = latitude === undefined ? STANDARD_GRAVITY : gravity(latitude);
  return keptGlides(session).flatMap((glide) => {
    const design = session.designs.find((one) => one.design === glide.design);
    const mass = glide.carriedMass ?? conditionOf(session, "carried_mass", glide.block)?.value;
    const lift = design?.largestLiftCoefficient ?? null;
    if (design === undefined || lift === null || mass === undefined) return [];
    const weight = weightInWater({ mass, wetVolume: design.wetVolume ?? 0, density, gravity: g });
    if (!(weight > 0)) {
      return [finding({
        severity: "warning",
        code: "floats",
        file: "designs.csv",
        row: design.row,
        column: "wet_volume",
        what: `${short((design.wetVolume ?? 0) * 1000)} litres of wing and strut float ${
          short(mass)
        } kg: nothing glides down.`,
        wanted: "The volume of water that wing and strut push aside, in litres.",
      })];
    }
    const stall = stallSpeed({
      weightInWater: weight,
      density,
      area: design.area,
      largestLiftCoefficient: lift,
    });
    if (glide.endSpeed === null || glide.endSpeed >= SHARE * stall) return [];
    return [finding({
      severity: "warning",
      code: "below-stall",
      file: "glides.csv",
      row: glide.row,
      column: "end_speed",
      what: `The run ends at ${short(glide.endSpeed)} m/s, but by its largest_lift_coefficient of ${
        short(lift)
      } the wing stalls at ${short(stall)} m/s. The run stays in.`,
      wanted:
        "Look at the end speed (read before the board touched?), the area and the coefficient.",
    })];
  });
}
