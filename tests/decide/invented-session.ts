/** An invented session for tests: two designs, the runs of the golden example, all readings there. */
import type { Design, Glide, Session } from "lakeproof/base/session.ts";

export function design(name: string, parts: Partial<Design> = {}): Design {
  return {
    row: 2,
    own: {},
    design: name,
    span: 0.9,
    area: 0.15,
    wetVolume: 0.002,
    thicknessRatio: 0.12,
    section: null,
    largestLiftCoefficient: null,
    strutCount: 1,
    strutChord: 0.12,
    strutThickness: 0.0144,
    strutLength: 0.8,
    boardDraught: null,
    extraDragArea: null,
    note: null,
    ...parts,
  };
}

export function glide(run: string, name: string, parts: Partial<Glide> = {}): Glide {
  return {
    row: Number(run.replace(/\D/g, "")) + 1,
    own: {},
    run,
    date: null,
    block: null,
    design: name,
    launchSpeed: 4.2,
    endSpeed: 3,
    drop: 0.2,
    distance: 9,
    duration: null,
    carriedMass: 84,
    depth: 0.4,
    ended: "stalled",
    leaveOut: null,
    note: null,
    ...parts,
  };
}

const ALDER = [
  [4.28, 2.89, 0.222, 9.48],
  [4.45, 3.04, 0.164, 8.97],
  [4.47, 3.18, 0.174, 9.05],
  [4.54, 3.08, 0.25, 8.54],
  [4.75, 3.19, 0.144, 10.95],
  [4.62, 3.06, 0.233, 9.52],
  [4.47, 3.17, 0.177, 8.79],
] as const;
const BIRCH = [
  [3.9, 3.02, 0.255, 7.86],
  [4.19, 2.91, 0.19, 9.63],
  [3.47, 2.95, 0.168, 4.36],
  [3.71, 2.99, 0.147, 5.39],
  [3.94, 3.27, 0.085, 4.46],
  [4.33, 2.98, 0.209, 9.49],
  [3.69, 2.99, 0.221, 5.17],
] as const;

/** Runs 1 to 14, turn about, of the golden example. */
export const GLIDES: readonly Glide[] = ALDER.flatMap((_, i) =>
  [["alder", ALDER[i]!], ["birch", BIRCH[i]!]].map(([name, row], k) => {
    const [launchSpeed, endSpeed, drop, distance] = row as readonly [
      number,
      number,
      number,
      number,
    ];
    return glide(String(2 * i + k + 1), name as string, {
      launchSpeed,
      endSpeed,
      drop,
      distance,
      ended: endSpeed === 3.27 ? "stopped early" : "stalled",
    });
  })
);

export function session(parts: Partial<Session> = {}): Session {
  return {
    name: "quillwater",
    title: null,
    invented: true,
    designs: [design("alder"), design("birch", { span: 1.15, area: 0.17, wetVolume: 0.0028 })],
    glides: GLIDES,
    tow: [],
    traces: [],
    calibrations: [],
    conditions: [],
    instruments: [],
    findings: [],
    checksums: [],
    ...parts,
  };
}
