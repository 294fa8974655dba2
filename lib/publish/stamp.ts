/**
 * What a page says about its own making: software, notebook and data, so that anyone can tell whether they hold the same.
 *
 * Holds no clock and no commit: a committed output can't hold the commit that it is part of. The commit stands in the
 * site's own `site.json`.
 *
 * @module
 */
import type { FileChecksum } from "../base/session.ts";
import { sha256 } from "./checksum.ts";

/** The stamp at the foot of a page. */
export interface Stamp {
  /** File name of the notebook, for instance `01-which-foil-glides-better.ipynb`. */
  readonly notebook: string;
  /** SHA-256 of the notebook's cells as they were run and read, outputs left out. */
  readonly notebookSha256: string;
  /** Deno, and each package that the notebook's own modules import, with its version. */
  readonly versions: Readonly<Record<string, string>>;
  /** Every file that the notebook read, as a path from the project's folder, in order of path. */
  readonly data: readonly FileChecksum[];
}

/** What of a notebook the checksum is made of. */
export interface CellSources {
  readonly cells: readonly {
    readonly cell_type: string;
    readonly source: string | readonly string[];
  }[];
}

/**
 * The text of a cell, however the file holds it.
 *
 * @param cell as parsed from any notebook file
 * @returns one text
 */
export function sourceOf(cell: CellSources["cells"][number]): string {
  return typeof cell.source === "string" ? cell.source : cell.source.join("");
}

/**
 * The checksum of a notebook's cells: kinds and sources in order, without outputs, counts and metadata.
 *
 * @param notebook anything with cells
 * @returns 64 hexadecimal digits
 */
export function notebookSha256(notebook: CellSources): string {
  return sha256(JSON.stringify(notebook.cells.map((cell) => [cell.cell_type, sourceOf(cell)])));
}

/**
 * Deno's version and those of packages, read from the pins of `deno.json`.
 *
 * @param imports the import map of `deno.json`, for instance `{ "odex": "npm:odex@2.0.4" }`
 * @param packages names to report; all pinned packages when left out
 * @param deno the version of Deno to name; the running one when left out
 * @returns versions by name, Deno first, then by name
 *
 * @example
 * ```ts
 * import { versionsOf } from "lakeproof/publish/stamp.ts";
 * console.assert(versionsOf({ odex: "npm:odex@2.0.4" })["odex"] === "2.0.4");
 * ```
 */
export function versionsOf(
  imports: Readonly<Record<string, string>>,
  packages?: ReadonlySet<string>,
  deno: string = Deno.version.deno,
): Record<string, string> {
  const versions: Record<string, string> = { Deno: deno };
  for (const [name, target] of Object.entries(imports).sort(([a], [b]) => (a < b ? -1 : 1))) {
    const pinned = /^(?:npm|jsr):\/?(?:@[^/]+\/)?[^@/]+@([^/]+)/.exec(target)?.[1];
    if (pinned !== undefined && (packages === undefined || packages.has(name))) {
      versions[name] = pinned;
    }
  }
  return versions;
}
