/**
 * Files packed into one ZIP, the same bytes for the same files.
 *
 * Every entry bears the earliest date that the format knows, and the packing is done by a library whose version is
 * pinned, so that neither clock nor machine shows.
 *
 * Source: APPNOTE.TXT 6.3.10, 4.4.6 (date and time; the earliest is 1980-01-01).
 *
 * @module
 */
import { unzipSync, type Zippable, zipSync } from "fflate";

/** A file to pack. */
export interface PackedFile {
  /** Path inside the ZIP, with forward slashes. */
  readonly file: string;
  readonly bytes: Uint8Array;
}

/** Pictures and archives are packed already. */
const PACKED = /\.(?:png|zip|woff2)$/;

/**
 * Packs files.
 *
 * @param files in the order in which they shall stand
 * @returns bytes of a ZIP
 *
 * @example
 * ```ts
 * import { unzipFiles, zipFiles } from "lakeproof/publish/zip-files.ts";
 * const files = [{ file: "a.txt", bytes: new Uint8Array([1, 2]) }];
 * console.assert(unzipFiles(zipFiles(files)).get("a.txt")?.length === 2);
 * ```
 */
export function zipFiles(files: readonly PackedFile[]): Uint8Array {
  // The format holds local time: the parts are set, not an instant.
  const mtime = new Date(1980, 0, 1, 0, 0, 0);
  const entries: Zippable = {};
  for (const { file, bytes } of files) {
    entries[file] = [bytes, { mtime, level: PACKED.test(file) ? 0 : 6 }];
  }
  return zipSync(entries);
}

/**
 * The files of a ZIP by path; entries for folders left out.
 *
 * @param bytes of the ZIP
 * @returns bytes by path with forward slashes
 */
export function unzipFiles(bytes: Uint8Array): Map<string, Uint8Array> {
  return new Map(Object.entries(unzipSync(bytes)).filter(([file]) => !file.endsWith("/")));
}
