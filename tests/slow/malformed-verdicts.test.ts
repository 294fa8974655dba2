import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { compareGlides } from "lakeproof/decide/compare-glides.ts";
import { sessionWith } from "../read/invented-session.ts";
import { EACH, KINDS, numbersIn } from "../read/malformed-kinds.ts";

describe("the verdict of a malformed session folder", () => {
  it.each(Object.keys(KINDS))("holds no NaN and is never a crash: %s", (kind) => {
    fc.assert(
      fc.property(KINDS[kind]!, ({ files }) => {
        const evidence = compareGlides([sessionWith(files)]);
        expect([...numbersIn(evidence)].filter((one) => !Number.isFinite(one))).toEqual([]);
      }),
      { seed: 20310614, numRuns: EACH },
    );
  });
});
