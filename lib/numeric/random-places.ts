/**
 * Very many random whole numbers below a small bound, quickly: what resampling needs.
 *
 * @module
 */
import type { SeededRandom } from "./random.ts";

/** Half a generator word makes a place. */
const MOST = 65536;

/**
 * Draws places from 0 to `below` - 1, each equally likely.
 *
 * A stream of its own, seeded by the one given: it draws four numbers from that, whatever the count. Two places come out of
 * one generator word: each half is multiplied by the bound, and the upper 16 bits are the place. The few halves that would
 * make a place likelier are thrown away, so no place is.
 *
 * Source: generator sfc32 (Doty-Humphrey, PractRand); bounded numbers by multiplication, Lemire, ACM Transactions on
 * Modeling and Computer Simulation 29 (2019) 1; both from memory.
 *
 * @param random stream that seeds
 * @param below bound, 1 to 65536
 * @param count how many
 * @returns places, 1
 * @throws RangeError when the bound or the count is not whole or out of range
 *
 * @example
 * ```ts
 * import { randomPlaces } from "lakeproof/numeric/random-places.ts";
 * import { seededRandom } from "lakeproof/numeric/random.ts";
 * const places = randomPlaces(seededRandom("throws of a die"), 6, 6000);
 * const sixes = places.filter((one) => one === 5).length;
 * if (Math.abs(sixes - 1000) > 120) throw new Error("four standard deviations off");
 * ```
 */
export function randomPlaces(random: SeededRandom, below: number, count: number): Int32Array {
  if (!(Number.isInteger(below) && below >= 1 && below <= MOST)) {
    throw new RangeError(`Cannot draw places below ${below}: it must be whole, 1 to ${MOST}`);
  }
  if (!(Number.isInteger(count) && count >= 0)) {
    throw new RangeError(`Cannot draw ${count} places: the count must be whole`);
  }
  const places = new Int32Array(count);
  const state = Int32Array.from({ length: 4 }, () => random.integer(2 ** 31));
  // What is thrown away: the fractions of the first 65536 mod `below` of 65536.
  const least = MOST % below;
  fillPlaces(new Int32Array(WARM_UP), state, below, least, 0, WARM_UP);
  // A short body called often is compiled early and stays so.
  for (let from = 0; from < count; from += BLOCK) {
    fillPlaces(places, state, below, least, from, Math.min(count, from + BLOCK));
  }
  return places;
}

/** Numbers in one call, and numbers thrown away until the seeds have mixed. */
const BLOCK = 256, WARM_UP = 40;

/** Fills part of an array and moves the state on. */
function fillPlaces(
  places: Int32Array,
  state: Int32Array,
  below: number,
  least: number,
  from: number,
  to: number,
): void {
  let a = state[0]!, b = state[1]!, c = state[2]!, d = state[3]!;
  let at = from;
  while (at < to) {
    const word = (a + b + d) | 0;
    d = (d + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = ((c << 21 | c >>> 11) + word) | 0;
    const low = Math.imul(word & 0xffff, below), high = Math.imul(word >>> 16, below);
    if ((low & 0xffff) >= least) places[at++] = low >>> 16;
    if (at < to && (high & 0xffff) >= least) places[at++] = high >>> 16;
  }
  state[0] = a;
  state[1] = b;
  state[2] = c;
  state[3] = d;
}
