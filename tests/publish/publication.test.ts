import { describe, expect, it } from "vitest";
import { readPublication, UNNAMED } from "lakeproof/publish/publication.ts";

/** What a project with this text says of itself. */
function read(text: string | null) {
  const root = Deno.makeTempDirSync();
  try {
    Deno.mkdirSync(`${root}/notebooks`);
    if (text !== null) Deno.writeTextFileSync(`${root}/notebooks/publication.json`, text);
    return readPublication(root);
  } finally {
    Deno.removeSync(root, { recursive: true });
  }
}

describe("what a project says of its publication", () => {
  it("may be left out, in whole or in part", () => {
    expect(read(null)).toEqual(UNNAMED);
    expect(read('{"title": "Mine"}')).toEqual({ ...UNNAMED, title: "Mine" });
    expect(read('{"licence": null, "address": "https://lake.example/"}').address)
      .toBe("https://lake.example/");
  });

  it("is refused in words where it can't be used", () => {
    expect(() => read("title: Mine")).toThrow("it is no JSON");
    expect(() => read("[]")).toThrow("it is no object");
    expect(() => read('{"license": "MIT"}')).toThrow('"license" is none of title');
    expect(() => read('{"authors": []}')).toThrow("no list of names");
    expect(() => read('{"title": 3}')).toThrow('"title" is no text');
    expect(() => read('{"address": "lake.example"}')).toThrow("must begin with https://");
  });
});
