/**
 * A published folder as it lies on disk, or a copy of it under any name.
 *
 * @module
 */
import { basename, dirname, join, resolve } from "node:path";
import { UsageError } from "../../base/errors.ts";
import type { SiteRecord } from "../site.ts";
import { SOURCE } from "../source-files.ts";
import { unzipFiles } from "../zip-files.ts";

/** What running the source in place leaves beside it: no part of what was published. */
const LEFT_BY_RUNNING = ["node_modules", ".site", "out"].map((name) => `${SOURCE}/${name}`);

/** A published folder's contents. */
export interface PublishedFolder {
  /** Bytes by path from the folder, with forward slashes. */
  readonly files: ReadonlyMap<string, Uint8Array>;
  /** Name of the one page to check, without its ending; `null` for all. */
  readonly slug: string | null;
}

/**
 * Reads a published folder.
 *
 * @param path of the folder, of one page in it, or of a ZIP that holds it
 * @returns its files by path, and where it lies
 * @throws UsageError when nothing that can be run again lies there
 */
export function readPublished(path: string): PublishedFolder & { readonly folder: string } {
  const place = resolve(path);
  let isPage = false;
  try {
    isPage = Deno.statSync(place).isFile;
  } catch {
    throw new UsageError(`Cannot check ${path}: there is no such folder or page.`);
  }
  if (isPage && place.endsWith(".zip")) return fromZip(path, place);
  const folder = isPage ? dirname(place) : place;
  const slug = isPage ? basename(place).replace(/\.html$/, "") : null;
  const files = new Map<string, Uint8Array>();
  const look = (inside: string, name: string) => {
    for (const entry of Deno.readDirSync(inside)) {
      const path = name + entry.name;
      if (LEFT_BY_RUNNING.includes(path)) continue;
      const at = join(inside, entry.name);
      if (Deno.statSync(at).isDirectory) look(at, `${path}/`);
      else files.set(path, Deno.readFileSync(at));
    }
  };
  look(folder, "");
  checkWhole(path, files);
  if (slug !== null && !files.has(`${slug}.html`)) {
    throw new UsageError(`Cannot check ${path}: give a page (a file that ends with .html).`);
  }
  return { files, slug, folder };
}

function checkWhole(path: string, files: ReadonlyMap<string, Uint8Array>): void {
  if (files.has(`${SOURCE}/deno.json`)) return;
  throw new UsageError(
    `Cannot check ${path}: it holds no ${SOURCE}/ folder to run again. ` +
      "Give a folder that a report made, or a whole copy of one.",
  );
}

function fromZip(path: string, place: string): PublishedFolder & { readonly folder: string } {
  let files: Map<string, Uint8Array>;
  try {
    files = unzipFiles(Deno.readFileSync(place));
  } catch {
    throw new UsageError(`Cannot check ${path}: it can't be unpacked.`);
  }
  checkWhole(path, files);
  return { files, slug: null, folder: dirname(place) };
}

/**
 * A file's text, or `null` when it is not there.
 *
 * @param files bytes by path
 * @param file path
 * @returns text read as UTF-8
 */
export function textIn(files: ReadonlyMap<string, Uint8Array>, file: string): string | null {
  const bytes = files.get(file);
  return bytes === undefined ? null : new TextDecoder().decode(bytes);
}

/**
 * What the folder says of its own making; `null` when that can't be read.
 *
 * @param files bytes by path
 * @returns the record of `site.json`
 */
export function siteRecordIn(files: ReadonlyMap<string, Uint8Array>): SiteRecord | null {
  try {
    const record = JSON.parse(textIn(files, "site.json") ?? "");
    const whole = Array.isArray(record.pages) && Array.isArray(record.files) &&
      Array.isArray(record.changedSinceCommit) && typeof record.versions === "object";
    return whole && record.versions !== null ? record : null;
  } catch {
    return null;
  }
}

/**
 * The version of Deno that the folder says ran it, where its record and every page's stamp agree; else `null`.
 *
 * @param files bytes by path
 * @returns a version such as 2.9.6
 */
export function statedDeno(files: ReadonlyMap<string, Uint8Array>): string | null {
  const record = siteRecordIn(files);
  const deno = record?.versions["Deno"];
  if (record === null || deno === undefined) return null;
  const agreed = record.pages.every(({ page }) => {
    const stamp = /<section class="stamp" id="stamp">[\s\S]*$/.exec(textIn(files, page) ?? "")?.[0];
    return stamp?.includes(`<dd>Deno\u00a0${deno}`) === true;
  });
  return agreed ? deno : null;
}
