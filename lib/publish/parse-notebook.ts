/**
 * Reads the text of a notebook file, checks its form, and joins its lists of lines.
 *
 * @module
 */
import { DataError } from "../base/errors.ts";
import { type Finding, finding } from "../base/finding.ts";
import {
  type Cell,
  isJsonMedia,
  type Json,
  type JsonObject,
  type Notebook,
  type Output,
} from "./notebook-form.ts";

/**
 * A notebook from the text of its file.
 *
 * @param text the whole file
 * @param file its name, for messages
 * @returns the notebook, texts joined
 * @throws DataError naming the file and every cell that is not as nbformat 4.5 wants it
 * @example
 * ```ts
 * import { parseNotebook } from "lakeproof/publish/notebook.ts";
 *
 * const cell = { cell_type: "markdown", id: "title", metadata: {}, source: ["# Glides\n", "Two."] };
 * const text = JSON.stringify({ cells: [cell], metadata: {}, nbformat: 4, nbformat_minor: 5 });
 * if (parseNotebook(text).cells[0]?.source !== "# Glides\nTwo.") throw new Error("not joined");
 * ```
 */
export function parseNotebook(text: string, file = "notebook"): Notebook {
  const findings: Finding[] = [];
  const report = (what: string, wanted: string | null = null) => {
    findings.push(finding({ severity: "error", code: "notebook-form", file, what, wanted }));
  };
  const top = parseTop(text, file);
  if (top["nbformat"] !== 4 || typeof top["nbformat_minor"] !== "number") {
    report(
      `it says notebook format ${JSON.stringify(top["nbformat"] ?? null)}`,
      "format 4.5: open it in Jupyter and save it again",
    );
  } else if (top["nbformat_minor"] < 5) {
    report(
      `it says notebook format 4.${top["nbformat_minor"]}, whose cells have no ids`,
      "format 4.5: open it in Jupyter and save it again",
    );
  }
  if (!isObject(top["metadata"])) report("its metadata is no object");
  const cells: Cell[] = [];
  if (Array.isArray(top["cells"])) {
    const ids = new Set<string>();
    top["cells"].forEach((raw: Json, index: number) => {
      const cell = readCell(raw, (what) => report(`cell ${index + 1}: ${what}`));
      if (cell === null) return;
      if (ids.has(cell.id)) report(`cell ${index + 1}: the id ${cell.id} was used before`);
      ids.add(cell.id);
      cells.push(cell);
    });
  } else {
    report("it has no list of cells");
  }
  if (findings.length > 0) {
    const first = findings[0]!;
    const more = findings.length === 1 ? "" : ` (and ${findings.length - 1} more)`;
    throw new DataError(
      `Cannot read ${file} as a notebook: ${first.what}${
        first.wanted === null ? "" : `; wanted: ${first.wanted}`
      }${more}`,
      findings,
    );
  }
  return { ...top, cells } as unknown as Notebook;
}

function parseTop(text: string, file: string): JsonObject {
  let top: Json;
  try {
    top = JSON.parse(text.replace(/^\uFEFF/, ""));
  } catch (error) {
    const what = `it is not JSON (${(error as Error).message})`;
    throw new DataError(`Cannot read ${file} as a notebook: ${what}`, [
      finding({ severity: "error", code: "notebook-form", file, what }),
    ]);
  }
  if (isObject(top)) return top;
  const what = "it holds no JSON object";
  throw new DataError(`Cannot read ${file} as a notebook: ${what}`, [
    finding({ severity: "error", code: "notebook-form", file, what }),
  ]);
}

/** One cell with its texts joined; tells what is wrong and returns `null` otherwise. */
function readCell(raw: Json, report: (what: string) => void): Cell | null {
  if (!isObject(raw)) {
    report("it is no object");
    return null;
  }
  const wrong: string[] = [];
  const source = joinText(raw["source"]);
  const kind = raw["cell_type"];
  if (kind !== "code" && kind !== "markdown" && kind !== "raw") {
    wrong.push(`its cell_type is ${JSON.stringify(kind ?? null)}, not code, markdown or raw`);
  }
  if (typeof raw["id"] !== "string" || !/^[a-zA-Z0-9_-]{1,64}$/.test(raw["id"])) {
    wrong.push("it has no id of 1 to 64 letters, digits, - or _");
  }
  if (!isObject(raw["metadata"])) wrong.push("its metadata is no object");
  if (source === null) wrong.push("its source is neither a text nor a list of lines");
  let outputs: (Output | null)[] = [];
  if (kind === "code") {
    if (Array.isArray(raw["outputs"])) outputs = raw["outputs"].map(readOutput);
    else wrong.push("it has no list of outputs");
    if (outputs.includes(null)) {
      wrong.push(`its output ${outputs.indexOf(null) + 1} is not of a known form`);
    }
    const count = raw["execution_count"];
    if (count !== null && !Number.isInteger(count)) {
      wrong.push("its execution_count is neither a whole number nor null");
    }
  }
  wrong.forEach(report);
  if (wrong.length > 0) return null;
  const joined: JsonObject = { ...raw, source };
  return (kind === "code" ? { ...joined, outputs } : joined) as unknown as Cell;
}

function readOutput(raw: Json): Output | null {
  if (!isObject(raw)) return null;
  switch (raw["output_type"]) {
    case "stream": {
      const text = joinText(raw["text"]);
      const named = raw["name"] === "stdout" || raw["name"] === "stderr";
      return text === null || !named ? null : { ...raw, text } as unknown as Output;
    }
    case "display_data":
    case "execute_result":
      if (!isObject(raw["data"]) || !isObject(raw["metadata"])) return null;
      return { ...raw, data: joinBundle(raw["data"]) } as unknown as Output;
    case "error": {
      const told = typeof raw["ename"] === "string" && typeof raw["evalue"] === "string" &&
        Array.isArray(raw["traceback"]);
      return told ? raw as unknown as Output : null;
    }
    default:
      return null;
  }
}

function joinBundle(bundle: JsonObject): JsonObject {
  return Object.fromEntries(
    Object.entries(bundle).map(([media, value]) => [
      media,
      isJsonMedia(media) ? value : joinText(value) ?? value,
    ]),
  );
}

function joinText(value: Json | undefined): string | null {
  if (typeof value === "string") return value;
  if (!Array.isArray(value) || value.some((line: Json) => typeof line !== "string")) return null;
  return value.join("");
}

function isObject(value: Json | undefined): value is JsonObject {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}
