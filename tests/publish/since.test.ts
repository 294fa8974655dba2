import { HtmlValidate } from "html-validate";
import { afterEach, describe, expect, it } from "vitest";
import { buildChanges } from "lakeproof/publish/page/build-changes.ts";
import { UNNAMED } from "lakeproof/publish/publication.ts";
import { changesBetween } from "lakeproof/publish/since/changes.ts";
import { changesText } from "lakeproof/publish/since/changes-text.ts";
import { readSince, sincePath, writeSince } from "lakeproof/publish/since/since-file.ts";
import {
  blobName,
  type SiteState,
  stateOf,
  stateSince,
} from "lakeproof/publish/since/site-state.ts";
import { formatNotebook } from "lakeproof/publish/notebook.ts";
import { code, notebookOf, shown } from "../support/example-notebook.ts";

const quantity = (value: number, u = 0.1) => ({
  value,
  standardUncertainty: u,
  degreesOfFreedom: 9,
  low: value - 0.2,
  high: value + 0.2,
  level: 0.95,
  kind: "interval",
  unit: "m",
});

interface World {
  readonly distance?: number;
  readonly verdict?: string;
  readonly cell?: string;
  readonly files?: Record<string, string>;
  readonly plot?: string;
  readonly deno?: string | null;
}

const text = (world: World) =>
  formatNotebook(notebookOf(
    code(world.cell ?? "1;", "a"),
    shown("glide", {
      designs: [{ design: "alder", distance: quantity(20) }, {
        design: "birch",
        distance: quantity(world.distance ?? 25),
      }],
      comparisons: [{ candidate: "birch", verdict: world.verdict ?? "cannot-tell-yet" }],
    }, "b"),
  ));

const state = (world: World = {}): SiteState =>
  stateOf({
    from: "then",
    commit: false,
    notebooks: new Map([["01-a.ipynb", text(world)]]),
    files: new Map(Object.entries({ "data/x/glides.csv": "1", "lib/mod.ts": "1", ...world.files })),
    settings: JSON.stringify({
      imports: { plot: `npm:@x/plot@${world.plot ?? "1.0.0"}`, own: "./lib/" },
    }),
    deno: world.deno === undefined ? "2.9.6" : world.deno,
  });

describe("git's name of a file", () => {
  it("is what git hash-object gives", () => {
    // From memory, and well known: the empty file; "hello\n" by `git hash-object --stdin`.
    expect(blobName(new Uint8Array())).toBe("e69de29bb2d1d6434b8b29ae775ad8c2e48c5391");
    expect(blobName(new TextEncoder().encode("hello\n")))
      .toBe("ce013625030ba8dba906f756967f9e9ca394464a");
  });
});

