/**
 * From the lines of the JavaScript that the kernel makes of a cell back to the cell's own lines.
 *
 * The kernel reports errors by the lines of what it runs: types and blank lines are gone from it and statements are
 * spread out. The same emitter with the same options gives the same lines, together with a map.
 *
 * @module
 */
import { SourceMap } from "node:module";
import { kernelForm } from "./kernel-form.ts";

/** Characters that the kernel puts before the first line of a cell. */
const PREFIX_COLUMNS = 21;

/** What the emitter makes of a cell: a way back to its lines, or why it can't be read. */
export type CellMap =
  | { readonly ok: true; readonly lineOf: (line: number, column: number) => number | null }
  | { readonly ok: false; readonly message: string; readonly line: number | null };

/**
 * The map of one cell.
 *
 * @param source the cell's TypeScript
 * @param form what is handed to the emitter, line for line; the source itself to hear of everything wrong with it
 * @returns for a cell that can be read, the cell's line (from 1) for a line and column of the kernel (from 1)
 */
export async function mapCell(source: string, form = kernelForm(source)): Promise<CellMap> {
  const folder = await Deno.makeTempDir({ prefix: "lakeproof-cell-" });
  try {
    await Deno.writeTextFile(
      `${folder}/deno.json`,
      JSON.stringify({ compilerOptions: { verbatimModuleSyntax: true }, lock: false }),
    );
    await Deno.writeTextFile(`${folder}/cell.ts`, form);
    const output = await new Deno.Command(Deno.execPath(), {
      args: ["transpile", "--source-map", "inline", "cell.ts"],
      cwd: folder,
      env: { NO_COLOR: "1" },
      stdin: "null",
      stdout: "piped",
      stderr: "piped",
    }).output();
    const decoder = new TextDecoder();
    return output.success
      ? readMap(decoder.decode(output.stdout), source)
      : readRefusal(decoder.decode(output.stderr));
  } finally {
    await Deno.remove(folder, { recursive: true });
  }
}

function readMap(emitted: string, source: string): CellMap {
  const encoded = /\/\/# sourceMappingURL=data:application\/json;base64,(\S+)\s*$/.exec(emitted)
    ?.[1];
  if (encoded === undefined) return { ok: true, lineOf: () => null };
  const bytes = Uint8Array.from(atob(encoded), (one) => one.charCodeAt(0));
  const map = new SourceMap(JSON.parse(new TextDecoder().decode(bytes)));
  const emittedLines = emitted.split("\n").length - 1;
  const sourceLines = source.split("\n").length;
  return {
    ok: true,
    lineOf: (line, column) => {
      if (line < 1 || line > emittedLines) return null;
      const from = line === 1 ? Math.max(0, column - 1 - PREFIX_COLUMNS) : column - 1;
      const entry = map.findEntry(line - 1, from);
      if (!("originalLine" in entry)) return null;
      const own = entry.originalLine + 1;
      return own >= 1 && own <= sourceLines ? own : null;
    },
  };
}

function readRefusal(said: string): CellMap {
  const message = /error: (?:SyntaxError: )?(.*)/.exec(said)?.[1] ??
    "it can't be read as TypeScript";
  const line = /cell\.ts:(\d+):\d+/.exec(said)?.[1];
  return { ok: false, message, line: line === undefined ? null : Number(line) };
}
