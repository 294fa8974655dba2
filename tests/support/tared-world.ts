/** Invented tows with tare readings, whose parts are known: a wing on struts, and the struts alone. */
import type { Session } from "lakeproof/base/session.ts";
import { dragBuildUp } from "lakeproof/model/planform-drag.ts";
import { minimumBetween } from "lakeproof/numeric/minimum.ts";
import { type SeededRandom, seededRandom } from "lakeproof/numeric/random.ts";
import { speedsFrom, towSession, type TrueCraft } from "./towed-world.ts";

const AROUND = {
  density: 999.1026,
  kinematicViscosity: 1.1386e-6,
  gravity: 9.80665,
  depth: 0.4,
};
const STRUTS = { count: 1, chord: 0.12, thickness: 0.0144 };

/** A session and what its drag truly is made of. */
export interface TaredWorld {
  readonly session: Session;
  /** N of each part by speed in m/s, on a level course at the full lift. */
  readonly truth: (speed: number) => {
    readonly struts: number;
    readonly junction: number;
    readonly rider: number;
    readonly wing: number;
  };
  readonly lift: number;
}

/** What a world may be asked for. */
export interface TaredPlan {
  /** Sweeps of the struts alone through all speeds. */
  readonly tares: number;
  /** Scatter of a reading that nobody stated, as a share. */
  readonly process: number;
}

/** Draws a world: formulas of the parts are off by as much as the library says that they may be. */
export function drawTared(random: SeededRandom, { tares, process }: TaredPlan): TaredWorld {
  const off = (share: number) => Math.exp(share * random.normal());
  const factors = { struts: off(0.4), spray: off(0.5), junction: off(0.6), rider: off(0.3) };
  const span = 0.8 + 0.6 * random.uniform();
  const area = span ** 2 / (5 + 4 * random.uniform());
  const mass = 70 + 25 * random.uniform(), wetVolume = 0.0025;
  const parts = dragBuildUp({
    span,
    area,
    thicknessRatio: 0.12,
    struts: STRUTS,
    airDragArea: 0.55,
    spanEfficiency: 0.85 + 0.15 * random.uniform(),
    viscousLiftFactor: 0.005 + 0.01 * random.uniform(),
    transitionReynolds: 3e5,
  }, AROUND);
  const lift = (mass - AROUND.density * wetVolume) * AROUND.gravity;
  const at = (speed: number, weightInWater: number) => {
    const one = parts({ speed, weightInWater });
    return {
      struts: factors.struts * one.struts + factors.spray * one.spray,
      junction: factors.junction * one.junction,
      rider: factors.rider * one.air,
      wing: one.wing,
    };
  };
  const whole = (speed: number, lineAngle = 0) => {
    let drag = 0;
    for (let round = 0; round < 8; round++) {
      const { struts, junction, rider, wing } = at(speed, lift - drag * Math.tan(lineAngle));
      drag = struts + junction + rider + wing;
    }
    return drag;
  };
  const stallSpeed = Math.sqrt(2 * lift / (AROUND.density * area * 1.1));
  const least = minimumBetween(whole, { low: 0.9 * stallSpeed, high: 4 * stallSpeed });
  const craft: TrueCraft = {
    name: "alder",
    span,
    area,
    mass,
    wetVolume,
    depth: AROUND.depth,
    drag: whole,
    lift,
    best: { speed: least.at, liftToDrag: lift / least.value },
    stallSpeed,
  };
  const bare: TrueCraft = { ...craft, name: "tare", drag: (speed) => at(speed, lift).struts };
  const plan = {
    speeds: speedsFrom(1.15 * stallSpeed, 2.1 * stallSpeed, 7),
    sweeps: 3,
    process,
    shared: true,
  };
  const session = towSession([craft, bare], plan, random);
  const sweeps = new Set(Array.from({ length: tares }, (_, i) => String(i + 1)));
  return {
    session: {
      ...session,
      designs: session.designs.filter((one) => one.design !== "tare").map((one) => ({
        ...one,
        strutCount: STRUTS.count,
        strutChord: STRUTS.chord,
        strutThickness: STRUTS.thickness,
      })),
      tow: session.tow.filter((one) => one.design !== "tare" || sweeps.has(one.sweep!)),
    },
    truth: (speed) => at(speed, lift),
    lift,
  };
}

/** One world by name. */
export function taredWorld(name: string, plan: Partial<TaredPlan> = {}): TaredWorld {
  return drawTared(seededRandom(name), { tares: 3, process: 0.01, ...plan });
}

/** The same session without its tare readings. */
export function untared(session: Session): Session {
  return { ...session, tow: session.tow.filter((one) => one.design !== "tare") };
}