describe("what changed between two states", () => {
  it("is nothing between equal ones", () => {
    const changes = changesBetween(state(), state());
    expect(changes).toMatchObject({ numbers: [], verdicts: [], unmoved: 2 });
    expect(Object.values(changes.causes).flat()).toEqual([]);
    expect(changesText(changes)).toContain("are what they were");
  });

  it("is each number with its uncertainty, by how many of its own it moved, furthest first", () => {
    const { numbers, unmoved } = changesBetween(state(), state({ distance: 25.25 }));
    expect(unmoved).toBe(1);
    // (25.25 - 25) / 0.1
    expect(numbers).toEqual([{
      notebook: "01-a.ipynb",
      path: "glide/designs[birch]/distance",
      before: "25.00 ± 0.10 m",
      now: "25.25 ± 0.10 m",
      apart: 2.5,
    }]);
  });

  it("is not the last digits of another engine", () => {
    expect(changesBetween(state(), state({ distance: 25 + 1e-11 })).numbers).toEqual([]);
  });

  it("counts what came and went apart from what moved", () => {
    const before = state();
    const empty = { ...before, results: {}, verdicts: {} };
    const text = changesText(changesBetween(empty, state()));
    expect(text).toContain("0 published results moved");
    expect(text).toMatch(/beside \d+ new/);
    expect(text).toContain("no verdict turned");
    expect(changesText(changesBetween(state(), empty))).toMatch(/beside \d+ gone/);
  });

  it("is each verdict that turned", () => {
    const { verdicts } = changesBetween(state(), state({ verdict: "candidate-better" }));
    expect(verdicts).toEqual([{
      notebook: "01-a.ipynb",
      path: "glide/comparisons[birch]/verdict",
      before: "cannot-tell-yet",
      now: "candidate-better",
    }]);
  });

  it("names the entries that differ: data, code cells, library, packages, Deno", () => {
    const now = state({
      cell: "2;",
      files: { "data/x/glides.csv": "2", "lib/mod.ts": "2", "lib/new.ts": "1", "deno.lock": "1" },
      plot: "1.1.0",
      deno: "2.10.0",
    });
    expect(changesBetween(state(), now).causes).toEqual({
      data: ["data/x/glides.csv changed"],
      library: ["lib/mod.ts changed", "lib/new.ts is new"],
      code: ["01-a.ipynb changed"],
      runtime: ["Deno 2.9.6 to 2.10.0", "plot 1.0.0 to 1.1.0", "deno.lock is new"],
    });
    expect(changesBetween(state({ deno: null }), state()).causes.runtime).toEqual([]);
  });

  it("is told on a page that escapes what it is told", async () => {
    const before = { ...state(), from: "<b>then</b>" };
    const html = await buildChanges(changesBetween(before, state({ distance: 26 })), UNNAMED);
    expect(html).toContain("&lt;b&gt;then&lt;/b&gt;");
    expect(html).toContain("26.00 ± 0.10 m");
    expect(html).toContain("+10.0");
    expect(html).not.toContain("<b>then");
    const validator = new HtmlValidate({
      extends: ["html-validate:recommended", "html-validate:a11y"],
      rules: { "long-title": "off" },
    });
    for (const page of [html, await buildChanges(changesBetween(state(), state()), UNNAMED)]) {
      const { results } = await validator.validateString(page);
      expect(results.flatMap((one) => one.messages.map((said) => said.message))).toEqual([]);
    }
  });
});

describe("an earlier state", () => {
  const root = Deno.makeTempDirSync();
  Deno.mkdirSync(`${root}/notebooks`);
  afterEach(() => {
    try {
      Deno.removeSync(sincePath(root));
    } catch {
      // Not written by this test.
    }
  });

  it("is kept whole, and refused in words when somebody else wrote the file", () => {
    expect(readSince(root)).toBeNull();
    writeSince(root, state());
    expect(readSince(root)).toEqual(state());
    Deno.writeTextFileSync(sincePath(root), "{}");
    expect(() => readSince(root)).toThrow("was not written by this program");
  });

  it("may be a commit, told apart from what is none", async () => {
    const git = async (...args: string[]) => {
      const options = ["-c", "user.name=a", "-c", "user.email=a@lake.example"];
      const output = await new Deno.Command("git", { args: ["-C", root, ...options, ...args] })
        .output();
      expect(output.success).toBe(true);
    };
    Deno.mkdirSync(`${root}/lib`);
    Deno.writeTextFileSync(`${root}/lib/mod.ts`, "hello\n");
    Deno.writeTextFileSync(`${root}/deno.json`, "{}");
    Deno.writeTextFileSync(`${root}/notebooks/01-a.ipynb`, text({ distance: 22 }));
    await git("init", "-q");
    await git("add", ".");
    await git("commit", "-q", "-m", "first");
    Deno.writeTextFileSync(`${root}/notebooks/01-a.ipynb`, text({ distance: 30 }));
    const then = await stateSince(root, "HEAD");
    expect(then.from).toMatch(/^HEAD \([0-9a-f]{12}\)$/);
    expect(then.results["01-a.ipynb"]!["glide/designs[birch]/distance"]!.value).toBe(22);
    expect(then.files["lib/mod.ts"]).toBe("ce013625030ba8dba906f756967f9e9ca394464a");
    await expect(stateSince(root, "no-such-commit")).rejects.toThrow("neither a published folder");
    await expect(stateSince(root, "--help")).rejects.toThrow("neither a published folder");
    Deno.removeSync(root, { recursive: true });
  });
});
