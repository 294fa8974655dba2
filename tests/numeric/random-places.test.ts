import { describe, expect, it } from "vitest";
import { randomPlaces } from "lakeproof/numeric/random-places.ts";
import { seededRandom } from "lakeproof/numeric/random.ts";

/** Pearson's statistic of places in so many equal classes. */
function chiSquare(places: Int32Array, below: number, classes: number): number {
  const seen = new Float64Array(classes);
  for (const one of places) seen[Math.floor(one * classes / below)]!++;
  const expected = places.length / classes;
  return seen.reduce((sum, one) => sum + (one - expected) ** 2 / expected, 0);
}

describe("random places", () => {
  it("are each equally likely, below a small bound and below one that throws most halves away", () => {
    for (const [below, classes] of [[60, 60], [7, 7], [40_000, 50]] as const) {
      const places = randomPlaces(seededRandom(`below ${below}`), below, 200_000);
      const free = classes - 1;
      // Four and a half standard deviations of chi-square, sqrt(2 free); without throwing away 40,000 gives thousands.
      expect(Math.abs(chiSquare(places, below, classes) - free)).toBeLessThan(
        4.5 * Math.sqrt(2 * free),
      );
    }
  });

  it("do not follow from the one before: all pairs are equally likely", () => {
    const places = randomPlaces(seededRandom("pairs"), 12, 200_000);
    for (const from of [0, 1]) {
      const pairs = Int32Array.from(
        { length: 99_999 },
        (_, i) => 12 * places[2 * i + from]! + places[2 * i + from + 1]!,
      );
      // 143 degrees of freedom: four and a half standard deviations are 76.
      expect(Math.abs(chiSquare(pairs, 144, 144) - 143)).toBeLessThan(76);
    }
  });

  it("come again with the name of the stream, begin alike at any count, and reach both ends", () => {
    const draw = (name: string, count: number) => randomPlaces(seededRandom(name), 60, count);
    expect(draw("one", 1001)).toEqual(draw("one", 1500).subarray(0, 1001));
    expect(draw("one", 50)).not.toEqual(draw("other", 50));
    expect([Math.min(...draw("one", 2000)), Math.max(...draw("one", 2000))]).toEqual([0, 59]);
    expect(randomPlaces(seededRandom("one"), 1, 3)).toEqual(new Int32Array(3));
    expect(Math.max(...randomPlaces(seededRandom("widest"), 65536, 5000))).toBeGreaterThan(65000);
  });

  it("move the stream on by four numbers only", () => {
    const [one, other] = [seededRandom("seeds"), seededRandom("seeds")];
    randomPlaces(one, 60, 5000);
    for (let i = 0; i < 4; i++) other.integer(2 ** 31);
    expect(one.uniform()).toBe(other.uniform());
  });

  it("are refused for bounds and counts that are not whole", () => {
    const random = seededRandom("none");
    for (const below of [0, 1.5, 65537, NaN]) {
      expect(() => randomPlaces(random, below, 3)).toThrow(RangeError);
    }
    expect(() => randomPlaces(random, 3, 1.5)).toThrow(/must be whole/);
  });
});
