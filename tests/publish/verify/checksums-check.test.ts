import { describe, expect, it } from "vitest";
import { sha256 } from "lakeproof/publish/checksum.ts";
import { checksumsText } from "lakeproof/publish/site.ts";
import { checkChecksums } from "lakeproof/publish/verify/checksums-check.ts";

const bytes = (text: string) => new TextEncoder().encode(text);
const folder = (more: Record<string, string> = {}) => {
  const files = { "index.html": "abc", "tables/a b.csv": "1\r\n", ...more };
  return new Map(Object.entries(files).map(([file, text]) => [file, bytes(text)]));
};
const list = checksumsText(
  ["index.html", "tables/a b.csv"].map((file) => ({ file, sha256: sha256(folder().get(file)!) })),
);
const found = (files: Map<string, Uint8Array>) =>
  checkChecksums(files).findings.map((one) => `${one.file} ${one.what}`);

describe("the list of checksums", () => {
  it("has the lines that sha256sum reads", () => {
    // NIST FIPS 180-4, example "abc"
    expect(list.split("\n")[0]).toBe(
      "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad  index.html",
    );
  });

  it("finds nothing in a whole folder", () => {
    const check = checkChecksums(folder({ SHA256SUMS: list }));
    expect(check).toEqual({ findings: [], right: 2 });
  });

  it("finds a changed byte, a missing file, a new file, and a list that is none", () => {
    expect(found(folder({ SHA256SUMS: list, "index.html": "abd" }))).toEqual([
      "index.html does not have the checksum that the list gives",
    ]);
    const missing = folder({ SHA256SUMS: list });
    missing.delete("tables/a b.csv");
    expect(found(missing)[0]).toContain("not there");
    expect(found(folder({ SHA256SUMS: list, "new.txt": "" }))[0]).toContain("not in the list");
    expect(found(folder({ SHA256SUMS: `${list}nonsense\n` }))[0]).toContain("can't be read");
    expect(found(folder())[0]).toContain("missing");
  });
});
