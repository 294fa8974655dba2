/**
 * Keeps what a report has made, so that the next one needs to make only what is no longer true.
 *
 * Every record is written whole or not at all, and a record that can't be read counts as absent: the cache can always be
 * thrown away.
 *
 * @module
 */
import { join } from "node:path";
import type { Inputs } from "./cache-key.ts";
import { sha256 } from "./checksum.ts";
import type { Output } from "./notebook.ts";
import type { IndexCard } from "./page/page-types.ts";
import type { FileChecksum } from "../base/session.ts";
import { writeAtomically } from "./write-atomically.ts";

/** Form of the records; another one makes old records count as absent. */
const FORM = 2;

/** What one run of a notebook gave, and what it rests on. */
export interface KeptRun {
  /** Code, Deno, lock, settings. */
  readonly code: Inputs;
  /** Files read and the folders that they lie in. */
  readonly data: Inputs;
  /** Absolute paths. */
  readonly filesRead: readonly string[];
  /** Packages that the cells reach, by their keys in the import map. */
  readonly packages: readonly string[];
  /** Checksum of the record that holds the outputs. */
  readonly outputs: string;
}

/** Count and outputs of each code cell, in order. */
export type KeptOutputs = readonly {
  readonly count: number | null;
  readonly outputs: readonly Output[];
}[];

/** One page as it was built: everything that the site takes from it. */
export interface KeptPage {
  /** Checksum of the notebook's file as it is after the report. */
  readonly notebookFile: string;
  /** Checksum of what the prose was checked against and with. */
  readonly bound: string;
  /** As in the stamp. */
  readonly notebookSha256: string;
  readonly inputs: Inputs;
  readonly title: string;
  readonly card: IndexCard;
  /** Paths from the site's folder, the page itself among them. */
  readonly files: readonly FileChecksum[];
}

/** A folder of records and of file contents by checksum. */
export interface Cache {
  read<T>(name: string): T | null;
  write(name: string, value: unknown): void;
  /** Keeps a file's bytes; returns its checksum. */
  keep(bytes: Uint8Array): string;
  /** Bytes by checksum, or `null` when they are lost or damaged. */
  kept(checksum: string): Uint8Array | null;
  /** Whether bytes are kept, and whole. */
  has(checksum: string): boolean;
  /** Forgets contents that nothing in `needed` refers to, and records of other names. */
  forget(needed: ReadonlySet<string>, names: ReadonlySet<string>): void;
}

/**
 * The cache in a folder, made when it is not there.
 *
 * @param folder usually `.site/cache`
 * @returns the cache; contents whose checksum no longer holds count as lost
 */
export function openCache(folder: string): Cache {
  const contents = join(folder, "contents");
  Deno.mkdirSync(contents, { recursive: true });
  const bytesOf = (checksum: string): Uint8Array | null => {
    try {
      const bytes = Deno.readFileSync(join(contents, checksum));
      return sha256(bytes) === checksum ? bytes : null;
    } catch {
      return null;
    }
  };
  return {
    read<T>(name: string): T | null {
      try {
        const record = JSON.parse(Deno.readTextFileSync(join(folder, `${name}.json`)));
        return record.form === FORM ? record.value as T : null;
      } catch {
        return null;
      }
    },
    write(name, value) {
      writeAtomically(join(folder, `${name}.json`), JSON.stringify({ form: FORM, value }));
    },
    keep(bytes) {
      const checksum = sha256(bytes);
      if (bytesOf(checksum) === null) writeAtomically(join(contents, checksum), bytes);
      return checksum;
    },
    kept: bytesOf,
    has: (checksum) => bytesOf(checksum) !== null,
    forget(needed, names) {
      for (const entry of [...Deno.readDirSync(contents)]) {
        if (!needed.has(entry.name)) Deno.removeSync(join(contents, entry.name));
      }
      for (const entry of [...Deno.readDirSync(folder)]) {
        if (entry.isFile && !names.has(entry.name.replace(/\.json$/, ""))) {
          Deno.removeSync(join(folder, entry.name));
        }
      }
    },
  };
}
