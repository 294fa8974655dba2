/**
 * What all designs of a takeoff are told at: load, water, gravity, height, wind, and where each came from.
 *
 * @module
 */
import { type Finding, finding } from "../base/finding.ts";
import type { Condition, Session } from "../base/session.ts";
import type { TakeoffSetting } from "../base/takeoff-answer.ts";
import { median } from "../check/rule.ts";
import { meanOf } from "../infer/sample.ts";
import { gravity as gravityAt, STANDARD_GRAVITY } from "../model/gravity.ts";
import { USUAL_CRAFT } from "../model/usual-craft.ts";
import { water } from "../model/water.ts";

/** What the asker may set. */
export interface TakeoffOptions {
  /** Only these designs; all unless named. */
  readonly designs?: readonly string[];
  /** kg */
  readonly mass?: number;
  /** m of the wing under the surface when running. */
  readonly depth?: number;
  /** m above the sea at which the same wing flies in air; the water's unless said otherwise. */
  readonly altitude?: number;
  /** rad of the line above the horizontal; level unless said otherwise. */
  readonly lineAngle?: number;
  /** N that the tow can pull: which speeds does it hold? */
  readonly pull?: number;
  /** W that is there to pull with, instead of a pull: which speeds does it hold? */
  readonly power?: number;
  /** How often all inputs are drawn; 1000 unless said otherwise. */
  readonly draws?: number;
}

/** A stated or usual value of a condition. */
export interface Told {
  readonly value: number;
  /** SI; `null` where nobody said. */
  readonly uncertainty: number | null;
  readonly stated: boolean;
}

/** The setting with how well each of its numbers is known. */
export interface PreparedSetting {
  /** `null` where the load is not known. */
  readonly setting: TakeoffSetting | null;
  readonly mass: Told | null;
  readonly temperature: Told;
  /** m/s, from any side. */
  readonly wind: number;
  /** m2 of rider and board in the air; `null` where nobody measured it. */
  readonly airDragArea: Told | null;
  /** m; `null` where nobody said how deep the wing runs. */
  readonly runningDepth: Told | null;
  /** m: the session's own running depth, at which wet volumes were told, whatever the asker sets. */
  readonly toldDepth: number | null;
  readonly findings: readonly Finding[];
}

/** One condition of a session: the row for all blocks, else the mean of the blocks' rows. */
function toldIn(session: Session, quantity: string): Told | null {
  const rows = session.conditions.filter((one) => one.quantity === quantity);
  const all = rows.filter((one) => one.block === null);
  const used: readonly Condition[] = all.length > 0 ? all : rows;
  if (used.length === 0) return null;
  const values = used.map((one) => one.value);
  const stated = used.flatMap((one) => one.uncertainty ?? []);
  const spread = (Math.max(...values) - Math.min(...values)) / Math.sqrt(12);
  const own = stated.length === 0 ? null : Math.max(...stated);
  return {
    value: meanOf(values),
    uncertainty: own === null && spread === 0 ? null : Math.hypot(own ?? 0, spread),
    stated: true,
  };
}

function middleOf(values: readonly (number | null)[]): Told | null {
  const known = values.filter((one) => one !== null);
  const value = median(known);
  return value === null ? null : { value, uncertainty: null, stated: true };
}

function massOf(session: Session, asked: number | undefined): Told | null {
  if (asked !== undefined) return { value: asked, uncertainty: null, stated: true };
  return toldIn(session, "reference_mass") ?? toldIn(session, "carried_mass") ??
    middleOf([...session.glides, ...session.tow].map((one) => one.carriedMass));
}

function depthOf(session: Session, asked: number | undefined): Told | null {
  if (asked !== undefined) return { value: asked, uncertainty: null, stated: true };
  const told = toldIn(session, "running_depth") ??
    middleOf([...session.glides, ...session.tow].map((one) => one.depth));
  return told !== null && told.value > 0 ? told : null;
}

/** Numbers of air where those of water should stand. */
function airInWater(session: Session): Finding[] {
  const wrong = (one: Condition, what: string, wanted: string) =>
    finding({
      severity: "warning",
      code: "air-in-water",
      file: "conditions.csv",
      row: one.row,
      column: "value",
      what,
      wanted,
    });
  return session.conditions.flatMap((one) => {
    const celsius = one.value - 273.15;
    if (one.quantity === "water_temperature") {
      const density = Math.abs(celsius - 1.225) < 0.0301 || Math.abs(celsius - 1.204) < 0.0011;
      return !density ? [] : [wrong(
        one,
        `A water temperature of ${
          Number(celsius.toFixed(3))
        } °C is the number of air's density in kg/m³.`,
        "The temperature of the water; its density follows from that and from the salt.",
      )];
    }
    if (/density/i.test(one.quantity)) {
      return [wrong(
        one,
        `A density is not read: it follows from temperature and salt.${
          one.value < 100 ? ` ${one.value} kg/m³ would be air's, not water's.` : ""
        }`,
        "water_temperature and salinity.",
      )];
    }
    return [];
  });
}

/**
 * What all designs are told at.
 *
 * @param session whose conditions
 * @param options what the asker set
 * @returns the setting, and what is missing in plain words
 * @throws RangeError where a stated condition is outside the range of its formula
 */
export function takeoffSetting(session: Session, options: TakeoffOptions): PreparedSetting {
  const findings: Finding[] = [...airInWater(session)];
  const usual = (value: number): Told => ({ value, uncertainty: null, stated: false });
  const mass = massOf(session, options.mass);
  if (mass === null) {
    findings.push(finding({
      severity: "error",
      code: "no-mass",
      file: "conditions.csv",
      what: "The load is not known, so no speed can be told.",
      wanted:
        "carried_mass or reference_mass in conditions.csv: rider, board, struts and wing together.",
    }));
  }
  const temperature = toldIn(session, "water_temperature") ?? usual(USUAL_CRAFT.temperature);
  const salinity = toldIn(session, "salinity") ?? usual(USUAL_CRAFT.salinity);
  const latitude = toldIn(session, "latitude");
  const altitude = toldIn(session, "altitude")?.value ?? USUAL_CRAFT.altitude;
  const assumed = [
    ...(temperature.stated ? [] : ["water of 15 °C"]),
    ...(salinity.stated ? [] : ["no salt"]),
    ...(latitude === null ? ["standard gravity"] : []),
  ];
  if (assumed.length > 0) {
    findings.push(finding({
      severity: "note",
      code: "water-assumed",
      file: "conditions.csv",
      what: `Not stated, so taken as usual: ${assumed.join(", ")}.`,
      wanted: "water_temperature, salinity and latitude in conditions.csv.",
    }));
  }
  const { density, kinematicViscosity } = water({
    temperature: temperature.value,
    salinity: salinity.value,
  });
  return {
    setting: mass === null ? null : {
      mass: mass.value,
      waterTemperature: temperature.value,
      salinity: salinity.value,
      density,
      kinematicViscosity,
      gravity: latitude === null ? STANDARD_GRAVITY : gravityAt(latitude.value, altitude),
      altitude,
      lineAngle: options.lineAngle ?? 0,
      headwind: 0,
    },
    mass,
    temperature,
    wind: Math.abs(toldIn(session, "wind_speed")?.value ?? 0),
    airDragArea: toldIn(session, "air_drag_area"),
    runningDepth: depthOf(session, options.depth),
    toldDepth: depthOf(session, undefined)?.value ?? null,
    findings,
  };
}
