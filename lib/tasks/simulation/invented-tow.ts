/**
 * Sessions of tows that never were: known craft behind a boat, read with errors of their own and errors that all share.
 *
 * @module
 */
import type { Design, Session, TowPoint } from "../../base/session.ts";
import type { SeededRandom } from "../../numeric/random.ts";
import type { TrueCraft } from "./towed-craft.ts";

const DEGREE = Math.PI / 180;

/** How a session is towed. */
export interface TowPlan {
  /** m/s aimed at, the same for all or each craft's own. */
  readonly speeds: readonly number[] | ((craft: TrueCraft) => readonly number[]);
  readonly sweeps: number;
  /** Scatter of a reading that nobody stated: wake, rider, as a share. */
  readonly process: number;
  /** True to draw the errors that all readings share. */
  readonly shared: boolean;
  /** False to tow each design in one go. */
  readonly turns?: boolean;
  /** deg above the horizontal, about which the line's angle varies by 1.5; 8 unless said. */
  readonly lineAngle?: number;
  /** Scatter that the repeats of a speed share, since wake and chop go with it, as a share; none unless said. */
  readonly speedScatter?: number;
  /**
   * Scatter that a sweep has of its own, for all crafts that took turns in it, as a share; where they did not take turns,
   * that each craft's whole stretch has of its own. None unless said.
   */
  readonly sweepScatter?: number;
}

/**
 * A session towed with every error drawn anew.
 *
 * Stated errors of a reading: pull 1.5 % and 0.8 N, speed 1 %, angle 0.5 degrees. Shared by all: load cell 1 % and 0.3 N,
 * speed 1 % and 0.02 m/s, angle 0.3 degrees, mass 0.5 kg; each craft's own: depth 2 cm, wet volume 10 %.
 *
 * @param crafts with their truth, towed in turn
 * @param plan speeds, sweeps, scatter
 * @param random stream
 * @param beside m/s more through the water than was aimed at, by place of the row
 * @returns the session as it would be read from its tables
 */
export function towSession(
  crafts: readonly TrueCraft[],
  plan: TowPlan,
  random: SeededRandom,
  beside: (place: number) => number = () => 0,
): Session {
  const draw = (u: number) => plan.shared ? u * random.normal() : 0;
  const cell = { scale: draw(0.01), zero: draw(0.3) };
  const log = { scale: draw(0.01), zero: draw(0.02) };
  const level = draw(0.3 * DEGREE);
  const scales = draw(0.5);
  const designs = crafts.map((one, i): Design => ({
    row: i + 2,
    own: {},
    design: one.name,
    span: one.span,
    area: one.area,
    wetVolume: one.wetVolume * (1 + draw(0.1)),
    thicknessRatio: 0.12,
    section: null,
    largestLiftCoefficient: null,
    strutCount: null,
    strutChord: null,
    strutThickness: null,
    strutLength: null,
    boardDraught: null,
    extraDragArea: null,
    note: null,
  }));
  const depths = crafts.map((one) => one.depth + draw(0.02));
  const offsets = new Map<string, number>();
  const offset = (key: string, scatter = 0) => {
    if (scatter === 0) return 1;
    const kept = offsets.get(key) ?? 1 + scatter * random.normal();
    offsets.set(key, kept);
    return kept;
  };
  const turns = plan.turns ?? true;
  const tow: TowPoint[] = [];
  const sweep = (number: number, craft: TrueCraft, place: number) => {
    const speeds = typeof plan.speeds === "function" ? plan.speeds(craft) : plan.speeds;
    speeds.forEach((setSpeed) => {
      const speed = setSpeed * (1 + 0.02 * random.normal()) + beside(tow.length);
      const angle = ((plan.lineAngle ?? 8) + 1.5 * random.normal()) * DEGREE;
      const own = offset(`${craft.name} at ${setSpeed}`, plan.speedScatter) *
        offset(turns ? `sweep ${number}` : `day of ${craft.name}`, plan.sweepScatter);
      const pull = craft.drag(speed, angle) / Math.cos(angle) *
        own * (1 + plan.process * random.normal());
      const row = tow.length + 2;
      tow.push({
        row,
        own: {},
        point: String(row - 1),
        date: null,
        block: null,
        sweep: String(number),
        design: craft.name,
        setSpeed,
        direction: null,
        speed: speed * (1 + log.scale) * (1 + 0.01 * random.normal()) + log.zero,
        speedOver: "water",
        speedChange: null,
        lineTension: pull * (1 + cell.scale) * (1 + 0.015 * random.normal()) + cell.zero +
          0.8 * random.normal(),
        lineAngle: angle + level + 0.5 * DEGREE * random.normal(),
        depth: depths[place]!,
        pitch: null,
        carriedMass: craft.mass + scales,
        window: 6,
        leaveOut: null,
        note: null,
      });
    });
  };
  if (turns) {
    for (let i = 0; i < plan.sweeps; i++) {
      crafts.forEach((craft, place) => sweep(i + 1, craft, place));
    }
  } else {
    crafts.forEach((craft, place) => {
      for (let i = 0; i < plan.sweeps; i++) sweep(i + 1, craft, place);
    });
  }
  return {
    name: "invented",
    title: null,
    invented: true,
    designs,
    glides: [],
    tow,
    traces: [],
    calibrations: [],
    conditions: [],
    instruments: [],
    findings: [],
    checksums: [],
  };
}

/**
 * So many speeds in equal steps, m/s.
 *
 * @param low slowest, m/s
 * @param high fastest, m/s
 * @param count two or more
 * @returns from slowest to fastest, both among them
 */
export function speedsFrom(low: number, high: number, count: number): number[] {
  return Array.from({ length: count }, (_, i) => low + (high - low) * i / (count - 1));
}
