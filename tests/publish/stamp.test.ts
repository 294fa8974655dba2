import { describe, expect, it } from "vitest";
import { sha256 } from "lakeproof/publish/checksum.ts";
import { notebookSha256, versionsOf } from "lakeproof/publish/stamp.ts";
import { code, notebookOf, prose, shown } from "../support/example-notebook.ts";

describe("the stamp", () => {
  it("uses SHA-256 as published", () => {
    // NIST FIPS 180-4 example "abc" (csrc.nist.gov, Cryptographic Standards, SHA256 examples).
    expect(sha256("abc")).toBe("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
  });

  it("of a notebook moves with its cells and not with outputs or how the file splits lines", () => {
    const one = notebookOf(prose("# A\nb"), shown("glide", { x: 1 }));
    const other = notebookOf(prose("# A\nb"), shown("glide", { x: 2 }));
    expect(notebookSha256(one)).toBe(notebookSha256(other));
    expect(notebookSha256({ cells: [{ cell_type: "markdown", source: ["# A\n", "b"] }] }))
      .toBe(notebookSha256(notebookOf(prose("# A\nb"))));
    expect(notebookSha256(notebookOf(prose("x")))).not.toBe(notebookSha256(notebookOf(code("x"))));
  });

  it("names Deno and the pinned version of each package that was used", () => {
    const imports = {
      "lakeproof": "./lib/mod.ts",
      "@observablehq/plot": "npm:@observablehq/plot@0.6.17",
      "odex": "npm:odex@2.0.4",
      "std": "jsr:@std/path@1.0.0",
    };
    const deno = Deno.version.deno;
    expect(versionsOf(imports)).toEqual({
      "Deno": deno,
      "@observablehq/plot": "0.6.17",
      "odex": "2.0.4",
      "std": "1.0.0",
    });
    expect(versionsOf(imports, new Set(["odex"]))).toEqual({ Deno: deno, odex: "2.0.4" });
  });
});
