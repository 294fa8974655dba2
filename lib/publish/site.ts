/**
 * A site as a list of files, and the folder that is made of it.
 *
 * @module
 */
import { dirname, join } from "node:path";
import type { FileChecksum } from "../base/session.ts";
import type { Cache } from "./cache.ts";
import { sha256 } from "./checksum.ts";
import { siteFolder } from "./swap-site.ts";

/** What `site.json` says about the whole site; the one place that may name a commit. */
export interface SiteRecord {
  readonly madeBy: "lakeproof";
  /** The commit that was checked out, or `null` without git. */
  readonly commit: string | null;
  /** Files of code and data that differ from that commit. */
  readonly changedSinceCommit: readonly string[];
  /** System and processor, since the last digit of computed numbers may differ between them. */
  readonly platform: string;
  readonly versions: Readonly<Record<string, string>>;
  readonly pages: readonly {
    readonly page: string;
    readonly notebook: string;
    readonly notebookSha256: string;
  }[];
  /** Every other file of the site but the list of checksums. */
  readonly files: readonly FileChecksum[];
}

/** The list of checksums at the top of a site. */
export const CHECKSUMS = "SHA256SUMS";

/** The whole site but itself in one file, for those who can't copy a folder from a web address. */
export const SITE_ZIP = "site.zip";

/**
 * Checksums as a list that `sha256sum -c` reads, so that a copy can be checked on a machine without this program.
 *
 * Source: GNU coreutils manual, `sha256sum`: checksum, two spaces, path.
 *
 * @param files by path
 * @returns a line each
 */
export function checksumsText(files: readonly FileChecksum[]): string {
  return files.map(({ file, sha256 }) => `${sha256}  ${file}\n`).join("");
}

/**
 * Checksums of all files in a folder, by path from it with forward slashes; `null` when there is no such folder.
 *
 * @param folder path
 * @returns SHA-256 by path
 */
export function filesIn(folder: string): Map<string, string> | null {
  const found = new Map<string, string>();
  const look = (path: string, name: string) => {
    for (const entry of Deno.readDirSync(path)) {
      const inside = join(path, entry.name);
      if (entry.isDirectory) look(inside, `${name}${entry.name}/`);
      else found.set(name + entry.name, sha256(Deno.readFileSync(inside)));
    }
  };
  try {
    look(folder, "");
    return found;
  } catch (error) {
    if (error instanceof Deno.errors.NotFound) return null;
    throw error;
  }
}

/**
 * Whether a folder holds exactly these files.
 *
 * @param folder path
 * @param files all that should be in it
 * @returns false for one file too many, too few or changed
 */
export function holds(folder: string, files: readonly FileChecksum[]): boolean {
  const found = filesIn(folder);
  return found !== null && found.size === files.length &&
    files.every((one) => found.get(one.file) === one.sha256);
}

/**
 * Writes a site into a folder of its own, ready to be swapped in. Nothing is seen of it before.
 *
 * @param root the project's folder
 * @param files every file of the site
 * @param cache holds the contents
 * @returns the name of the site's folder
 * @throws Error when a file's bytes are gone from the cache
 */
export function writeSite(root: string, files: readonly FileChecksum[], cache: Cache): string {
  const id = `${sha256(JSON.stringify(files)).slice(0, 12)}-${Date.now().toString(36)}`;
  const building = join(root, ".site", `building.${Deno.pid}`);
  const made = new Set<string>();
  for (const { file, sha256: checksum } of files) {
    const bytes = cache.kept(checksum);
    if (bytes === null) {
      throw new Error(`Cannot write ${file}: its content is no longer in the cache`);
    }
    const path = join(building, file);
    if (!made.has(dirname(path))) {
      Deno.mkdirSync(dirname(path), { recursive: true });
      made.add(dirname(path));
    }
    Deno.writeFileSync(path, bytes);
  }
  Deno.renameSync(building, siteFolder(root, id));
  return id;
}
