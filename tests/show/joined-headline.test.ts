import { describe, expect, it } from "vitest";
import type { Verdict } from "lakeproof/base/answers.ts";
import { type Compared, joinedHeadline } from "lakeproof/show/joined-headline.ts";

const BETTER = "candidate-better", WORSE = "baseline-better", OPEN = "cannot-tell-yet";

const of = (verdicts: Readonly<Record<string, Verdict>>): Compared[] =>
  Object.entries(verdicts).map(([candidate, verdict]) => ({
    baseline: "alder",
    candidate,
    verdict,
  }));

describe("the bottom line of several candidates", () => {
  it("has a sentence for each of up to three", () => {
    expect(joinedHeadline([])).toBe("");
    expect(joinedHeadline(of({ birch: BETTER, cedar: OPEN, oak: WORSE }))).toBe(
      "Birch glides further than alder from the same launch. Cannot tell yet whether cedar differs " +
        "from alder. Alder glides further than oak from the same launch.",
    );
  });

  it("groups more than three by what is known of them", () => {
    const all = { birch: BETTER, oak: OPEN, cedar: WORSE, fir: BETTER, pine: OPEN, elm: "refused" };
    expect(joinedHeadline(of(all as Record<string, Verdict>))).toBe(
      "Birch and fir glide further than alder from the same launch; cedar falls short; for oak and " +
        "pine it can't be told yet; for elm these runs can't answer it.",
    );
  });

  it("names the baseline in whichever part comes first", () => {
    expect(joinedHeadline(of({ birch: WORSE, oak: WORSE, cedar: OPEN, fir: OPEN }))).toBe(
      "Birch and oak fall short of alder from the same launch; for cedar and fir it can't be told yet.",
    );
    expect(joinedHeadline(of({ birch: OPEN, oak: OPEN, cedar: OPEN, fir: "refused" }))).toBe(
      "It can't be told yet whether birch, oak and cedar differ from alder; for fir these runs can't " +
        "answer it.",
    );
    const none = of({ birch: "refused", oak: "refused", cedar: "refused", fir: "refused" });
    expect(joinedHeadline(none)).toBe(
      "These runs can't answer how birch, oak, cedar and fir compare with alder.",
    );
  });

  it("never hides that a claim hangs on single runs", () => {
    const all = of({ birch: BETTER, oak: OPEN, cedar: OPEN, fir: BETTER });
    const hanging = all.map((one) => one.candidate === "fir" ? { ...one, restsOn: ["7"] } : one);
    expect(joinedHeadline(hanging)).toBe(
      "Birch glides further than alder from the same launch; for oak and cedar it can't be told yet. " +
        "Fir glides further than alder from the same launch, if run 7 is right.",
    );
    const allHang = all.map((one) => ({ ...one, restsOn: ["7"] }));
    expect(joinedHeadline(allHang)).not.toContain(";");
  });

  it("writes a name as its builder does", () => {
    const all = of({ "mk2 B": BETTER, oak: BETTER, cedar: BETTER, fir: BETTER });
    expect(joinedHeadline(all)).toMatch(/^mk2 B, oak, cedar and fir glide further than alder/);
  });
});
