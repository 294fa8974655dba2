import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Session } from "lakeproof/base/session.ts";
import { FILES, sessionWith } from "./invented-session.ts";
import { changed, CHANGES, scaled, someChanges } from "./harmless-kinds.ts";

/** Everything typed, without the numbers of rows, findings and checksums. */
function rowsOf({ designs, glides, tow, calibrations, conditions, instruments }: Session): string {
  const tables = { designs, glides, tow, calibrations, conditions, instruments };
  return JSON.stringify(tables, (key, value) => key === "row" ? undefined : value);
}

const plain = rowsOf(sessionWith());
const quiet = (session: Session) => session.findings.filter((one) => one.severity !== "note");

describe("harmless changes of the tables", () => {
  it.each(Object.keys(CHANGES))("%s: the same rows to the last digit, and no complaint", (name) => {
    for (let seed = 0; seed < 4; seed++) {
      const session = sessionWith(changed(FILES, [name], seed));
      expect(quiet(session)).toEqual([]);
      expect(rowsOf(session)).toBe(plain);
    }
  });

  it("a hundred of them together, several at a time", () => {
    fc.assert(
      fc.property(someChanges, ([names, seed]) => {
        const session = sessionWith(changed(FILES, names, seed));
        expect(quiet(session)).toEqual([]);
        expect(rowsOf(session)).toBe(plain);
      }),
      { seed: 20310615, numRuns: 100 },
    );
  });

  it("a German spreadsheet's tables hold the same numbers to the last digit", () => {
    const names = [
      "days as a German spreadsheet writes them",
      "semicolons and decimal commas",
      "line ends of another system",
      "a byte order mark",
      "trailing columns",
      "trailing rows",
    ];
    expect(rowsOf(sessionWith(changed(FILES, names, 1)))).toBe(plain);
  });

  it("letters of an old encoding are read with a note", () => {
    const text = FILES["designs.csv"]!.replace("longer, thinner", "länger, dünner");
    const bytes = Uint8Array.from(text, (letter) => letter.charCodeAt(0));
    const session = sessionWith({ "designs.csv": bytes });
    expect(session.designs[1]!.note).toBe("länger, dünner");
    expect(session.findings).toContainEqual(expect.objectContaining({ code: "old-encoding" }));
  });

  it("the test's own change of unit loses no digit", () => {
    expect(scaled("4.75", 36n, 1)).toBe("17.1");
    expect(scaled("0.177", 10000n, 0)).toBe("1770");
    expect(scaled("-0.25", 100n, 0)).toBe("-25");
    expect(scaled("0", 36n, 1)).toBe("0");
  });
});
