/**
 * Puts a finished site in place of the last one, whole: whoever looks at `out/` sees the old site or the new one.
 *
 * `out` is a link to a folder under `.site/sites/`, and the link is renamed over the old link in one step. Where links
 * are not to be had, `out` is a folder that is swapped by two renames; a start after a stop between the two finishes the
 * swap. Renaming onto a full folder is not possible, so there is no one-step way with folders.
 *
 * @module
 */
import { basename, join } from "node:path";
import { DataError } from "../base/errors.ts";
import { removeHalfWritten, writeAtomically } from "./write-atomically.ts";

/** A note of what a swap by two renames is about, kept while it goes on. */
interface SwapNote {
  readonly id: string;
  readonly links: boolean;
}

/** Where things lie. */
function places(root: string) {
  const home = join(root, ".site");
  return {
    out: join(root, "out"),
    home,
    sites: join(home, "sites"),
    note: join(home, "swap.json"),
    aside: join(home, "site-before"),
  };
}

function kindOf(path: string): "none" | "link" | "folder" | "file" {
  try {
    const info = Deno.lstatSync(path);
    return info.isSymlink ? "link" : info.isDirectory ? "folder" : "file";
  } catch {
    return "none";
  }
}

function remove(path: string): void {
  if (kindOf(path) !== "none") Deno.removeSync(path, { recursive: true });
}

/**
 * Where a finished site waits for its swap.
 *
 * @param root absolute path of the project's folder
 * @param id of the site
 * @returns absolute path
 */
export function siteFolder(root: string, id: string): string {
  return join(places(root).sites, id);
}

/** Whether a folder is a site that we made, and so may be replaced. */
function isOurs(folder: string): boolean {
  try {
    return JSON.parse(Deno.readTextFileSync(join(folder, "site.json"))).madeBy === "lakeproof";
  } catch {
    return [...Deno.readDirSync(folder)].length === 0;
  }
}

/**
 * Makes sure that `out` may be replaced.
 *
 * @param root absolute path of the project's folder
 * @throws DataError when something stands there that is not a site of ours
 */
export function checkOut(root: string): void {
  const { out } = places(root);
  const kind = kindOf(out);
  if (kind === "file" || (kind === "folder" && !isOurs(out))) {
    throw new DataError(
      `Cannot write the site to out/: a ${kind} of that name is there that this program did not make. ` +
        "Move it away or give it another name, then run the report again.",
    );
  }
}

/** Points `out` to a site by a link, in one step. */
function placeLink(root: string, id: string): void {
  const temporary = join(root, `out.${Deno.pid}.tmp`);
  remove(temporary);
  Deno.symlinkSync(join(".site", "sites", id), temporary, { type: "dir" });
  try {
    Deno.renameSync(temporary, places(root).out);
  } catch (error) {
    remove(temporary);
    throw error;
  }
}

function place(root: string, note: SwapNote): void {
  if (note.links) placeLink(root, note.id);
  else Deno.renameSync(siteFolder(root, note.id), places(root).out);
}

function swapByFolders(root: string, note: SwapNote): void {
  const at = places(root);
  remove(at.aside);
  writeAtomically(at.note, JSON.stringify(note));
  if (kindOf(at.out) !== "none") Deno.renameSync(at.out, at.aside);
  place(root, note);
  Deno.removeSync(at.note);
  remove(at.aside);
}

/** Whether this place lets us make a link to a folder. */
function canLink(root: string): boolean {
  const probe = join(places(root).home, `probe.${Deno.pid}.tmp`);
  try {
    Deno.symlinkSync("sites", probe, { type: "dir" });
    Deno.removeSync(probe);
    return true;
  } catch {
    return false;
  }
}

/**
 * Puts a finished site in place.
 *
 * @param root the project's folder
 * @param id name of the site's folder under `.site/sites/`
 * @param options `links: false` swaps folders even where links could be made
 */
export function swapSite(
  root: string,
  id: string,
  options: { readonly links?: boolean } = {},
): void {
  const kind = kindOf(places(root).out);
  const links = options.links !== false && canLink(root);
  if (links && kind !== "folder") placeLink(root, id);
  else swapByFolders(root, { id, links });
}

/**
 * Finishes or drops what a stopped report left behind; to be called at the start, with no other report running.
 *
 * @param root absolute path of the project's folder
 * @returns true when a swap had to be finished
 */
export function recoverSite(root: string): boolean {
  const at = places(root);
  Deno.mkdirSync(at.sites, { recursive: true });
  let finished = false;
  const text = kindOf(at.note) === "file" ? Deno.readTextFileSync(at.note) : null;
  if (text !== null) {
    const note = JSON.parse(text) as SwapNote;
    if (kindOf(at.out) === "none" && kindOf(siteFolder(root, note.id)) === "folder") {
      place(root, note);
      finished = true;
    }
    Deno.removeSync(at.note);
  }
  if (kindOf(at.out) === "none" && kindOf(at.aside) === "folder") Deno.renameSync(at.aside, at.out);
  remove(at.aside);
  for (const folder of [root, join(root, "notebooks")]) removeHalfWritten(folder);
  return finished;
}

/**
 * Name of the folder under `.site/sites/` that `out` points to; empty when it is no such link.
 *
 * @param root absolute path of the project's folder
 * @returns the site's id
 */
export function siteInPlace(root: string): string {
  const { out } = places(root);
  return kindOf(out) === "link" ? basename(Deno.readLinkSync(out)) : "";
}

/**
 * Removes every site under `.site/sites/` but one, and half-built ones.
 *
 * @param root absolute path of the project's folder
 * @param keep name of the folder to keep
 */
export function removeOldSites(root: string, keep: string): void {
  const { home, sites } = places(root);
  for (const entry of [...Deno.readDirSync(sites)]) {
    if (entry.name !== keep) remove(join(sites, entry.name));
  }
  for (const entry of [...Deno.readDirSync(home)]) {
    if (/^building\.|\.tmp$/.test(entry.name)) remove(join(home, entry.name));
  }
}
