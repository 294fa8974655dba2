/**
 * Makes every checksum of a tampered folder anew, as a careful forger would.
 *
 * @module
 */
import { sha256 } from "../../publish/checksum.ts";
import { parseNotebook } from "../../publish/notebook.ts";
import { CHECKSUMS, checksumsText, type SiteRecord } from "../../publish/site.ts";
import { SOURCE } from "../../publish/source-files.ts";
import { notebookSha256 } from "../../publish/stamp.ts";
import type { Change, Files } from "./change.ts";

const encoder = new TextEncoder();
const grouped = (sum: string) => sum.match(/.{1,8}/g)!.join(" ");

/** A folder with a change in it, checksums left as they were. */
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
  return notebookSha256(parseNotebook(new TextDecoder().decode(bytes), file));
}

/**
 * A folder with a change in it and every checksum made anew: in the stamps of pages, in the site's record, in the list.
 *
 * @param files before the change
 * @param change what was done
 */
export function recomputed(files: Files, change: Change): Map<string, Uint8Array> {
  const now = changed(files, change);
  for (const [file, bytes] of change.files) {
    if (!file.startsWith(`${SOURCE}/`) || bytes === null) continue;
    const [before, after] = [stampSum(file, files.get(file)!), stampSum(file, bytes)];
    for (const page of now.keys()) {
      if (!/^[^/]+\.html$/.test(page)) continue;
      const html = new TextDecoder().decode(now.get(page));
      now.set(page, encoder.encode(html.replaceAll(grouped(before), grouped(after))));
    }
    if (change.files.has("site.json")) continue;
    const text = new TextDecoder().decode(now.get("site.json"));
    now.set("site.json", encoder.encode(text.replaceAll(before, after)));
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
