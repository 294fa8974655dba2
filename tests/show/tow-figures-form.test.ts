import { describe, it } from "vitest";
import type { FigureRecord } from "lakeproof/base/records.ts";
import { compareTows, type TowEvidence } from "lakeproof/decide/compare-tows.ts";
import { figureDrag } from "lakeproof/show/figure-drag.ts";
import { figureDragDifference } from "lakeproof/show/figure-drag-difference.ts";
import { figureLiftToDrag } from "lakeproof/show/figure-lift-to-drag.ts";
import {
  expectNoHoles,
  expectTextOnly,
  expectWellMade,
  HOSTILE,
} from "../support/figure-claims.ts";
import { expectGolden } from "../support/golden.ts";
import { exampleTow } from "../support/towed-world.ts";

const { crafts, session } = exampleTow("two tows");

/** One reading left out, one that stands out: every kind of mark is drawn. */
const evidence = compareTows({
  ...session,
  tow: session.tow.map((one, at) =>
    at === 4
      ? { ...one, leaveOut: "hit a wake" }
      : at === 30
      ? { ...one, lineTension: one.lineTension! * 1.12 }
      : one
  ),
});

/** All speeds faster than the best of alder. */
const fast = compareTows({
  ...session,
  tow: session.tow.filter((one) => one.setSpeed! > 1.25 * crafts[0]!.best.speed),
});

const FIGURES: Record<string, (evidence: TowEvidence) => FigureRecord> = {
  drag: figureDrag,
  "drag-difference": figureDragDifference,
  "lift-to-drag": figureLiftToDrag,
};

/** Candidate's name changed to one that would hurt as markup. */
function renamed(name: string): TowEvidence {
  const named = <T extends { readonly design: string }>(one: T): T =>
    one.design === "birch" ? { ...one, design: name } : one;
  return {
    answer: {
      ...evidence.answer,
      designs: evidence.answer.designs.map(named),
      comparisons: evidence.answer.comparisons.map((one) => ({ ...one, candidate: name })),
    },
    designs: evidence.designs.map((one) => ({
      ...one,
      answer: named(one.answer),
      name: named(one.answer).design,
    })),
    pairs: evidence.pairs.map((one) => ({ ...one, answer: { ...one.answer, candidate: name } })),
    traced: evidence.traced,
  };
}

describe("every figure of a tow", () => {
  for (const [name, figure] of Object.entries(FIGURES)) {
    it(`${name} looks as it did when it was last looked at`, () => {
      const { wide, narrow } = figure(evidence);
      expectGolden(`tow-${name}-wide`, wide);
      expectGolden(`tow-${name}-narrow`, narrow);
    });

    it(`${name} is named, described, on its own paper, and carries no style`, () => {
      expectWellMade(figure(evidence));
    });

    it(`${name} keeps a hostile name as text, in well-formed XML`, () => {
      expectTextOnly(figure(renamed(HOSTILE)));
    });

    it(`${name} is drawn for one design, one speed and nothing at all, without NaN`, () => {
      const kept = (keep: (one: typeof session.tow[number]) => boolean) =>
        compareTows({ ...session, tow: session.tow.filter(keep) });
      const awkward = [
        kept(() => false),
        kept((one) => one.design === "birch"),
        kept((one) => one.setSpeed === session.tow[0]!.setSpeed),
        kept((one) => one.row === 2),
        fast,
      ];
      for (const one of awkward) expectNoHoles(figure(one));
    });
  }
});
