import { afterEach, describe, expect, it } from "vitest";
import {
  checkOut,
  recoverSite,
  removeOldSites,
  siteFolder,
  swapSite,
} from "lakeproof/publish/swap-site.ts";

let root: string;
afterEach(() => Deno.removeSync(root, { recursive: true }));

function start(): void {
  root = Deno.makeTempDirSync({ prefix: "lakeproof-swap-" });
  recoverSite(root);
}

function site(id: string): string {
  Deno.mkdirSync(siteFolder(root, id));
  Deno.writeTextFileSync(`${siteFolder(root, id)}/site.json`, '{"madeBy":"lakeproof"}');
  Deno.writeTextFileSync(`${siteFolder(root, id)}/index.html`, id);
  return id;
}

const shown = () => Deno.readTextFileSync(`${root}/out/index.html`);
const isLink = () => Deno.lstatSync(`${root}/out`).isSymlink;
const names = (path: string) =>
  [...Deno.readDirSync(`${root}/${path}`)].map((one) => one.name).sort();

describe("a finished site", () => {
  it("replaces the last one by one rename of a link, and the last one goes", () => {
    start();
    swapSite(root, site("first"));
    expect([shown(), isLink()]).toEqual(["first", true]);
    swapSite(root, site("second"));
    expect([shown(), isLink()]).toEqual(["second", true]);
    removeOldSites(root, "second");
    expect(names(".site/sites")).toEqual(["second"]);
    expect(names(".")).toEqual([".site", "out"]);
    expect(shown()).toBe("second");
  });

  it("replaces a folder of ours, as where links can't be made, by two renames", () => {
    start();
    swapSite(root, site("first"), { links: false });
    expect([shown(), isLink()]).toEqual(["first", false]);
    swapSite(root, site("second"), { links: false });
    removeOldSites(root, "second");
    expect([shown(), isLink()]).toEqual(["second", false]);
    expect(names(".site")).toEqual(["sites"]);
    // And back to a link.
    swapSite(root, site("third"));
    expect([shown(), isLink()]).toEqual(["third", true]);
    expect(names(".site")).toEqual(["sites"]);
  });

  it("never replaces a folder or a file that is not ours", () => {
    start();
    Deno.mkdirSync(`${root}/out`);
    checkOut(root);
    Deno.writeTextFileSync(`${root}/out/thesis.doc`, "mine");
    expect(() => checkOut(root)).toThrow("did not make");
    Deno.removeSync(`${root}/out`, { recursive: true });
    Deno.writeTextFileSync(`${root}/out`, "mine");
    expect(() => checkOut(root)).toThrow("did not make");
  });

  it("is put in place at the next start when a stop fell between the two renames", () => {
    for (const links of [true, false]) {
      start();
      swapSite(root, site("first"), { links: false });
      site("second");
      // The state between the renames: the note is written, the old site is aside, nothing stands at out.
      Deno.writeTextFileSync(`${root}/.site/swap.json`, JSON.stringify({ id: "second", links }));
      Deno.renameSync(`${root}/out`, `${root}/.site/site-before`);
      expect(recoverSite(root)).toBe(true);
      expect([shown(), isLink()]).toEqual(["second", links]);
      expect(names(".site")).toEqual(["sites"]);
      if (links) Deno.removeSync(root, { recursive: true });
    }
  });

  it("is dropped, with the last site kept, when the stop came before the first rename", () => {
    start();
    swapSite(root, site("first"), { links: false });
    site("second");
    Deno.writeTextFileSync(
      `${root}/.site/swap.json`,
      JSON.stringify({ id: "second", links: false }),
    );
    expect(recoverSite(root)).toBe(false);
    expect(shown()).toBe("first");
    expect(names(".site")).toEqual(["sites"]);
  });

  it("stays when the stop came after the second rename", () => {
    start();
    swapSite(root, site("first"), { links: false });
    swapSite(root, site("second"), { links: false });
    Deno.writeTextFileSync(
      `${root}/.site/swap.json`,
      JSON.stringify({ id: "second", links: false }),
    );
    Deno.mkdirSync(`${root}/.site/site-before`);
    expect(recoverSite(root)).toBe(false);
    expect(shown()).toBe("second");
    expect(names(".site")).toEqual(["sites"]);
  });

  it("leaves no half-made link or half-written notebook behind", () => {
    start();
    swapSite(root, site("first"));
    Deno.symlinkSync("nowhere", `${root}/out.123.tmp`);
    Deno.mkdirSync(`${root}/notebooks`);
    Deno.writeTextFileSync(`${root}/notebooks/a.ipynb`, "{}");
    Deno.writeTextFileSync(`${root}/notebooks/a.ipynb.123.tmp`, "{");
    recoverSite(root);
    expect(names(".")).toEqual([".site", "notebooks", "out"]);
    expect(names("notebooks")).toEqual(["a.ipynb"]);
  });
});
