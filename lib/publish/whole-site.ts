/**
 * Every file of a site, from its pages to its list of checksums: what a report puts in place, and what a check of a
 * published folder builds anew to compare.
 *
 * @module
 */
import type { FileChecksum } from "../base/session.ts";
import type { Cache, KeptPage } from "./cache.ts";
import type { NotebookFile } from "./notebook-file.ts";
import { CHECKSUMS, checksumsText, type SiteRecord } from "./site.ts";
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
  /** The front page. */
  readonly index: FileChecksum;
  /** What is published to be run again. */
  readonly sources: SourceParts;
  readonly origin: SiteOrigin;
}

/**
 * All files of a site, their bytes kept in the cache.
 *
 * @param parts pages and what stands around them
 * @param cache gets the bytes
 * @returns files by path, the list of checksums last
 */
export function wholeSite(parts: SiteParts, cache: Cache): FileChecksum[] {
  const encoder = new TextEncoder();
  const keep = (file: string, bytes: Uint8Array) => ({ file, sha256: cache.keep(bytes) });
  const files = [
    ...parts.pages.flatMap((page) => page.files),
    parts.index,
    ...sourceFiles(parts.sources).map(({ file, bytes }) => keep(file, bytes)),
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
  return [...site, keep(CHECKSUMS, encoder.encode(checksumsText(site)))];
}
