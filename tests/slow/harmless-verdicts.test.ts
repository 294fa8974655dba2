import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Session } from "lakeproof/base/session.ts";
import { compareGlides } from "lakeproof/decide/compare-glides.ts";
import { FILES, sessionWith } from "../read/invented-session.ts";
import { changed, someChanges } from "../read/harmless-kinds.ts";

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
});
