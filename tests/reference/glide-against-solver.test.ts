import { Solver } from "odex";
import { describe, expect, it } from "vitest";
import { weightInWater } from "lakeproof/model/buoyancy.ts";
import { decay } from "lakeproof/model/decay.ts";
import { dragForce } from "lakeproof/model/drag-law.ts";
import { dragAtDepth, flyGlide } from "lakeproof/model/glide-flight.ts";
import { strutVolume } from "lakeproof/model/strut-drag.ts";

/** Speed, distance and height lost after a time, by odex 2.0.4 (extrapolation method of Hairer and Wanner). */
function solved(
  rate: (time: number, state: number[]) => number[],
  from: number[],
  time: number,
): number[] {
  const solver = new Solver(from.length);
  solver.absoluteTolerance = solver.relativeTolerance = 1e-12;
  return solver.solve(rate, 0, from, time).y;
}

describe("glides against a general-purpose solver of differential equations", () => {
  it("slow down in closed form just as the solver finds", () => {
    const cases = [
      [{ a: 1.55, d: 4, e: 512 }, { launchSpeed: 4.6, endSpeed: 3.1 }, 17],
      [{ a: 1.2, d: 60, e: 300 }, { launchSpeed: 5, endSpeed: 2 }, 0],
      [{ a: 0.9, d: 0, e: 900 }, { launchSpeed: 6, endSpeed: 5.5 }, 30],
    ] as const;
    for (const [law, speeds, sinkThrust] of cases) {
      const own = decay(law, { ...speeds, effectiveMass: 87, sinkThrust });
      const [speed, distance] = solved(
        (_, [v]) => [-(dragForce(law, v!) - sinkThrust) / 87, v!],
        [speeds.launchSpeed, 0],
        own.duration,
      );
      // The solver's tolerance is 1e-12 a step.
      expect(Math.abs(speed! - speeds.endSpeed)).toBeLessThan(1e-9);
      expect(Math.abs(distance! - own.distance)).toBeLessThan(1e-9);
    }
  });
  it("fly a sink path with moving depth just as the solver finds", () => {
    const craft = {
      span: 1.1,
      area: 0.16,
      thicknessRatio: 0.12,
      struts: { count: 1, chord: 0.115, thickness: 0.0145 },
    };
    const around = { density: 998.6, kinematicViscosity: 1.07e-6, gravity: 9.81 };
    const drag = dragAtDepth(craft, around);
    const slope = (speed: number) => 0.02 + 0.01 * (4.5 - speed);
    const own = flyGlide(
      {
        craft,
        mass: 86,
        effectiveMass: 87,
        wingVolume: 0.0018,
        largestLiftCoefficient: 1,
        dragFactor: 1.05,
      },
      { launchSpeed: 4.5, launchDepth: 0.32, slope, mostDrop: 1 },
      around,
      drag,
    );
    const [speed, distance, drop] = solved(
      (_, [v, , z]) => {
        const depth = 0.32 + z!;
        const net = weightInWater({
          mass: 86,
          wetVolume: 0.0018 + strutVolume(craft.struts, depth),
          ...around,
        });
        const angle = Math.atan(slope(v!));
        const { total } = drag(depth, { speed: v!, weightInWater: net * Math.cos(angle) });
        const force = net * Math.sin(angle) - 1.05 * total;
        return [force / 87, v! * Math.cos(angle), v! * Math.sin(angle)];
      },
      [4.5, 0, 0],
      own.duration,
    );
    // 1e-6: fixed steps of 0.05 s over the kinks where the depth passes a centimetre.
    expect(Math.abs(speed! - own.endSpeed)).toBeLessThan(1e-6);
    expect(Math.abs(distance! - own.distance)).toBeLessThan(1e-6);
    expect(Math.abs(drop! - own.drop)).toBeLessThan(1e-6);
  });
});
