import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Session } from "lakeproof/base/session.ts";
import { compareGlides } from "lakeproof/decide/compare-glides.ts";
import { FILES, sessionWith } from "../read/invented-session.ts";
import { changed, someChanges } from "../read/harmless-kinds.ts";

const demo = Object.fromEntries(
  Object.keys(FILES).map((file) => [
    file,
    readFileSync(new URL(`../../data/quillwater-evening/${file}`, import.meta.url), "utf8"),
  ]),
);

/** The answer without what speaks of the files themselves: findings with their rows, checksums. */
function verdictBytes(session: Session): string {
  const { answer } = compareGlides([session]);
  return JSON.stringify({ ...answer, findings: [], dataChecksums: [] });
}

describe("the verdict", () => {
  it("keeps its bytes through a hundred harmless changes of the tables", () => {
    const plain = verdictBytes(sessionWith());
    expect(plain).toContain('"ratio":{"value":');
    fc.assert(
      fc.property(someChanges, ([names, seed]) => {
        expect(verdictBytes(sessionWith(changed(FILES, names, seed)))).toBe(plain);
      }),
      { seed: 20310616, numRuns: 100 },
    );
  });

  it("of the demo session is the same from a German spreadsheet's tables, to the last digit", () => {
    const names = [
      "days as a German spreadsheet writes them",
      "semicolons and decimal commas",
      "line ends of another system",
      "a byte order mark",
      "trailing columns",
      "trailing rows",
    ];
    const plain = sessionWith({ ...demo });
    const german = sessionWith(changed(demo, names, 1));
    expect(german.glides.length).toBeGreaterThan(20);
    expect(verdictBytes(german)).toBe(verdictBytes(plain));
  });
});
