/**
 * Writes a notebook to text exactly as Jupyter does, so that saving it there changes no byte.
 *
 * @module
 */
import {
  isJsonMedia,
  type Json,
  type JsonObject,
  type Notebook,
  type Output,
} from "./notebook-form.ts";

/** Ends of lines as Python's `splitlines` sees them, which is what Jupyter splits texts with. */
// deno-lint-ignore no-control-regex -- the separators of ASCII are line ends there
const LINE = /[^\n\r\v\f\x1c-\x1e\x85\u2028\u2029]*(?:\r\n|[\n\r\v\f\x1c-\x1e\x85\u2028\u2029]|$)/g;

/** Media that Jupyter splits into lines besides those that begin with `text/`. */
const SPLIT_MEDIA = ["application/javascript", "image/svg+xml"];

/**
 * The text of a notebook file: keys sorted, one space a level, other alphabets kept, a newline at the end.
 *
 * Source: nbformat's `v4/nbjson.py` and `v4/rwbase.py` (general-purpose reference library; behaviour, not code).
 *
 * @param notebook what to write
 * @returns the whole file
 * @throws RangeError when a number in it is not finite, since JSON has no such number
 * @example
 * ```ts
 * import { formatNotebook, parseNotebook } from "lakeproof/publish/notebook.ts";
 *
 * const text = formatNotebook({ cells: [], metadata: {}, nbformat: 4, nbformat_minor: 5 });
 * if (formatNotebook(parseNotebook(text)) !== text) throw new Error("not stable");
 * ```
 */
export function formatNotebook(notebook: Notebook): string {
  const cells = notebook.cells.map((cell) => ({
    ...cell,
    source: splitLines(cell.source),
    ...(cell.cell_type === "code" ? { outputs: cell.outputs.map(splitOutput) } : {}),
    ...(cell.cell_type !== "code" && cell.attachments !== undefined
      ? { attachments: splitAttachments(cell.attachments) }
      : {}),
  }));
  return `${writeJson({ ...notebook, cells } as unknown as Json, "")}\n`;
}

/** A text as its lines, each with its line end; no line for an empty text. */
function splitLines(text: string): string[] {
  return (text.match(LINE) ?? []).filter((line) => line !== "");
}

function splitOutput(output: Output): Json {
  if (output.output_type === "stream") return { ...output, text: splitLines(output.text) };
  if (output.output_type === "error") return { ...output };
  return { ...output, data: splitBundle(output.data) };
}

function splitBundle(bundle: JsonObject): JsonObject {
  return Object.fromEntries(
    Object.entries(bundle).map(([media, value]) => [
      media,
      typeof value === "string" && !isJsonMedia(media) &&
        (media.startsWith("text/") || SPLIT_MEDIA.includes(media))
        ? splitLines(value)
        : value,
    ]),
  );
}

function splitAttachments(attachments: JsonObject): JsonObject {
  return Object.fromEntries(
    Object.entries(attachments).map((
      [name, bundle],
    ) => [name, splitBundle(bundle as JsonObject)]),
  );
}

/** JSON with sorted keys; an own writer because objects of JavaScript put keys like "10" first whatever was asked. */
function writeJson(value: Json, indent: string): string {
  if (typeof value === "number" && !Number.isFinite(value)) {
    throw new RangeError(`Cannot write ${value} into a notebook: JSON has no such number`);
  }
  if (value === null || typeof value !== "object") return JSON.stringify(value);
  const inner = `${indent} `;
  if (Array.isArray(value)) {
    if (value.length === 0) return "[]";
    return `[\n${value.map((item) => `${inner}${writeJson(item, inner)}`).join(",\n")}\n${indent}]`;
  }
  const entries = Object.entries(value).filter(([, item]) => item !== undefined)
    .sort(([left], [right]) => byCodePoint(left, right));
  if (entries.length === 0) return "{}";
  return `{\n${
    entries.map(([key, item]) => `${inner}${JSON.stringify(key)}: ${writeJson(item, inner)}`)
      .join(",\n")
  }\n${indent}}`;
}

/** Order of Python's sorted strings: by code point, where JavaScript compares halves of surrogate pairs. */
function byCodePoint(left: string, right: string): number {
  const a = Array.from(left, (one) => one.codePointAt(0) ?? 0);
  const b = Array.from(right, (one) => one.codePointAt(0) ?? 0);
  for (let i = 0; i < Math.min(a.length, b.length); i++) {
    if (a[i] !== b[i]) return a[i]! - b[i]!;
  }
  return a.length - b.length;
}
