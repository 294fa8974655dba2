/** Invented tows whose truth is known, as the simulation study draws them. */
import { seededRandom } from "lakeproof/numeric/random.ts";
import { speedsFrom, type TowPlan, towSession } from "lakeproof/tasks/simulation/invented-tow.ts";
import { drawCraft } from "lakeproof/tasks/simulation/towed-craft.ts";

export { speedsFrom, type TowPlan, towSession } from "lakeproof/tasks/simulation/invented-tow.ts";
export { drawCraft, type TrueCraft } from "lakeproof/tasks/simulation/towed-craft.ts";

/** Two crafts and a session of theirs, for tests of single sessions. */
export function exampleTow(name: string, plan: Partial<TowPlan> = {}) {
  const random = seededRandom(name);
  const crafts = [
    drawCraft("alder", random, { mass: 84 }),
    drawCraft("birch", random, { mass: 84 }),
  ];
  const low = 1.12 * Math.max(...crafts.map((one) => one.stallSpeed));
  const session = towSession(crafts, {
    speeds: speedsFrom(low, 2 * low, 7),
    sweeps: 3,
    process: 0.01,
    shared: true,
    ...plan,
  }, random);
  return { crafts, session };
}
