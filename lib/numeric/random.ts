/**
 * Random numbers that come out the same every time: each stream is named, and the name is its seed.
 *
 * Generator: xoroshiro128+ (Blackman and Vigna 2018) of pure-rand, 53-bit uniforms; normals by the polar method of
 * Marsaglia (1964) of d3-random. The seed is the 32-bit FNV-1a hash (Fowler, Noll, Vo) of the name's UTF-16 code units,
 * so that two names give two streams. Whole numbers and uniforms agree to the last bit everywhere; normals use `Math.log`,
 * which differs by a last digit between engines.
 *
 * @module
 */
import { randomNormal } from "d3-random";
import { uniformFloat64 } from "pure-rand/distribution/uniformFloat64";
import { uniformInt } from "pure-rand/distribution/uniformInt";
import { xoroshiro128plus } from "pure-rand/generator/xoroshiro128plus";

/** A stream of random numbers. */
export interface SeededRandom {
  /** In [0, 1). */
  uniform(): number;
  /** Mean 0, standard deviation 1. */
  normal(): number;
  /** A whole number from 0 to `n` - 1, each equally likely. */
  integer(n: number): number;
  /** A new array with the same items in random order. */
  shuffle<T>(items: readonly T[]): T[];
  /** Another stream, independent of this one for practical purposes, named by this stream's name and the given one. */
  stream(name: string): SeededRandom;
}

/**
 * The 32-bit FNV-1a hash of a text, over its UTF-16 code units (low byte, then high byte).
 *
 * @param text any text
 * @returns a whole number from -2^31 to 2^31 - 1
 */
export function hashText(text: string): number {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) {
    const unit = text.charCodeAt(i);
    hash = Math.imul(hash ^ (unit & 0xff), 0x01000193);
    hash = Math.imul(hash ^ (unit >>> 8), 0x01000193);
  }
  return hash | 0;
}

/**
 * The stream of random numbers that belongs to a name.
 *
 * @param name what the numbers are for, such as "bootstrap of alder"; the same name gives the same numbers
 * @returns a stream; drawing from it changes only this stream
 * @throws RangeError by `integer`, for a bound that is not whole or not within 1 to 2^31
 * @example
 * ```ts
 * import { seededRandom } from "lakeproof/numeric/random.ts";
 * const one = seededRandom("scatter of runs").normal();
 * const again = seededRandom("scatter of runs").normal();
 * if (one !== again) throw new Error("the same name must give the same numbers");
 * ```
 */
export function seededRandom(name: string): SeededRandom {
  const generator = xoroshiro128plus(hashText(name));
  const uniform = () => uniformFloat64(generator);
  const normal = randomNormal.source(uniform)();
  const integer = (n: number) => {
    if (!Number.isInteger(n) || n < 1 || n > 2 ** 31) {
      throw new RangeError(`Cannot draw a whole number below ${n}: it must be whole, 1 to 2^31`);
    }
    return uniformInt(generator, 0, n - 1);
  };
  return {
    uniform,
    normal,
    integer,
    shuffle<T>(items: readonly T[]): T[] {
      const mixed = [...items];
      for (let i = mixed.length - 1; i > 0; i--) {
        const j = integer(i + 1);
        [mixed[i], mixed[j]] = [mixed[j]!, mixed[i]!];
      }
      return mixed;
    },
    stream: (inner: string) => seededRandom(`${name} / ${inner}`),
  };
}
