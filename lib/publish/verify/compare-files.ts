/**
 * Says how a published file differs from the one that a fresh run made, in the words of its kind.
 *
 * @module
 */
import { parse } from "csv-parse/sync";
import { sha256 } from "../checksum.ts";
import { unzipFiles } from "../zip-files.ts";
import { firstDifference } from "../first-difference.ts";
import { type Notebook, parseNotebook } from "../notebook.ts";
import { textDifferences } from "./compare-texts.ts";
import type { CheckFinding, CheckKind } from "./finding-of-check.ts";
import { pagePlace } from "./page-place.ts";

/** Differences told of one file; what follows them is mostly their echo. */
const MOST = 6;

const decode = (bytes: Uint8Array) => new TextDecoder().decode(bytes);

function pageFindings(file: string, published: string, fresh: string): CheckFinding[] {
  return textDifferences(published, fresh, MOST).map((one): CheckFinding => {
    const { kind, words } = pagePlace(published, Math.min(one.at, published.length - 1));
    return {
      kind,
      file,
      what: `${words}: it says "${one.published}", a fresh run gives "${one.fresh}"`,
    };
  });
}

function cells(text: string, sign: string): string[][] | null {
  try {
    return parse(text, { delimiter: sign, relax_column_count: true, bom: true });
  } catch {
    return null;
  }
}

function tableFindings(file: string, published: string, fresh: string): CheckFinding[] {
  const sign = /-decimal-comma\.csv$/.test(file) ? ";" : ",";
  const [left, right] = [cells(published, sign), cells(fresh, sign)];
  const tell = (what: string): CheckFinding => ({ kind: "table", file, what });
  if (left === null || right === null) return [tell("can't be read as a table")];
  const found: CheckFinding[] = [];
  for (let row = 0; row < Math.max(left.length, right.length); row++) {
    const width = Math.max(left[row]?.length ?? 0, right[row]?.length ?? 0);
    for (let column = 0; column < width; column++) {
      const [old, now] = [left[row]?.[column], right[row]?.[column]];
      if (old === now) continue;
      const head = right[0]?.[column] ?? `column ${column + 1}`;
      found.push(tell(
        `row ${row + 1}, ${head}: it says "${old ?? ""}", a fresh run gives "${now ?? ""}"`,
      ));
    }
  }
  return found.length === 0 ? [tell("has other bytes with the same cells")] : found.slice(0, MOST);
}

function notebookFindings(file: string, published: string, fresh: string): CheckFinding[] {
  const tell = (what: string): CheckFinding => ({ kind: "notebook", file, what });
  let held: Notebook;
  try {
    held = parseNotebook(published, file);
  } catch {
    return [tell("can't be read as a notebook")];
  }
  const difference = firstDifference(held, parseNotebook(fresh, file));
  if (difference === null) return [tell("has other bytes outside its cells")];
  const { cell, first, second } = difference;
  return [
    tell(`cell ${cell}: it holds "${shortened(first)}", a fresh run gives "${shortened(second)}"`),
  ];
}

function shortened(text: string): string {
  return text.length <= 160 ? text : `${text.slice(0, 160)}…`;
}

function zipFindings(file: string, published: Uint8Array, fresh: Uint8Array): CheckFinding[] {
  const tell = (what: string): CheckFinding => ({ kind: "file", file, what });
  const [left, right] = [unpacked(published), unpacked(fresh)];
  if (left === null || right === null) return [tell("can't be unpacked")];
  const names = [...new Set([...left.keys(), ...right.keys()])].sort();
  const sum = (bytes: Uint8Array | undefined) => bytes === undefined ? "" : sha256(bytes);
  const other = names.filter((name) => sum(left.get(name)) !== sum(right.get(name)));
  if (other.length === 0) return [tell("is packed in another way than a fresh run packs it")];
  return other.slice(0, MOST).map((name) => tell(`holds another ${name} than a fresh run packs`));
}

function unpacked(bytes: Uint8Array): ReadonlyMap<string, Uint8Array> | null {
  try {
    return unzipFiles(bytes);
  } catch {
    return null;
  }
}

function textFindings(
  kind: CheckKind,
  file: string,
  published: string,
  fresh: string,
): CheckFinding[] {
  return textDifferences(published, fresh, MOST).map((one) => ({
    kind,
    file,
    what: `line ${one.line}: it says "${one.published}", a fresh run gives "${one.fresh}"`,
  }));
}

/**
 * How a file differs; answers are compared elsewhere, result by result.
 *
 * @param file path from the published folder
 * @param published its bytes as published
 * @param fresh other bytes, of the fresh run
 * @returns at least one finding
 */
export function compareFiles(
  file: string,
  published: Uint8Array,
  fresh: Uint8Array,
): CheckFinding[] {
  const [left, right] = [decode(published), decode(fresh)];
  const found = /^[^/]+\.html$/.test(file)
    ? pageFindings(file, left, right)
    : /^tables\/.*\.csv$/.test(file)
    ? tableFindings(file, left, right)
    : /^figures\/.*\.svg$/.test(file)
    ? textFindings("figure", file, left, right)
    : /\.ipynb$/.test(file)
    ? notebookFindings(file, left, right)
    : /\.zip$/.test(file)
    ? zipFindings(file, published, fresh)
    : /\.png$/.test(file)
    ? [{ kind: "figure", file, what: "is not the picture that a fresh run draws" } as const]
    : textFindings(file === "site.json" ? "stamp" : "file", file, left, right);
  return found.length > 0 ? found : [{ kind: "file", file, what: "has other bytes" }];
}
