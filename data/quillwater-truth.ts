/**
 * The truth behind the invented evenings at Quillwater: what a perfect measurement would have found.
 *
 * @module
 */
import { weightInWater } from "lakeproof/model/buoyancy.ts";
import { strutVolume } from "lakeproof/model/strut-drag.ts";
import { minimumBetween } from "lakeproof/numeric/minimum.ts";
import {
  DESIGNS,
  EVENINGS,
  flySink,
  pair,
  type TrueDesign,
  wingVolume,
} from "./quillwater-craft.ts";
import { LAUNCH_DEPTH, SEED } from "./quillwater-session.ts";
import { REFERENCE_MASS } from "./quillwater-tow-craft.ts";

/** What the runs' scatter and the instruments hide: each design flown without noise from the same launches. */
export function truth() {
  const [evening, other] = EVENINGS;
  const rider = {
    ...evening!,
    rider: (evening!.rider + other!.rider) / 2,
    airDragArea: (evening!.airDragArea + other!.airDragArea) / 2,
    waterTemperature: (evening!.waterTemperature + other!.waterTemperature) / 2,
  };
  const digits = (value: number) => Number(value.toPrecision(5));
  const launches = [4.1, 4.2, 4.3, 4.4, 4.5].flatMap((launchSpeed) =>
    [0.16, 0.17, 0.18, 0.19].map((dropAtStall) => ({ launchSpeed, dropAtStall }))
  );
  const glides = DESIGNS.flatMap((design) => {
    // The same mass for all, so that only the foil differs.
    const pairing = pair({ ...design, mass: DESIGNS[0]!.mass }, rider);
    return launches.map((launch) => {
      const flown = flySink(pairing, {
        ...launch,
        launchDepth: LAUNCH_DEPTH,
        steepening: 0.8,
        mostDrop: Infinity,
      });
      return {
        design: design.name,
        launchSpeed: launch.launchSpeed,
        drop: launch.dropAtStall,
        distance: digits(flown.distance),
        endSpeed: digits(flown.endSpeed),
      };
    });
  });
  const baseline = glides.filter((one) => one.design === DESIGNS[0]!.name);
  const ratios = DESIGNS.slice(1).flatMap((design) =>
    glides.filter((one) => one.design === design.name).map((one, place) => ({
      baseline: DESIGNS[0]!.name,
      candidate: design.name,
      launchSpeed: one.launchSpeed,
      drop: one.drop,
      ratio: digits(one.distance / baseline[place]!.distance),
    }))
  );
  return {
    invented: true,
    what:
      "True distance of each design from a common launch, by integrating the equation of motion without noise; " +
      "speeds in m/s, lengths in m, mass in kg. Under best: lift-to-drag of the whole craft and its speed on a level course, " +
      "with the second evening's rider, at the mass and depth given there.",
    seed: SEED,
    mass: rider.rider + DESIGNS[0]!.mass,
    launchDepth: LAUNCH_DEPTH,
    ratios,
    glides,
    best: DESIGNS.map(bestOf),
  };
}

/** m of the wing under the surface: in the middle of a run. */
const TRACED_DEPTH = 0.4;

/** What the speed traces of the second evening are there to find. */
function bestOf(design: TrueDesign) {
  const { flown, around, drag } = pair(design, EVENINGS[1]!);
  const lift = weightInWater({
    mass: REFERENCE_MASS,
    wetVolume: wingVolume(design) + strutVolume(flown.craft.struts, TRACED_DEPTH),
    ...around,
  });
  const least = minimumBetween(
    (speed) => flown.dragFactor * drag(TRACED_DEPTH, { speed, weightInWater: lift }).total,
    { low: 3.2, high: 8 },
  );
  const digits = (value: number) => Number(value.toPrecision(5));
  return {
    design: design.name,
    mass: REFERENCE_MASS,
    depth: TRACED_DEPTH,
    liftToDrag: digits(lift / least.value),
    speed: digits(least.at),
  };
}
