/**
 * Every file of a site, from its pages to its list of checksums: what a report puts in place, and what a check of a
 * published folder builds anew to compare.
 *
 * @module
 */
import type { FileChecksum } from "../base/session.ts";
import type { Cache, KeptPage } from "./cache.ts";
import type { NotebookFile } from "./notebook-file.ts";
import { sha256 } from "./checksum.ts";
import { CHECKSUMS, checksumsText, SITE_ZIP, type SiteRecord } from "./site.ts";
import type { Publication } from "./publication.ts";
import { sideFiles } from "./side-files.ts";
import { zipFiles } from "./zip-files.ts";
import { sourceFiles, type SourceParts } from "./source-files.ts";

/** What a site says of the place and time of its making, which no run can find out again. */
export type SiteOrigin = Pick<
  SiteRecord,
  "commit" | "changedSinceCommit" | "platform" | "versions"
>;

/** What a site is put together from. */
export interface SiteParts {
  /** In reading order, as many as pages. */
  readonly notebooks: readonly NotebookFile[];
  readonly pages: readonly KeptPage[];
  /** The front page, and what changed since last time. */
  readonly more: readonly FileChecksum[];
  /** What is published to be run again. */
  readonly sources: SourceParts;
  readonly origin: SiteOrigin;
  /** What the site says of itself. */
  readonly publication: Publication;
}

/**
 * All files of a site, their bytes kept in the cache.
 *
 * @param parts pages and what stands around them
 * @param cache gets the bytes
 * @returns files by path, then the record of the site, the list of checksums, and all of them packed
 */
export function wholeSite(parts: SiteParts, cache: Cache): FileChecksum[] {
  const encoder = new TextEncoder();
  const keep = (file: string, bytes: Uint8Array) => ({ file, sha256: cache.keep(bytes) });
  const sources = sourceFiles(parts.sources);
  const slugs = parts.notebooks.map((notebook) => notebook.slug);
  const files = [
    ...parts.pages.flatMap((page) => page.files),
    ...parts.more,
    ...sources.map(({ file, bytes }) => keep(file, bytes)),
    ...sideFiles(slugs, sources, parts.publication).map(({ file, bytes }) => keep(file, bytes)),
  ].sort((a, b) => (a.file < b.file ? -1 : 1));
  const record: SiteRecord = {
    madeBy: "lakeproof",
    ...parts.origin,
    pages: parts.pages.map((page, index) => ({
      page: `${parts.notebooks[index]!.slug}.html`,
      notebook: parts.notebooks[index]!.file,
      notebookSha256: page.notebookSha256,
    })),
    files,
  };
  const site = [
    ...files,
    keep("site.json", encoder.encode(`${JSON.stringify(record, null, 2)}\n`)),
  ];
  const all = [...site, keep(CHECKSUMS, encoder.encode(checksumsText(site)))];
  return [...all, packed(all, cache)];
}

/** Name of the cache's record about the packed site. */
export const ZIP_RECORD = "site-zip";

/** The whole site in one file, made anew only when something in it changed. */
function packed(all: readonly FileChecksum[], cache: Cache): FileChecksum {
  const of = sha256(checksumsText(all));
  const kept = cache.read<{ of: string; sha256: string }>(ZIP_RECORD);
  if (kept !== null && kept.of === of && cache.has(kept.sha256)) {
    return { file: SITE_ZIP, sha256: kept.sha256 };
  }
  const files = all.map(({ file, sha256 }) => ({ file, bytes: cache.kept(sha256)! }));
  const checksum = cache.keep(zipFiles(files));
  cache.write(ZIP_RECORD, { of, sha256: checksum });
  return { file: SITE_ZIP, sha256: checksum };
}
