import { build, stop } from "esbuild";
import { afterAll, describe, expect, it } from "vitest";
import { importsOf } from "lakeproof/publish/import-scan.ts";

/** Which rooms each room but the command line may import at run time; the table of DEVELOPERS.md. */
const BELOW_TASKS: Record<string, readonly string[]> = {
  base: [],
  numeric: ["base"],
  model: ["base", "numeric"],
  infer: ["base", "numeric"],
  fit: ["base", "numeric", "model", "infer"],
  check: ["base", "numeric", "model"],
  decide: ["base", "numeric", "model", "infer", "fit", "check"],
  read: ["base"],
  show: ["base", "numeric", "model", "infer", "fit", "check", "decide"],
  live: ["base", "numeric", "model", "infer", "fit", "check", "decide", "show"],
  publish: ["base", "show", "read"],
  mod: ["base", "numeric", "model", "infer", "fit", "check", "decide", "read", "show"],
};

/** The command line may import all. */
const MAY: Record<string, readonly string[]> = { ...BELOW_TASKS, tasks: Object.keys(BELOW_TASKS) };

/** Rooms that run anywhere, the reader's browser included. */
const PURE = ["base", "numeric", "model", "infer", "fit", "check", "decide"];

const root = new URL("../lib/", import.meta.url);

function* sources(folder: URL): Generator<URL> {
  for (const entry of Deno.readDirSync(folder)) {
    const path = new URL(entry.name + (entry.isDirectory ? "/" : ""), folder);
    if (entry.isDirectory) yield* sources(path);
    else if (entry.name.endsWith(".ts")) yield path;
  }
}

const files = [...sources(root)].map((url) => ({
  path: url.href.slice(root.href.length),
  room: url.href.slice(root.href.length).replace(/\.ts$/, "").split("/")[0]!,
  url,
  imports: importsOf(Deno.readTextFileSync(url)),
}));

function roomOf(specifier: string, from: URL): string | null {
  if (specifier === "lakeproof") return "mod";
  if (specifier.startsWith("lakeproof/")) return specifier.split("/")[1]!;
  if (!specifier.startsWith(".")) return null;
  return new URL(specifier, from).href.slice(root.href.length).replace(/\.ts$/, "").split("/")[0]!;
}

afterAll(() => stop());

describe("the rooms of the library", () => {
  it("import only from the rooms below them", () => {
    const wrong = files.flatMap((file) =>
      file.imports
        .filter((one) => !one.typeOnly)
        .map((one) => ({ to: roomOf(one.specifier, file.url), specifier: one.specifier }))
        .filter((one) =>
          one.to !== null && one.to !== file.room && !MAY[file.room]!.includes(one.to)
        )
        .map((one) => `${file.path} imports ${one.specifier}`)
    );
    expect(wrong).toEqual([]);
  });

  it("touch no file, clock, environment or Deno API from base to decide", () => {
    const wrong = files.filter((file) => PURE.includes(file.room)).flatMap((file) => {
      const code = Deno.readTextFileSync(file.url).replace(/\/\*[\s\S]*?\*\//g, "").replace(
        /\/\/.*$/gm,
        "",
      );
      const touched =
        /\bDeno\.|\bprocess\.|\bDate\.now\b|\bnew Date\(\)|\bMath\.random\b|\bfetch\(|["']node:/
          .exec(code);
      return touched === null ? [] : [`${file.path}: ${touched[0]}`];
    });
    expect(wrong).toEqual([]);
  });

  it("bundle for a browser from base to decide, without Node, Deno or native code", async () => {
    const entry = files
      .filter((file) => PURE.includes(file.room))
      .map((file) =>
        `export * as ${file.path.replace(/\W/g, "_")} from ${JSON.stringify(`./${file.path}`)};`
      )
      .join("\n");
    const result = await build({
      stdin: { contents: entry, resolveDir: decodeURIComponent(root.pathname), loader: "ts" },
      bundle: true,
      write: false,
      format: "esm",
      platform: "browser",
      metafile: true,
      logLevel: "silent",
    });
    expect(result.errors).toEqual([]);
    const inputs = Object.keys(result.metafile!.inputs);
    expect(inputs.filter((input) => /nodejs-polars|resvg|linkedom/.test(input))).toEqual([]);
    expect(result.outputFiles[0]!.text).not.toMatch(/require\("(fs|os|path)"\)/);
  });

  it("reach a reader's page with nothing but files of the library, and none that needs Deno", async () => {
    const result = await build({
      entryPoints: [decodeURIComponent(new URL("live/live-page.ts", root).pathname)],
      absWorkingDir: decodeURIComponent(new URL("..", root).pathname),
      bundle: true,
      write: false,
      minify: true,
      format: "iife",
      platform: "browser",
      metafile: true,
      logLevel: "silent",
    });
    const inputs = Object.keys(result.metafile!.inputs);
    // No plotting library, no DOM of our own, no package at all.
    expect(inputs.filter((input) => !input.startsWith("lib/"))).toEqual([]);
    expect(inputs).toContain("lib/model/steady-craft.ts");
    const script = result.outputFiles[0]!.text;
    expect(script).not.toMatch(
      /\bDeno\b|require\(|import\(|fetch\(|XMLHttpRequest|WebSocket|localStorage|eval\(/,
    );
  });
});
