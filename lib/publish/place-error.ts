/**
 * Tells at which line of a notebook cell an error happened, and what it says in plain words.
 *
 * @module
 */
import { type CellMap, mapCell } from "./cell-lines.ts";
import { importsOf } from "./import-scan.ts";
import { refusalWords } from "./kernel/broker.ts";

/** An error as the kernel told it. */
export interface KernelError {
  readonly name: string;
  readonly message: string;
  readonly traceback: readonly string[];
}

/** The same error with its place in the cell. */
export interface PlacedError extends KernelError {
  /** From 1; `null` where it can't be told. */
  readonly line: number | null;
  readonly sourceLine: string | null;
}

/** A frame in a cell: the name of the function if it has one, line and column of what the kernel ran. */
const FRAME = /^(\s*at (?:async )?)(?:(.*?) \()?<anonymous>:(\d+):(\d+)\)?$/;

/**
 * Places an error in the cell that was running.
 *
 * Functions of earlier cells have no file of their own in the kernel; their frames are told apart by name, and the line
 * given is the innermost one of the running cell.
 *
 * @param source the cell that was running
 * @param error what the kernel told
 * @param codeCell its number among the code cells, for the frames
 * @returns name and message in plain words, line in the cell where it can be told
 */
export async function placeError(
  source: string,
  error: KernelError,
  codeCell: number,
): Promise<PlacedError> {
  const silent = error.traceback.length === 0 && error.message === "Execution failed";
  const map = await (silent ? mapCell(source, source) : mapCell(source));
  const lines = source.split("\n");
  const at = (line: number | null) => ({
    line,
    sourceLine: line === null ? null : lines[line - 1] ?? null,
  });
  if (!map.ok) {
    return { name: "SyntaxError", message: map.message, traceback: [], ...at(map.line) };
  }
  if (silent) {
    return { ...refusedImport(source), traceback: [], ...at(lineOfForeignImport(source)) };
  }
  const message = plainWords(error.message);
  const frames = placeFrames(error.traceback, source, map);
  const inner = frames.find((frame) => frame.line !== null);
  return {
    name: error.name,
    message,
    traceback: frames.filter((frame) => !/\(?ext:/.test(frame.text)).map((frame) =>
      frame.text
        .replace(error.message, () => message)
        .replace("<cell>", `code cell ${codeCell}`)
    ),
    ...at(inner?.line ?? lineOfSyntaxError(error, lines)),
  };
}

/** A line of a traceback; `line` is the running cell's, `null` when the frame is not one of its frames. */
interface Frame {
  readonly text: string;
  readonly line: number | null;
}

function placeFrames(
  traceback: readonly string[],
  source: string,
  map: CellMap & { ok: true },
): Frame[] {
  const parsed = traceback.map((text) => {
    const [whole, lead, name, row, column] = FRAME.exec(text) ?? [];
    if (whole === undefined) return { text, lead, name, line: null, here: false };
    const line = map.lineOf(Number(row), Number(column));
    const called = name?.replace(/^(?:async |new )/, "").replace(/ \[as .*/, "").split(".").at(-1);
    const here = called === undefined || called === "<anonymous>" || declares(source, called);
    return { text, lead, name, line, here: here && line !== null };
  });
  // A callback that the runtime calls has a name that no cell gave it: with nothing better, the outermost frame counts.
  const fallback = parsed.some((frame) => frame.here)
    ? undefined
    : parsed.findLast((frame) => frame.line !== null);
  return parsed.map((frame) => {
    const { text, lead, name } = frame;
    if (lead === undefined) return { text, line: null };
    if (!frame.here && frame !== fallback) {
      return { text: `${lead}${name ?? ""} (an earlier cell)`, line: null };
    }
    const place = `<cell>, line ${frame.line}`;
    return { text: `${lead}${name ? `${name} (${place})` : place}`, line: frame.line };
  });
}

/** Whether a cell itself gives this name to a function, class, variable, property or method. */
function declares(source: string, name: string): boolean {
  const word = RegExp.escape(name);
  return new RegExp(
    `(?:function\\*?|const|let|var|class)\\s+${word}(?![\\w$])|(?<![\\w$.])${word}\\s*[=:](?!=)|` +
      `(?<![\\w$.])${word}\\s*\\([^)]*\\)\\s*(?::[^={]+)?\\{`,
  ).test(source);
}

/** Deno's own refusals tell of flags that nobody here can give; ours say what notebooks may do. */
function plainWords(message: string): string {
  const asked = /^Requires (\w+) access(?: to "([^"]*)")?, run again/.exec(message);
  return asked === null ? message : refusalWords(asked[1]!, asked[2] ?? "");
}

/** The engine refuses some cells whole, without a line: the second of two equal names, `import.meta`. */
function lineOfSyntaxError(error: KernelError, lines: readonly string[]): number | null {
  if (error.name !== "SyntaxError") return null;
  const name = /Identifier '([^']+)' has already been declared/.exec(error.message)?.[1];
  const wanted = name === undefined ? /import\.meta/ : new RegExp(
    `(?:let|const|class|function|var|import)\\b.*(?<![\\w$])${RegExp.escape(name)}(?![\\w$])`,
  );
  const found = lines.flatMap((line, index) => wanted.test(line) ? [index + 1] : []);
  return (name === undefined ? found[0] : found.at(-1)) ?? null;
}

function foreignImport(source: string): string | undefined {
  return importsOf(source).map((one) => one.specifier).find((one) =>
    /^(?:npm|jsr|https?):/.test(one)
  );
}

function lineOfForeignImport(source: string): number | null {
  const specifier = foreignImport(source);
  if (specifier === undefined) return null;
  return source.slice(0, source.indexOf(specifier)).split("\n").length;
}

function refusedImport(source: string): { name: string; message: string } {
  const specifier = foreignImport(source);
  return {
    name: "Error",
    message: specifier === undefined
      ? "the kernel refused this cell without saying why; most often an import can't be resolved"
      : `This notebook tried to import ${specifier}; notebooks may only import what the project has installed`,
  };
}
