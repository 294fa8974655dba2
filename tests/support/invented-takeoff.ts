/** A session of two invented designs, one of them towed, for tests of takeoff. */
import type { Session } from "lakeproof/base/session.ts";
import { readSession } from "lakeproof/read/read-session.ts";

export const DESIGNS_HEAD = "design,span,area,wet_volume,thickness_ratio,section," +
  "largest_lift_coefficient,strut_count,strut_chord,strut_thickness,strut_length,board_draught\n";
export const ALDER_ROW = "alder,0.95,0.150,2.4,0.13,cambered,1.05,1,115,14.5,0.75,0.08\n";
export const BIRCH_ROW = "birch,1.12,0.162,2.3,0.12,cambered,1.05,1,115,14.5,0.75,0.08\n";
export const LAKE_CONDITIONS = "quantity,value,unit,uncertainty,stated_as\n" +
  "water_temperature,18,degC,0.5,standard\nsalinity,0,g/kg,,\nlatitude,52,deg,,\n" +
  "altitude,210,m,,\ncarried_mass,84,kg,1,standard\nrunning_depth,0.4,m,,\n";

/** A session read from the text of its tables. */
export function takeoffSession(
  designs = DESIGNS_HEAD + ALDER_ROW,
  conditions = LAKE_CONDITIONS,
  more: Readonly<Record<string, string>> = {},
): Session {
  const tables = { "designs.csv": designs, "conditions.csv": conditions, ...more };
  const bytes = (text: string) => new TextEncoder().encode(text);
  return readSession(
    "invented",
    new Map(Object.entries(tables).map(([file, text]) => [file, bytes(text)])),
  );
}
