import { describe, expect, it } from "vitest";
import { finding } from "lakeproof/base/finding.ts";
import { restsSentences, rowsWithFaults } from "lakeproof/show/rests-sentence.ts";
import { inventedEvidence } from "../support/invented-evidence.ts";

const fault = finding({
  severity: "error",
  code: "not-a-number",
  file: "glides.csv",
  row: 4,
  what: "Not a number.",
});

describe("what an answer rests on", () => {
  it("never says that nothing was left out above rows with faults", () => {
    const evidence = inventedEvidence();
    const faulty = { ...evidence, answer: { ...evidence.answer, findings: [fault] } };
    expect(restsSentences(faulty)).toContain("Rows of glides.csv with errors do not count");
    expect(restsSentences(faulty)).not.toContain("No run was left out");
    expect(restsSentences({ ...evidence, answer: { ...evidence.answer, findings: [] } })).not
      .toContain("with errors");
  });

  it("speaks of no row where the error is about another table or no row", () => {
    expect(rowsWithFaults([{ ...fault, file: "tow.csv" }, { ...fault, row: null }], "glides.csv"))
      .toBe("");
  });
});
