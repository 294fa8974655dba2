import { inflateRawSync } from "node:zlib";
import { describe, expect, it } from "vitest";
import { sha256 } from "lakeproof/publish/checksum.ts";
import { citationText } from "lakeproof/publish/citation.ts";
import { UNNAMED } from "lakeproof/publish/publication.ts";
import { sideFiles } from "lakeproof/publish/side-files.ts";
import { unzipFiles, zipFiles } from "lakeproof/publish/zip-files.ts";

const bytes = (text: string) => new TextEncoder().encode(text);
const text = (data: Uint8Array | undefined) => new TextDecoder().decode(data);
const sources = [
  { file: "source/data/evening/designs.csv", bytes: bytes("design\nalder\n") },
  { file: "source/data/evening/glides.csv", bytes: bytes("run\n1\n") },
  { file: "source/data/truth.json", bytes: bytes("{}") },
  { file: "source/lib/mod.ts", bytes: bytes("") },
];
const side = (more = {}) =>
  new Map(
    sideFiles(["01-first"], sources, { ...UNNAMED, ...more }).map((one) => [one.file, one.bytes]),
  );

describe("files packed into a ZIP", () => {
  const long = "run,distance\n".repeat(100);

  it("can be read by another inflater, and bear the format's earliest date", () => {
    const zip = zipFiles([{ file: "a/b.csv", bytes: bytes(long) }]);
    const view = new DataView(zip.buffer, zip.byteOffset);
    // APPNOTE 4.3.7: local file header, its signature, method 8, time and date (1980-01-01 is 0x0021), sizes, name.
    expect(view.getUint32(0, true)).toBe(0x04034b50);
    expect([8, 10, 12].map((at) => view.getUint16(at, true))).toEqual([8, 0, 0x0021]);
    const [packed, name, extra] = [
      view.getUint32(18, true),
      view.getUint16(26, true),
      view.getUint16(28, true),
    ];
    const from = 30 + name + extra;
    expect(inflateRawSync(zip.subarray(from, from + packed)).toString()).toBe(long);
  });

  it("come out as they went in", () => {
    const files = [{ file: "a.csv", bytes: bytes(long) }, { file: "b.png", bytes: bytes("\x89P") }];
    const out = unzipFiles(zipFiles(files));
    expect([...out].map(([file, data]) => [file, text(data)]))
      .toEqual([["a.csv", long], ["b.png", "\x89P"]]);
  });
});

describe("beside the pages", () => {
  it("stands one ZIP a session with the checksums of its files, and of no other file", () => {
    const files = side();
    expect([...files.keys()]).toEqual(["CITATION.cff", "sitemap.txt", "data/evening.zip"]);
    const inside = unzipFiles(files.get("data/evening.zip")!);
    expect([...inside.keys()])
      .toEqual(["evening/designs.csv", "evening/glides.csv", "evening/SHA256SUMS"]);
    expect(text(inside.get("evening/SHA256SUMS"))).toBe(
      `${sha256("design\nalder\n")}  designs.csv\n${sha256("run\n1\n")}  glides.csv\n`,
    );
  });

  it("stands the list of pages, with addresses where one is known", () => {
    expect(text(side().get("sitemap.txt"))).toBe("index.html\n01-first.html\n");
    expect(text(side({ address: "https://lake.example/" }).get("sitemap.txt")))
      .toBe("https://lake.example/index.html\nhttps://lake.example/01-first.html\n");
  });

  it("stands how to cite it, whatever the names hold", () => {
    // Citation File Format 1.2.0 asks for these four keys.
    const citation = citationText({ ...UNNAMED, title: 'A "quoted": title', licence: "MIT" });
    for (const key of ["cff-version: 1.2.0", "message:", "authors:", "title:"]) {
      expect(citation).toContain(`${key}`);
    }
    expect(citation).toContain('title: "A \\"quoted\\": title"\n');
    expect(citation).toContain('license: "MIT"\n');
    expect(citation).not.toContain("url:");
  });
});
