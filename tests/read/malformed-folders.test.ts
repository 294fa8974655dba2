import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { answerable } from "lakeproof/check/answerable.ts";
import { checkSession } from "lakeproof/check/check-session.ts";
import { sessionWith } from "./invented-session.ts";
import { EACH, KINDS, numbersIn } from "./malformed-kinds.ts";

describe("malformed session folders", () => {
  it("are 200 or more", () => {
    expect(Object.keys(KINDS).length * EACH).toBeGreaterThanOrEqual(200);
  });

  it.each(Object.keys(KINDS))("%s is told with file, row, column and cause", (kind) => {
    fc.assert(
      fc.property(KINDS[kind]!, ({ files, expected }) => {
        const session = sessionWith(files);
        expect(session.findings).toContainEqual(expect.objectContaining(expected));
        const all = [session, checkSession(session), answerable(session)];
        expect([...numbersIn(all)].filter((one) => !Number.isFinite(one))).toEqual([]);
      }),
      { seed: 20310614, numRuns: EACH },
    );
  });

  it("of random bytes never crash the reading", () => {
    const file = fc.constantFrom(
      "designs.csv",
      "glides.csv",
      "tow.csv",
      "conditions.csv",
      "datapackage.json",
    );
    const bytes = fc.oneof(
      fc.uint8Array({ maxLength: 200 }),
      fc.string({ unit: "binary", maxLength: 200 }).map((text) => new TextEncoder().encode(text)),
      fc.string({ unit: fc.constantFrom(...'",;\t\r\n =.-1a[]%'), maxLength: 200 }).map((text) =>
        new TextEncoder().encode(text)
      ),
    );
    fc.assert(
      fc.property(file, bytes, (name, junk) => {
        const session = sessionWith({ [name]: junk });
        expect(session.findings.length).toBeGreaterThan(0);
        expect([...numbersIn(session)].filter((one) => !Number.isFinite(one))).toEqual([]);
      }),
      { seed: 7, numRuns: 300 },
    );
  });
});
