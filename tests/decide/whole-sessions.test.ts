import { describe, expect, it } from "vitest";
import type { Condition, Instrument, Session } from "lakeproof/base/session.ts";
import { compareGlides } from "lakeproof/decide/compare-glides.ts";
import { design, glide, session } from "./invented-session.ts";
// Parent: tests/golden/whole-sessions.py (numpy, scipy), from the rows to the interval, written apart from the library.
import golden from "../golden/whole-sessions.json" with { type: "json" };

type GoldenSession = typeof golden.cases[number]["sessions"][number];

const DESIGNS = [
  design("alder"),
  design("birch", { span: 1.15, area: 0.17, wetVolume: 0.0028 }),
];

function sessionOf(given: GoldenSession, place: number): Session {
  return session({
    name: `session ${place}`,
    designs: DESIGNS,
    glides: given.runs.map((one, i) =>
      glide(one.run, one.design, {
        row: i + 2,
        own: "u" in one ? { ...one.u } as Record<string, number> : {},
        block: one.block,
        launchSpeed: one.launch_speed,
        endSpeed: one.end_speed,
        drop: one.drop,
        distance: one.distance,
        carriedMass: one.mass,
        depth: one.depth,
        ended: one.ended as "stalled",
      })
    ),
    conditions: given.conditions.map((one): Condition => ({
      own: {},
      unit: "",
      statedAs: null,
      note: null,
      ...one,
    })),
    instruments: given.instruments.map((one, i): Instrument => ({
      row: i + 2,
      own: {},
      statedAs: "standard",
      how: null,
      ...one,
      kind: one.kind as "common",
    })),
  });
}

describe("awkward sessions, worked out apart from their rows", () => {
  for (const { name, sessions, expected } of golden.cases) {
    it(name, () => {
      const { answer } = compareGlides(sessions.map(sessionOf));
      const [comparison] = answer.comparisons;
      const { ratio, varianceShares, raw, probabilityCandidateBetter } = comparison!;
      const { speed, drop, mass } = answer.launch!;
      expect({ speed, drop, mass }).toEqual({
        speed: expected.speed,
        drop: expected.drop,
        mass: expected.mass,
      });
      // The library's table of the surface is good to 2e-6 of phi, which nearly cancels in a ratio; variances hold
      // difference quotients of it.
      const near = (actual: number, wanted: number, relative: number) =>
        expect(Math.abs(actual - wanted)).toBeLessThanOrEqual(relative * Math.abs(wanted) + 1e-12);
      near(ratio!.value, Math.exp(expected.logRatio), 1e-7);
      const variance = (ratio!.standardUncertainty! / ratio!.value) ** 2;
      near(variance, expected.scatter + expected.shape + expected.common, 1e-6);
      near(variance * varianceShares!.launchDifference, expected.shape, 1e-5);
      expect(Math.abs(variance * varianceShares!.commonErrors - expected.common))
        .toBeLessThan(1e-12 + 1e-5 * expected.common);
      near(ratio!.degreesOfFreedom!, expected.degreesOfFreedom, 2e-6);
      near(ratio!.low!, expected.low, 2e-7);
      near(ratio!.high!, expected.high, 2e-7);
      expect(Math.abs(probabilityCandidateBetter! - expected.probability)).toBeLessThan(1e-6);
      near(raw!.ratio, expected.raw, 1e-12);
    });
  }
});
