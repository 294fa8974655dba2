import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Glide, Instrument, Session } from "lakeproof/base/session.ts";
import { compareGlides } from "lakeproof/decide/compare-glides.ts";
import { design, glide, session } from "./invented-session.ts";

/** A run's readings as a share of what can be read; ends are kept below launches. */
const reading = fc.record({
  launch: fc.double({ min: 3.9, max: 4.9, noNaN: true }),
  end: fc.double({ min: 2.8, max: 3.3, noNaN: true }),
  drop: fc.double({ min: 0.1, max: 0.3, noNaN: true }),
  ratio: fc.double({ min: 9, max: 15, noNaN: true }),
  mass: fc.double({ min: 70, max: 90, noNaN: true }),
  block: fc.constantFrom("a", "b", "c", "d", "e"),
  stalled: fc.boolean(),
});

type Reading = typeof reading extends fc.Arbitrary<infer T> ? T : never;

function runOf(design: string, one: Reading, i: number, blocks: number): Glide {
  // Height spent times a glide ratio: a distance that a foil can have.
  const spent = one.drop + (one.launch ** 2 - one.end ** 2) / 19.6;
  const block = "abcde".indexOf(one.block) % blocks;
  return glide(`${design}${i + 1}`, design, {
    launchSpeed: one.launch,
    endSpeed: one.end,
    drop: one.drop,
    distance: spent * one.ratio,
    carriedMass: one.mass,
    // The first of each design lies in the first block and the first two stall, so that there is something to compare.
    block: "abcde"[i === 0 ? 0 : block]!,
    ended: i < 2 || one.stalled ? "stalled" : "stopped early",
  });
}

/** Two designs of two to nine runs, unequal numbers, in one to five blocks, with shared errors. */
const sessions = fc.record({
  alder: fc.array(reading, { minLength: 3, maxLength: 9 }),
  birch: fc.array(reading, { minLength: 3, maxLength: 9 }),
  blocks: fc.constantFrom(1, 2, 5),
  shared: fc.double({ min: 0, max: 0.02, noNaN: true }),
}).map(({ alder, birch, blocks, shared }): Session =>
  session({
    glides: [
      ...alder.map((one, i) => runOf("alder", one, i, blocks)),
      ...birch.map((one, i) => runOf("birch", one, i, blocks)),
    ].map((one, i) => ({ ...one, row: i + 2 })),
    instruments: [
      source("distance", 0.02, "independent", true),
      source("launch_speed", shared, "common", true),
      source("distance", shared, "common", true),
    ],
  })
);

function source(
  quantity: string,
  uncertainty: number,
  kind: "common" | "independent",
  relative: boolean,
): Instrument {
  return {
    row: 2,
    own: {},
    quantity,
    instrument: `for ${quantity}`,
    uncertainty,
    relative,
    statedAs: "standard",
    kind,
    how: null,
  };
}

/** What an answer says of its one pair, as logarithms. */
function said(given: Session, baseline = "alder") {
  const { answer } = compareGlides([given], { baseline });
  const { ratio, raw, probabilityCandidateBetter: probability, verdict } = answer.comparisons[0]!;
  return {
    launch: answer.launch!,
    verdict,
    raw,
    log: ratio === null ? null : Math.log(ratio.value),
    low: ratio?.low == null ? null : Math.log(ratio.low),
    high: ratio?.high == null ? null : Math.log(ratio.high),
    probability,
  };
}

/** Rounding of double arithmetic: sums of some twenty terms, differences of logarithms near 2. */
const EXACT = 1e-11;

function alike(one: ReturnType<typeof said>, other: ReturnType<typeof said>, within = EXACT): void {
  expect(other.verdict).toBe(one.verdict);
  for (const key of ["log", "low", "high", "probability"] as const) {
    if (one[key] === null) expect(other[key]).toBeNull();
    else expect(Math.abs(other[key]! - one[key])).toBeLessThan(within);
  }
}

