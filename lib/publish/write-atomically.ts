/**
 * Writes a file whole or not at all.
 *
 * @module
 */

/**
 * Writes to a neighbour with the ending `.tmp`, flushes it, and renames it over the file.
 *
 * @param path where the file shall stand; its folder must be there
 * @param content text or bytes
 * @returns true when the bytes on disk changed; a file that already holds them is not touched
 */
export function writeAtomically(path: string, content: string | Uint8Array): boolean {
  const bytes = typeof content === "string" ? new TextEncoder().encode(content) : content;
  try {
    const old = Deno.readFileSync(path);
    if (old.length === bytes.length && old.every((byte, index) => byte === bytes[index])) {
      return false;
    }
  } catch (error) {
    if (!(error instanceof Deno.errors.NotFound)) throw error;
  }
  const temporary = `${path}.${Deno.pid}.tmp`;
  const file = Deno.openSync(temporary, { write: true, create: true, truncate: true });
  try {
    for (let done = 0; done < bytes.length;) done += file.writeSync(bytes.subarray(done));
    file.syncDataSync();
  } finally {
    file.close();
  }
  Deno.renameSync(temporary, path);
  return true;
}

/**
 * Removes what a stop in the middle of `writeAtomically` left in a folder; a folder that is not there is left alone.
 *
 * @param folder path
 */
export function removeHalfWritten(folder: string): void {
  let names: string[] = [];
  try {
    names = [...Deno.readDirSync(folder)].map((entry) => entry.name);
  } catch {
    return;
  }
  for (const name of names) {
    if (/\.\d+\.tmp$/.test(name)) Deno.removeSync(`${folder}/${name}`);
  }
}
