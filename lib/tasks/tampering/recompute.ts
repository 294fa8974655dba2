/**
 * Makes every checksum of a tampered folder anew, as a careful forger would.
 *
 * @module
 */
import { sha256 } from "../../publish/checksum.ts";
import { parseNotebook } from "../../publish/notebook.ts";
import { UNNAMED } from "../../publish/publication.ts";
import { sideFiles } from "../../publish/side-files.ts";
import { CHECKSUMS, checksumsText, type SiteRecord } from "../../publish/site.ts";
import { SOURCE } from "../../publish/source-files.ts";
import { notebookSha256 } from "../../publish/stamp.ts";
import type { Change, Files } from "./change.ts";

const encoder = new TextEncoder();
const grouped = (sum: string) => sum.match(/.{1,8}/g)!.join(" ");

/**
 * A folder with a change in it, checksums left as they were.
 *
 * @param files bytes by path
 * @param change new bytes by path, `null` for a file that goes
 * @returns a new folder
 */
export function changed(files: Files, change: Change): Map<string, Uint8Array> {
  const now = new Map(files);
  for (const [file, bytes] of change.files) {
    if (bytes === null) now.delete(file);
    else now.set(file, bytes);
  }
  return now;
}

/** The checksum that stamps name for a source file: of a notebook's cells, of any other file's bytes. */
function stampSum(file: string, bytes: Uint8Array): string {
  if (!file.endsWith(".ipynb")) return sha256(bytes);
  try {
    return notebookSha256(parseNotebook(new TextDecoder().decode(bytes), file));
  } catch {
    // A notebook that can't be read any more has no checksum of its cells.
    return sha256(bytes);
  }
}

/**
 * A folder with a change in it and every checksum made anew: in the stamps of pages, in answers and outputs, in the site's
 * record, in the list; data are packed anew.
 *
 * @param files before the change
 * @param change what was done
 * @returns a new folder whose checksums hold again
 */
export function recomputed(files: Files, change: Change): Map<string, Uint8Array> {
  const now = changed(files, change);
  for (const [file, bytes] of change.files) {
    if (!file.startsWith(`${SOURCE}/`) || bytes === null) continue;
    const [before, after] = [stampSum(file, files.get(file)!), stampSum(file, bytes)];
    for (const [other, content] of now) {
      // Stamps of pages, answers, the outputs of notebooks, the site's record.
      if (!/\.(?:html|json|ipynb)$/.test(other) || other === file) continue;
      const text = new TextDecoder().decode(content);
      const anew = text.replaceAll(before, after).replaceAll(grouped(before), grouped(after));
      if (anew !== text) now.set(other, encoder.encode(anew));
    }
  }
  if ([...change.files.keys()].some((file) => file.startsWith(`${SOURCE}/data/`))) {
    const sources = [...now].filter(([file]) => file.startsWith(`${SOURCE}/`))
      .map(([file, bytes]) => ({ file, bytes }))
      .sort((a, b) => (a.file < b.file ? -1 : 1));
    for (const zip of sideFiles([], sources, UNNAMED)) {
      if (zip.file.endsWith(".zip")) now.set(zip.file, zip.bytes);
    }
  }
  const record: SiteRecord = JSON.parse(new TextDecoder().decode(now.get("site.json")));
  const named = [...now.keys()].filter((file) => file !== "site.json" && file !== CHECKSUMS).sort();
  const sums = named.map((file) => ({ file, sha256: sha256(now.get(file)!) }));
  const json = `${JSON.stringify({ ...record, files: sums }, null, 2)}\n`;
  now.set("site.json", encoder.encode(json));
  const all = [...sums, { file: "site.json", sha256: sha256(json) }];
  now.set(CHECKSUMS, encoder.encode(checksumsText(all)));
  return now;
}
