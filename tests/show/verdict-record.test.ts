import { describe, expect, it } from "vitest";
import fc from "fast-check";
import type { GlideComparison, Verdict } from "lakeproof/base/answers.ts";
import { finding } from "lakeproof/base/finding.ts";
import { glideAnswerObject } from "lakeproof/show/answer-json.ts";
import { leadingComparison, verdictRecord } from "lakeproof/show/verdict-record.ts";
import { moreRunsSentences } from "lakeproof/show/verdict-sentence.ts";
import {
  COMPARISON,
  inventedCannotTell,
  inventedEvidence,
  inventedRefusal,
  withRun,
} from "../support/invented-evidence.ts";

/** Everything a reader sees, with ordinary spaces. */
function said(record: ReturnType<typeof verdictRecord>): string {
  return [record.headline, ...record.details, record.rests].join("\n").replace(/\u00a0/g, " ");
}

describe("the verdict in words", () => {
  it("names who glides further, with ratio, interval, launch, height and mass", () => {
    const record = verdictRecord(inventedEvidence());
    expect(record.headline).toBe("Birch glides further than alder from the same launch.");
    expect(record.ahead).toEqual({ design: "birch", place: 2 });
    expect(said(record)).toContain(
      "From the same launch (4.1 m/s, 0.18 m of height to lose, 84 kg) birch covers 1.182 times " +
        "the distance of alder, each down to its own end speed; the 95 % interval runs from " +
        "1.043 to 1.339.",
    );
    expect(said(record)).toContain("probability that birch is the better glider is 99.4 %");
    expect(record.strip).toEqual({ low: 1.0434176, value: 1.1820182, high: 1.3390295 });
    expect(record.sides).toEqual(["alder further", "birch further"]);
  });

  it("says what the launch did, and that raw distances point the wrong way", () => {
    const text = said(verdictRecord(inventedEvidence()));
    expect(text).toContain("As flown, birch covered 0.71 times the distance of alder on average.");
    expect(text).toContain("Birch was launched 0.6 m/s slower on average");
    expect(text).toContain(
      "Launch speed, height lost and ends together would cost it about 40 % of its distance",
    );
    expect(text).toContain("Raw distances compared as they stand would have named alder");
  });

  it("names no cause whose direction disagrees with the effect", () => {
    // Birch was launched slower; an effect that helps it can't come from that.
    const raw = { ...COMPARISON.raw!, ratio: 1.4184, launchEffect: 1.2 };
    const text = said(verdictRecord(inventedEvidence({ raw })));
    expect(text).not.toContain("slower on average");
    expect(text).toContain("ends together would add about 20 % to its distance");
  });

  it("says where the common launch lies outside what a design was flown at", () => {
    const whole = inventedEvidence();
    const at = (speed: number) =>
      said(verdictRecord({
        ...whole,
        answer: { ...whole.answer, launch: { speed, drop: 0.18, mass: 84 } },
      }));
    expect(at(4.5)).toContain("No run of birch was launched faster than 4.33 m/s");
    expect(at(4.5)).not.toContain("No run of alder");
    expect(at(4.1)).toContain("No run of alder was launched slower than 4.28 m/s");
    expect(at(4.3)).not.toContain("No run of");
  });

  it("says so when the launches were alike", () => {
    const raw = { ...COMPARISON.raw!, ratio: 1.19, launchEffect: 1.007 };
    expect(said(verdictRecord(inventedEvidence({ raw })))).toContain("The launches were alike");
  });

  it("names the baseline when that is ahead", () => {
    const record = verdictRecord(inventedEvidence({
      verdict: "baseline-better",
      ratio: { ...COMPARISON.ratio!, value: 0.85, low: 0.76, high: 0.95 },
      probabilityCandidateBetter: 0.004,
    }));
    expect(record.headline).toBe("Alder glides further than birch from the same launch.");
    expect(record.ahead).toEqual({ design: "alder", place: 1 });
    expect(said(record)).toContain("probability that alder is the better glider is 99.6 %");
  });

  it("can't tell yet: equal is inside, how many runs more, and which way the runs lean", () => {
    const record = verdictRecord(inventedCannotTell());
    expect(record.verdict).toBe("cannot-tell-yet");
    expect(record.ahead).toBeNull();
    expect(record.headline).toBe("Cannot tell yet whether birch differs from alder.");
    const text = said(record);
    expect(text).toContain("Equal is inside the interval.");
    expect(text).toContain("The runs lean towards birch (probability 97 %)");
    expect(text).toContain("About 35 more runs of each would settle a difference of 10 %");
    expect(text).toContain("Settle the number before you begin");
  });

  it("says why no number of runs would do, and what would", () => {
    const [sentence] = moreRunsSentences({ now: null, matchedLaunches: 12, never: true });
    expect(sentence).toMatch(/^No number of runs at these launches .* launch both at the same/);
    expect(sentence).toContain("About 12 more runs of each would then do.");
    expect(moreRunsSentences({ now: 1, matchedLaunches: 1, never: false })[0])
      .toContain("About 1 more run of each");
    expect(moreRunsSentences({ now: 0, matchedLaunches: 0, never: false })[0])
      .toContain("A smaller one needs more runs.");
  });

  it("refuses in words: what was found and what would be right", () => {
    const record = verdictRecord(inventedRefusal());
    expect(record.verdict).toBe("refused");
    expect(record.headline).toBe("These runs can't answer whether birch or alder glides further.");
    expect(record.strip).toBeNull();
    expect(said(record)).toContain("Wanted: Fly both designs on the same day with the same");
    expect(said(record)).not.toMatch(/times the distance|probability/);
  });

  it("names runs left out with their reason", () => {
    const out = withRun(inventedEvidence(), "alder", 2, {
      used: false,
      reason: "fell off the dock",
    });
    expect(said(verdictRecord(out))).toContain("Left out: run 5 of alder (fell off the dock).");
    expect(said(verdictRecord(out))).toContain("Rests on 6 runs of alder and 7 runs of birch");
  });

  it("says which run stands out, and the answer without it", () => {
    const whole = inventedEvidence();
    const what = "Run 4 of birch: looks pumped. It is kept. Without it 1.12 (0.97 to 1.29).";
    const odd = finding({ severity: "warning", code: "odd-run", what });
    const flagged = { ...whole, answer: { ...whole.answer, findings: [odd] } };
    expect(said(verdictRecord(flagged))).toContain(what);
  });

  it("gives no interval and no lean where so few runs allow none", () => {
    const ratio = { ...COMPARISON.ratio!, standardUncertainty: null, low: null, high: null };
    const text = said(verdictRecord(inventedEvidence({
      verdict: "cannot-tell-yet",
      ratio,
      probabilityCandidateBetter: null,
      moreRuns: null,
    })));
    expect(text).toContain("so few runs tell nothing of how sure that is");
    expect(text).not.toMatch(/the 95 % interval runs|Equal is inside|lean|verdict stays/);
  });

  it("begins with the design whose mark stands before it, whatever the order of the designs", () => {
    const whole = inventedEvidence();
    const [birch] = whole.answer.comparisons;
    const open = { ...birch!, candidate: "oak", verdict: "cannot-tell-yet" as const };
    const comparisons = [open, birch!];
    const record = verdictRecord({ ...whole, answer: { ...whole.answer, comparisons } });
    expect(record.ahead!.design).toBe("birch");
    expect(record.headline).toMatch(/^Birch glides further .* Cannot tell yet whether oak /);
  });

  it("says when a single run decides, in the headline too", () => {
    const one = verdictRecord(inventedEvidence({ fragile: true, restsOn: ["4"] }));
    expect(one.headline)
      .toBe("Birch glides further than alder from the same launch, if run 4 is right.");
    const two = verdictRecord(inventedEvidence({ fragile: true, restsOn: ["4", "7"] }));
    expect(two.headline).toContain(", but it hangs on single runs.");
    expect(said(verdictRecord(inventedEvidence({ fragile: true, restsOn: ["4"] }))))
      .toContain("without run 4 the verdict would be another");
    expect(said(verdictRecord(inventedEvidence())))
      .toContain("The verdict stays if any one run is left out.");
  });

  it("never lets an interval that clears 1 read as if it touched it", () => {
    const ratio = { ...COMPARISON.ratio!, value: 1.15, low: 1.0031, high: 1.32 };
    expect(said(verdictRecord(inventedEvidence({ ratio })))).toContain("from 1.003 to 1.320");
  });

  it("never says that there is no difference, nor NaN, whatever the verdict", () => {
    const verdicts: Verdict[] = [
      "candidate-better",
      "baseline-better",
      "cannot-tell-yet",
      "refused",
    ];
    const ratios = fc.double({ min: 0.01, max: 100, noNaN: true });
    fc.assert(fc.property(
      fc.constantFrom(...verdicts),
      ratios,
      ratios,
      fc.double({ min: 0, max: 1, noNaN: true }),
      fc.boolean(),
      (verdict, value, launchEffect, p, fragile) => {
        const text = said(verdictRecord(inventedEvidence({
          verdict,
          ratio: { ...COMPARISON.ratio!, value, low: value / 1.2, high: value * 1.3 },
          raw: { ...COMPARISON.raw!, launchEffect },
          probabilityCandidateBetter: p,
          fragile,
        })));
        expect(text).not.toMatch(/no difference|NaN|undefined|Infinity|null/);
      },
    ));
  });

  it("leads with the strongest claim among several", () => {
    const one = (candidate: string, verdict: Verdict, value: number): GlideComparison => ({
      ...COMPARISON,
      candidate,
      verdict,
      ratio: { ...COMPARISON.ratio!, value },
    });
    const lead = leadingComparison([
      one("birch", "cannot-tell-yet", 1.3),
      one("cedar", "candidate-better", 1.2),
      one("larch", "candidate-better", 1.4),
      one("maple", "baseline-better", 0.5),
    ]);
    expect(lead?.candidate).toBe("larch");
    expect(leadingComparison([])).toBeNull();
  });

  it("keeps a hostile name as text without control characters", () => {
    const whole = inventedEvidence({ candidate: "<script>\u001b[31m" });
    expect(said(verdictRecord(whole))).toContain(
      "<script>?[31m glides further than alder from the same launch.",
    );
  });
});

describe("the answer as JSON", () => {
  it("keeps the contract's order of keys, twelve digits, and no negative zero", () => {
    const { answer } = inventedEvidence();
    const object = glideAnswerObject(
      { ...answer, launch: { mass: 84, drop: -0, speed: 0.1 + 0.2 } },
      { lakeproof: "1", deno: "2.9.6" },
    );
    expect(Object.keys(object)).toEqual([
      "contract",
      "question",
      "sessions",
      "findings",
      "versions",
      "dataChecksums",
      "launch",
      "designs",
      "comparisons",
      "runs",
    ]);
    expect(JSON.stringify(object.launch)).toBe('{"speed":0.3,"drop":0,"mass":84}');
    expect(JSON.stringify(object.versions)).toBe('{"deno":"2.9.6","lakeproof":"1"}');
  });

  it("refuses a number that is not finite and says where it stands", () => {
    const { answer } = inventedEvidence({ probabilityCandidateBetter: NaN });
    expect(() => glideAnswerObject(answer)).toThrow("/comparisons/0/probabilityCandidateBetter");
  });
});
