/**
 * How far an invented foil truly glides: the answer that the readings of a session are scattered about.
 *
 * @module
 */
import { gaussLegendre } from "../../numeric/gauss-legendre.ts";
import { type InventedFoil, WATER } from "./foil-world.ts";

const { nodes: NODES, weights: WEIGHTS } = gaussLegendre(12);

/**
 * Path of a glide that slows between two speeds: the equation of motion `m v dv/dx = -(D - W s)`, integrated over v^2.
 *
 * @param foil with its true drag
 * @param from m/s at launch
 * @param to m/s at the end
 * @param factor on its drag in this run
 * @param pull N along the path, from the height lost on a constant slope
 * @returns m
 */
export function glidePath(
  foil: InventedFoil,
  from: number,
  to: number,
  factor: number,
  pull: number,
): number {
  const [u0, u1] = [from * from, to * to];
  let sum = 0;
  for (let i = 0; i < NODES.length; i++) {
    const u = u1 + (u0 - u1) * NODES[i]!;
    sum += WEIGHTS[i]! / (factor * foil.drag(Math.sqrt(u)) - pull);
  }
  return foil.inertia * foil.weight / (2 * WATER.gravity) * (u0 - u1) * sum;
}

/** Height that the lost speed is worth, m. */
function speedHeight(foil: InventedFoil, from: number, to: number): number {
  return foil.inertia * (from * from - to * to) / (2 * WATER.gravity);
}

/**
 * Path of a glide that spends a given height as a constant share of its drag.
 *
 * @param foil with its true drag
 * @param from m/s at launch
 * @param to m/s at the end
 * @param drop m of height lost
 * @param factor on its drag in this run
 * @returns m
 */
export function sharedPath(
  foil: InventedFoil,
  from: number,
  to: number,
  drop: number,
  factor: number,
): number {
  const height = speedHeight(foil, from, to);
  return glidePath(foil, from, to, factor, 0) * (height + drop) / height;
}
