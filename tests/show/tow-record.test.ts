import { describe, expect, it } from "vitest";
import { compareTows, type TowEvidence } from "lakeproof/decide/compare-tows.ts";
import { answerTextOf } from "lakeproof/show/answer-text.ts";
import { towRecord } from "lakeproof/show/tow-record.ts";
import { exampleTow } from "../support/towed-world.ts";

const evidence = compareTows(exampleTow("two tows").session);

/** The same with other claims. */
function claiming(
  less: readonly (readonly [number, number])[],
  more: readonly (readonly [number, number])[],
): TowEvidence {
  const [first] = evidence.answer.comparisons;
  return {
    ...evidence,
    answer: {
      ...evidence.answer,
      comparisons: [{ ...first!, candidateLessDrag: less, candidateMoreDrag: more }],
    },
  };
}

const all = (one: TowEvidence) => answerTextOf(towRecord(one)).replace(/\s+/g, " ");

describe("the box of a tow", () => {
  it("says from where to where the candidate drags less, and puts it ahead", () => {
    const record = towRecord(claiming([[2.6, 3.4]], []));
    expect(record.headline).toBe(
      "Birch drags less than alder from 2.60 to 3.40\u00a0m/s; elsewhere these readings cannot tell.",
    );
    expect(record).toMatchObject({
      name: "tow",
      verdict: "candidate-better",
      ahead: { design: "birch", place: 2 },
    });
  });

  it("puts nobody ahead where one drags less when slow and the other when fast", () => {
    const record = towRecord(claiming([[2.6, 3]], [[4, 4.4]]));
    expect(record).toMatchObject({ verdict: "cannot-tell-yet", ahead: null });
    expect(record.headline).toContain("less than alder from 2.60 to 3.00\u00a0m/s, more from 4.00");
  });

  it("puts the baseline ahead where the candidate drags more", () => {
    expect(towRecord(claiming([], [[3, 4]]))).toMatchObject({
      verdict: "baseline-better",
      ahead: { design: "alder", place: 1 },
    });
  });

  it("cannot tell yet where nothing is claimed, and never says that they are the same", () => {
    const record = towRecord(claiming([], []));
    expect(record.verdict).toBe("cannot-tell-yet");
    expect(record.headline).toContain("Cannot tell yet which of birch and alder drags less");
    expect(all(claiming([], []))).not.toMatch(/no difference|the same|NaN|undefined|null/);
  });

  it("gives each design's best with its interval, and the strip the ratio's own ends", () => {
    const record = towRecord(evidence);
    const ratio = evidence.answer.comparisons[0]!.bestLiftToDragRatio!;
    expect(record.strip).toEqual({ low: ratio.low, value: ratio.value, high: ratio.high });
    for (const one of evidence.answer.designs) {
      const said = record.details.find((line) => line.startsWith(`${one.design}: best`))!;
      const [value, low, high] = said.match(/\d+(\.\d+)?/g)!.map(Number);
      // Printed to the place of its standard uncertainty, u: off by half of that place, which is below u / 2.
      const { standardUncertainty: u } = one.bestLiftToDrag!;
      expect(Math.abs(value! - one.bestLiftToDrag!.value)).toBeLessThan(u! / 2);
      expect(Math.abs(low! - one.bestLiftToDrag!.low!)).toBeLessThan(u! / 2);
      expect(Math.abs(high! - one.bestLiftToDrag!.high!)).toBeLessThan(u! / 2);
    }
  });

  it("gives a bound where the best speed was not towed, no strip, and which way it lies", () => {
    const { crafts, session } = exampleTow("two tows");
    const best = crafts[0]!.best.speed;
    const fast = { ...session, tow: session.tow.filter((one) => one.setSpeed! > 1.25 * best) };
    const record = towRecord(compareTows(fast));
    expect(record.strip).toBeNull();
    expect(record.details.join(" ")).toMatch(
      /alder: best lift-to-drag at least \d.*not towed, it is slower \(at most/,
    );
  });

  it("refuses with the reason where there is nothing to compare", () => {
    const { session } = exampleTow("two tows");
    const record = towRecord(compareTows({ ...session, tow: [] }));
    expect(record).toMatchObject({ verdict: "refused", strip: null, ahead: null });
    expect(record.details.join(" ")).toContain("no towed reading");
    expect(record.rests).toContain("Towing can hurt");
  });

  it("puts the baseline ahead of no candidate while another drags less at some speeds", () => {
    const [first] = evidence.answer.comparisons;
    const both: TowEvidence = {
      ...evidence,
      answer: {
        ...evidence.answer,
        comparisons: [
          { ...first!, candidate: "cedar", candidateLessDrag: [], candidateMoreDrag: [[3, 4]] },
          { ...first!, candidateLessDrag: [[3.5, 4]], candidateMoreDrag: [[2.6, 3]] },
        ],
      },
    };
    const record = towRecord(both);
    expect(record).toMatchObject({ verdict: "cannot-tell-yet", ahead: null });
    expect(record.headline).toMatch(/^Birch drags less than alder.*Cedar drags more than alder/);
  });

  it("says first what to put right where a unit has slipped, and calls no reading left out", () => {
    const { session } = exampleTow("two tows");
    const record = towRecord(compareTows({
      ...session,
      tow: session.tow.map((one) =>
        one.design === "birch" ? { ...one, lineTension: one.lineTension! / 9.80665 } : one
      ),
    }));
    expect(record.verdict).toBe("refused");
    expect(record.details[0]).toContain("line_tension [kgf]");
    expect(record.rests).toContain("No reading was left out.");
  });

  it("names readings that were left out with their reason", () => {
    const { session } = exampleTow("two tows");
    const tow = session.tow.map((one, at) => at === 2 ? { ...one, leaveOut: "hit a wake" } : one);
    expect(towRecord(compareTows({ ...session, tow })).rests).toMatch(
      /Left out: reading 3 of alder \(.*hit a wake.*\)\./,
    );
  });
});
