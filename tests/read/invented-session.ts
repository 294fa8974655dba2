/** A small invented session for tests: two designs of an evening class in boatbuilding, six runs, all in order. */
import { readSession } from "lakeproof/read/read-session.ts";
import type { Session } from "lakeproof/base/session.ts";

export const DESIGNS_CSV =
  `design,span,area,wet_volume,thickness_ratio,section,largest_lift_coefficient,note
alder,1.2,0.177,4.25,0.13,cambered,1.15,
birch,1.25,0.1965,4.5,0.12,cambered,1.2,"longer, thinner"
`;

export const GLIDES_CSV =
  `run,date,block,design,launch_speed,end_speed,drop,distance,duration,carried_mass,depth,ended,leave_out,note
1,2031-06-14,mira-sat,alder,4.75,2.75,0.25,31.5,8.5,85.5,0.35,stalled,,
2,2031-06-14,mira-sat,birch,4.25,2.5,0.25,28.25,8.25,85.5,0.35,stalled,,
3,2031-06-14,mira-sat,alder,5,2.75,0.25,35.75,9.25,85.5,0.35,stalled,,
4,2031-06-14,mira-sat,birch,4.5,2.5,0.25,33.5,9.5,85.5,0.35,stalled,,
5,2031-06-14,mira-sat,alder,4.5,2.75,0.25,28.75,7.75,85.5,0.35,touched,,
6,2031-06-14,mira-sat,birch,4.75,2.5,0.25,37.25,10.25,85.5,0.35,stalled,,
`;

export const CONDITIONS_CSV = `quantity,value,unit,uncertainty,stated_as,block,note
water_temperature,18.5,degC,0.5,limits,,
salinity,0,g/kg,,,,fresh water
latitude,52.5,deg,,,,
reference_launch_speed,4.5,m/s,,,,
`;

export const INSTRUMENTS_CSV = `quantity,instrument,uncertainty,unit,stated_as,kind,how
launch_speed,video,2,%,95 %,independent,frames counted between two buoys
distance,tape,0.5,m,limits,independent,read to the half metre
carried_mass,scale,0.5,kg,limits,common,
`;

export const FILES: Readonly<Record<string, string>> = {
  "designs.csv": DESIGNS_CSV,
  "glides.csv": GLIDES_CSV,
  "conditions.csv": CONDITIONS_CSV,
  "instruments.csv": INSTRUMENTS_CSV,
};

export function bytesOf(text: string): Uint8Array {
  return new TextEncoder().encode(text);
}

/** The invented session with some files changed; `null` takes a file away. */
export function sessionWith(
  changes: Readonly<Record<string, string | Uint8Array | null>> = {},
): Session {
  const files = new Map<string, Uint8Array>();
  for (const [name, text] of Object.entries({ ...FILES, ...changes })) {
    if (text !== null) files.set(name, typeof text === "string" ? bytesOf(text) : text);
  }
  return readSession("invented", files);
}
