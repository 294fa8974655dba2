import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Glide, Instrument, RunEnd, Session } from "lakeproof/base/session.ts";
import { UsageError } from "lakeproof/base/errors.ts";
import { compareGlides } from "lakeproof/decide/compare-glides.ts";
import { design, glide, session } from "../decide/invented-session.ts";

/** Mostly an even draw of likely readings, now and then an extreme one or none. */
const reading = (low: number, high: number, least: number, most: number) =>
  fc.oneof(
    { weight: 24, arbitrary: fc.noBias(fc.double({ min: low, max: high, noNaN: true })) },
    { weight: 1, arbitrary: fc.double({ min: least, max: most, noNaN: true }) },
    { weight: 1, arbitrary: fc.constant(null) },
  );

const anyGlide: fc.Arbitrary<Partial<Glide>> = fc.record({
  design: fc.constantFrom(...Array(9).fill("alder"), ...Array(9).fill("birch"), "oak"),
  block: fc.constantFrom(null, null, null, "morning", "evening"),
  launchSpeed: reading(3.7, 5, 0, 9),
  endSpeed: reading(2.6, 3.4, 0, 9),
  drop: reading(0.05, 0.4, -0.5, 1.5),
  distance: reading(4, 14, 0, 60),
  carriedMass: reading(60, 100, 0.5, 300),
  depth: fc.option(fc.double({ min: 0.02, max: 1, noNaN: true }), { nil: null }),
  ended: fc.constantFrom<RunEnd | null>("stalled", "stalled", "touched", "stopped early", null),
  leaveOut: fc.constantFrom(...Array<null>(11).fill(null), "a reason"),
});

const anyInstrument: fc.Arbitrary<Instrument> = fc.record({
  row: fc.constant(2),
  own: fc.constant({}),
  quantity: fc.constantFrom("launch_speed", "end_speed", "drop", "distance", "carried_mass"),
  instrument: fc.constantFrom(null, "camera"),
  uncertainty: fc.oneof(
    fc.double({ min: 0, max: 0.2, noNaN: true }),
    fc.double({ min: 0, max: 3, noNaN: true }),
  ),
  relative: fc.boolean(),
  statedAs: fc.constant("standard" as const),
  kind: fc.constantFrom("independent" as const, "common" as const),
  how: fc.constant(null),
});

const anySession: fc.Arbitrary<Session> = fc.record({
  glides: fc.array(anyGlide, { minLength: 0, maxLength: 24, size: "max" }),
  instruments: fc.array(anyInstrument, { maxLength: 3 }),
  span: fc.double({ min: 0.2, max: 4, noNaN: true }),
}).map(({ glides, instruments, span }) =>
  session({
    designs: [design("alder"), design("birch", { span, wetVolume: null })],
    glides: glides.map((one, i) => glide(String(i + 1), one.design ?? "alder", one)),
    instruments,
  })
);

function unsound(value: unknown, path = "evidence"): string[] {
  if (typeof value === "number") return Number.isFinite(value) ? [] : [`${path} is ${value}`];
  if (typeof value === "string") return /NaN|Infinity|undefined/.test(value) ? [value] : [];
  if (value === null || typeof value !== "object") return [];
  return Object.entries(value).flatMap(([key, one]) => unsound(one, `${path}.${key}`));
}

describe("any session at all", () => {
  it("gets an answer without a number that is none, every run accounted for", () => {
    fc.assert(
      fc.property(anySession, (one) => {
        let evidence;
        try {
          evidence = compareGlides([one]);
        } catch (error) {
          // The only way out: the foil floats what it is to carry.
          expect(error).toBeInstanceOf(UsageError);
          return;
        }
        expect(unsound(evidence)).toEqual([]);
        expect(evidence.answer.runs).toHaveLength(one.glides.length);
        for (const run of evidence.answer.runs) {
          if (!run.used) expect(run.reason).not.toBeNull();
        }
        for (const comparison of evidence.answer.comparisons) {
          const { verdict, ratio } = comparison;
          if (verdict === "refused") {
            expect(ratio).toBeNull();
            expect(evidence.answer.findings.some((finding) => finding.severity === "error")).toBe(
              true,
            );
          }
          if (verdict === "candidate-better") expect(ratio!.low!).toBeGreaterThan(1);
          if (verdict === "baseline-better") expect(ratio!.high!).toBeLessThan(1);
        }
      }),
      // Seeded, so that a failure comes back.
      { numRuns: 600, seed: 20310614 },
    );
  });

  it("gets the same bytes whatever the order of its rows", () => {
    fc.assert(
      fc.property(anySession, (one) => {
        const answer = (glides: readonly Glide[]) => {
          try {
            return JSON.stringify(compareGlides([{ ...one, glides }]));
          } catch (error) {
            return String(error);
          }
        };
        expect(answer([...one.glides].reverse())).toBe(answer(one.glides));
      }),
      { numRuns: 60, seed: 20310615 },
    );
  });
});
