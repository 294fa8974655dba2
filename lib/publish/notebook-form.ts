/**
 * A notebook as the publisher holds it: nbformat 4.5, with every text joined to one string.
 *
 * On disk nbformat splits texts into lists of lines; `parseNotebook` joins them and `formatNotebook` splits them again,
 * so nothing between the two has to care.
 *
 * Source: Jupyter's notebook format 4.5 (nbformat.readthedocs.io, schema `nbformat.v4.5.schema.json`).
 *
 * @module
 */

/** Any value that JSON can hold. */
export type Json = null | boolean | number | string | readonly Json[] | JsonObject;

/** A JSON object. */
export interface JsonObject {
  readonly [key: string]: Json;
}

/** Forms of one output by media type: texts whole, JSON media as their value. */
export type MimeBundle = JsonObject;

/** Printed text of `console.log` and its like. */
export interface StreamOutput {
  readonly output_type: "stream";
  readonly name: "stdout" | "stderr";
  readonly text: string;
}

/** What a cell showed on purpose. */
export interface DisplayOutput {
  readonly output_type: "display_data";
  readonly data: MimeBundle;
  readonly metadata: JsonObject;
}

/** The value that a cell ended with. */
export interface ResultOutput {
  readonly output_type: "execute_result";
  readonly data: MimeBundle;
  readonly execution_count: number | null;
  readonly metadata: JsonObject;
}

/** The error that ended a cell. */
export interface ErrorOutput {
  readonly output_type: "error";
  readonly ename: string;
  readonly evalue: string;
  readonly traceback: readonly string[];
}

/** One output of a code cell. */
export type Output = StreamOutput | DisplayOutput | ResultOutput | ErrorOutput;

/** What every cell carries. */
interface CellBase {
  readonly id: string;
  readonly metadata: JsonObject;
  readonly source: string;
}

/** A cell of TypeScript. */
export interface CodeCell extends CellBase {
  readonly cell_type: "code";
  readonly execution_count: number | null;
  readonly outputs: readonly Output[];
}

/** A cell of prose. */
export interface MarkdownCell extends CellBase {
  readonly cell_type: "markdown";
  readonly attachments?: JsonObject;
}

/** A cell that is neither run nor rendered. */
export interface RawCell extends CellBase {
  readonly cell_type: "raw";
  readonly attachments?: JsonObject;
}

/** Any cell. */
export type Cell = CodeCell | MarkdownCell | RawCell;

/** A whole notebook. */
export interface Notebook {
  readonly cells: readonly Cell[];
  readonly metadata: JsonObject;
  readonly nbformat: 4;
  readonly nbformat_minor: number;
}

/** Metadata of a notebook for the standard Deno kernel, so that anyone who has that kernel can open it. */
export const NOTEBOOK_METADATA: JsonObject = {
  kernelspec: { display_name: "Deno", language: "typescript", name: "deno" },
  language_info: {
    codemirror_mode: "typescript",
    file_extension: ".ts",
    mimetype: "text/x.typescript",
    name: "typescript",
    nbconvert_exporter: "script",
    pygments_lexer: "typescript",
  },
};

/**
 * Whether a media type holds JSON, which stands in the file as a value and not as text.
 *
 * @param mediaType such as `application/json`
 * @returns true for `application/json` and those that end in `+json`
 */
export function isJsonMedia(mediaType: string): boolean {
  return mediaType === "application/json" ||
    (mediaType.startsWith("application/") && mediaType.endsWith("+json"));
}
