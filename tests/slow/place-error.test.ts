import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { KernelClient } from "lakeproof/publish/kernel/client.ts";
import { placeError } from "lakeproof/publish/place-error.ts";
import { ROOT } from "../publish/notebooks-of-cells.ts";

/** Pieces of TypeScript that the kernel's emitter shortens, stretches or drops; `#` keeps names apart. */
const PIECES = [
  "// a comment",
  "/* a comment\n   of two lines */",
  "",
  "\n",
  "interface Shape# {\n  a: number;\n\n  b?: string;\n}",
  "type Pair# = [number, number];",
  "enum Side# { Left, Right }",
  "const list# = [1, 2, 3].map((one) => ({ one, two: one * 2 }));",
  "const long# = { aaaaaaaaaaaaaaaa: 1, bbbbbbbbbbbbbbbbbbbb: 2, cccccccccccccccccc: [3, 4, 5] };",
  "class Boat# { constructor(private x: number, readonly y = 2) {}\n\n  get z(): number { return this.x; }\n}",
  "function half#<T extends number>(x: T): number {\n  // halves\n\n  return x / 2;\n}",
  "const text# = `one\n  // no comment\n\n${1 + 1}`;",
  "const pattern# = /\\/\\/ [\"'`]/g;",
  'import { basename as base# } from "node:path";',
  'import type { ParsedPath as Parsed# } from "node:path";',
  'import {\n  join as join#,\n  resolve as resolve#,\n} from "node:path";',
  "for (const one of [1, 2]) {\n  if (one > 5) continue;\n}",
  "const value# = (await Promise.resolve({ a: 1 } as { a: number })).a!;",
  "let chain# = [1]\n  .map((one) => one)\n  .filter(Boolean);",
  "const pick# = true\n  ? 1\n  : 2;",
  'import {\n  // one of them\n  join as joined#, // and why\n} from "node:path"; // why',
  "/** Says what.\n * Gives a third. */\nexport function third#(x: number) {\n  return x / 3; // a third\n}",
  'import * as all# from "node:path";',
  "label#: while (true) { break label#; }",
  "const { a: first#, ...rest# } = { a: 1, b: 2, c: 3 };",
];

/** Ways to fail; `@` stands on the line that must be named. */
const FAILURES = [
  'throw new Error("here"); // @',
  'if (true)\n  throw new Error("here"); // @',
  'await Promise.reject(new Error("here")); // @',
  "const absent: { b: { c: number } } = {} as never;\nabsent\n  .b\n  .c; // @",
  '[1].forEach((one) => {\n  if (one === 1) throw new Error("here"); // @\n});',
  'function fails() {\n\n  throw new Error("here"); // @\n}\nfails();',
];

describe("the line of an error", () => {
  it("is right in 600 cells put together at random from what the emitter changes", async () => {
    const client = await KernelClient.start({ cwd: ROOT });
    const piece = fc.array(fc.constantFrom(...PIECES), { maxLength: 8 });
    const cells = fc.sample(fc.tuple(piece, fc.constantFrom(...FAILURES), piece), {
      numRuns: 600,
      seed: 7,
    });
    try {
      for (const [order, [before, failure, after]] of cells.entries()) {
        const numbered = [...before, failure, ...after].map((one, index) =>
          one.replaceAll("#", `${order}x${index}`).replace("fails", `fails${order}`)
            .replace("fails()", `fails${order}()`).replace("absent:", `absent${order}:`)
            .replace("absent\n", `absent${order}\n`)
        );
        const marked = numbered.join("\n");
        const wanted = marked.split("\n").findIndex((line) => line.includes("@")) + 1;
        const source = marked.replace(" // @", "");
        const { end } = await client.execute(source, 1, 20);
        if (end.how !== "error") throw new Error(`${end.how}:\n${source}`);
        const placed = await placeError(source, end, 1);
        expect(placed.line, `${source}\n\n${end.traceback.join("\n")}`).toBe(wanted);
      }
    } finally {
      await client.close();
    }
  });
});