function change(given: Session, edit: (one: Glide) => Partial<Glide>): Session {
  return { ...given, glides: given.glides.map((one) => ({ ...one, ...edit(one) })) };
}

const holds = (claim: (given: Session) => void) =>
  fc.assert(fc.property(sessions, claim), { numRuns: 12, seed: 20310614 });

describe("whatever the runs", () => {
  it("swapping baseline and candidate turns the ratio, its interval and its probability over", () => {
    let intervals = 0;
    holds((given) => {
      const [one, other] = [said(given), said(given, "birch")];
      if (one.low !== null) intervals++;
      if (one.log === null) return expect(other.log).toBeNull();
      expect(Math.abs(one.log + other.log!)).toBeLessThan(EXACT);
      if (one.low === null) return expect(other.low).toBeNull();
      expect(Math.abs(one.low + other.high!)).toBeLessThan(EXACT);
      expect(Math.abs(one.high! + other.low!)).toBeLessThan(EXACT);
      expect(Math.abs(one.probability! + other.probability! - 1)).toBeLessThan(EXACT);
    });
    // Most of the sessions drawn can be compared, so that the claims here are not empty.
    expect(intervals).toBeGreaterThan(6);
  });

  it("a tape that stretches all distances alike changes nothing", () => {
    holds((given) =>
      alike(said(given), said(change(given, (one) => ({ distance: 1.7 * one.distance! }))))
    );
  });

  it("other names of designs, runs and blocks change nothing", () => {
    holds((given) => {
      const name = (design: string) => design === "alder" ? "willow" : "ash";
      const renamed = change(given, (one) => ({
        design: name(one.design),
        block: { a: "saturday", b: "monday", c: "friday", d: "x", e: "1" }[one.block!]!,
      }));
      const designs = given.designs.map((one) => ({ ...one, design: name(one.design) }));
      alike(said(given), said({ ...renamed, designs }, "willow"));
    });
  });

  it("another order of rows changes not a byte", () => {
    holds((given) => {
      const turned = { ...given, glides: [...given.glides].reverse() };
      expect(JSON.stringify(compareGlides([turned]))).toBe(JSON.stringify(compareGlides([given])));
    });
  });

  it("raw ratio is launch effect times drag effect times energy effect", () => {
    holds((given) => {
      const { raw } = said(given);
      if (raw === null) return;
      const product = raw.launchEffect * raw.dragEffect * raw.energyEffect;
      expect(Math.abs(Math.log(product / raw.ratio))).toBeLessThan(EXACT);
    });
  });

  it("each run read twice leaves the ratio of one block and narrows its interval", () => {
    holds((given) => {
      const plain = change(given, () => ({ block: null }));
      const twice = {
        ...plain,
        glides: [...plain.glides, ...plain.glides.map((one) => ({ ...one, run: `${one.run}b` }))],
      };
      const [one, two] = [said(plain), said(twice)];
      if (one.log === null) return;
      expect(Math.abs(one.log - two.log!)).toBeLessThan(EXACT);
      expect(two.high! - two.low!).toBeLessThan(one.high! - one.low!);
    });
  });

  it("one foil under two names with the same runs is an even bet", () => {
    holds((given) => {
      const runs = given.glides.filter((one) => one.design === "alder");
      const twin = runs.map((one) => ({
        ...one,
        run: `twin ${one.run}`,
        row: one.row + 50,
        design: "birch",
      }));
      const same = said({
        ...given,
        designs: [design("alder"), design("birch")],
        glides: [...runs, ...twin],
      });
      if (same.log === null) return;
      expect(Math.abs(same.log)).toBeLessThan(EXACT);
      if (same.probability !== null) {
        expect(Math.abs(same.probability - 0.5)).toBeLessThan(1e-9);
        expect(same.verdict).toBe("cannot-tell-yet");
      }
    });
  });
});
