import { describe, expect, it } from "vitest";
import { compareTows } from "lakeproof/decide/compare-tows.ts";
import { openSession } from "lakeproof/read/open-session.ts";
import { agreementRecord } from "lakeproof/show/agreement-record.ts";

const evidence = compareTows([
  await openSession("quillwater-tow"),
  await openSession("quillwater-evening"),
]);

describe("the short answer on tow and glides", () => {
  it("names every design whose tow and glides agree, and ranks none", () => {
    const record = agreementRecord(evidence);
    expect(record.verdict).toBe("told");
    expect(record.ahead).toBeNull();
    expect(record.headline).toBe(
      "Tow and glides of alder and birch agree within their uncertainties.",
    );
    expect(record.details.join(" ")).toContain("agree within their uncertainties");
    expect(record.rests).toContain("quick release");
  });

  it("says so first where one design's differ in a single quantity", () => {
    const { answer } = evidence;
    const last = answer.agreement.length - 1;
    const one = answer.agreement.map((each, at) => at === last ? { ...each, en: -1.2 } : each);
    const design = answer.agreement[last]!.design;
    const other = answer.agreement.find((each) => each.design !== design)!.design;
    expect(agreementRecord({ ...evidence, answer: { ...answer, agreement: one } }).headline)
      .toBe(
        `Tow and glides of ${design} differ by more than their uncertainties; those of ${other} agree.`,
      );
  });
});
