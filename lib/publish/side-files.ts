/**
 * What stands beside the pages of a site: the data packed for download, how to cite it, the list of its pages.
 *
 * @module
 */
import { citationText } from "./citation.ts";
import { sha256 } from "./checksum.ts";
import type { Publication } from "./publication.ts";
import { CHECKSUMS, checksumsText } from "./site.ts";
import { type SiteFile, SOURCE } from "./source-files.ts";
import { zipFiles } from "./zip-files.ts";

/**
 * Where a session's data can be downloaded, from the site's folder.
 *
 * @param session name of its folder
 * @returns a path with forward slashes
 */
export function dataZip(session: string): string {
  return `data/${session}.zip`;
}

/**
 * Names of the session folders that some files under `data/` lie in, in order.
 *
 * @param files paths from the project's folder
 * @returns each name once
 */
export function sessionsOf(files: readonly { readonly file: string }[]): string[] {
  const names = files.flatMap(({ file }) => /^data\/([^/]+)\//.exec(file)?.[1] ?? []);
  return [...new Set(names)].sort();
}

/** One ZIP a session: its folder, with the checksums of the files in it. */
function dataZips(sources: readonly SiteFile[]): SiteFile[] {
  const files = sources.map(({ file, bytes }) => ({ file: file.slice(SOURCE.length + 1), bytes }));
  return sessionsOf(files).map((session) => {
    const own = files.filter(({ file }) => file.startsWith(`data/${session}/`))
      .map(({ file, bytes }) => ({ file: file.slice("data/".length), bytes }));
    const sums = own.map(({ file, bytes }) => ({
      file: file.slice(session.length + 1),
      sha256: sha256(bytes),
    }));
    const list = {
      file: `${session}/${CHECKSUMS}`,
      bytes: new TextEncoder().encode(checksumsText(sums)),
    };
    return { file: dataZip(session), bytes: zipFiles([...own, list]) };
  });
}

/**
 * The files beside the pages.
 *
 * @param pages names of all pages in reading order, without ending
 * @param sources what is published to be run again
 * @param publication what the site says of itself
 * @returns citation file, list of addresses, one ZIP a session
 */
export function sideFiles(
  pages: readonly string[],
  sources: readonly SiteFile[],
  publication: Publication,
): SiteFile[] {
  const encoder = new TextEncoder();
  // One address a line; without a known address the lines count from this file.
  const addresses = ["index.html", ...pages.map((page) => `${page}.html`)]
    .map((page) => `${publication.address ?? ""}${page}\n`);
  return [
    { file: "CITATION.cff", bytes: encoder.encode(citationText(publication)) },
    { file: "sitemap.txt", bytes: encoder.encode(addresses.join("")) },
    ...dataZips(sources),
  ];
}
