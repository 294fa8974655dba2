/**
 * Makes a session folder and its notebook, whole or not at all.
 *
 * @module
 */
import { join } from "node:path";
import { DataError, UsageError } from "../base/errors.ts";
import { excerpt } from "../base/printable.ts";
import { makeDescriptor } from "../read/make-descriptor.ts";
import { glossaryText } from "./glossary-text.ts";
import { newNotebookText } from "./new-notebook.ts";
import { newTables } from "./new-tables.ts";

/** Names that some systems keep for devices. */
const RESERVED = /^(?:con|prn|aux|nul|com\d|lpt\d)$/;

/** Where the new things lie. */
export interface NewSession {
  /** Absolute path. */
  readonly folder: string;
  /** Absolute path. */
  readonly notebook: string;
}

/**
 * Refuses a name that would not do as a folder, a file and a web address on every system.
 *
 * @param name wanted for a session
 * @throws UsageError with a name that would
 */
export function requireName(name: string): void {
  if (/^[a-z0-9](?:[a-z0-9-]{0,58}[a-z0-9])?$/.test(name) && !RESERVED.test(name)) return;
  if (RESERVED.test(name)) {
    throw new UsageError(
      `Cannot make a session called "${name}": some systems keep that name for a device.`,
    );
  }
  const better = name.normalize("NFKD").toLowerCase().replace(/[^a-z0-9]+/g, "-")
    .replace(/^-+|-+$/g, "").slice(0, 60).replace(/-+$/, "");
  throw new UsageError(
    `Cannot make a session called "${
      excerpt(name)
    }": a name has small letters a to z, digits and hyphens` +
      (better === "" || better === name || RESERVED.test(better)
        ? "."
        : `. Did you mean ${better}?`),
  );
}

/**
 * All files of a new session folder by name.
 *
 * @param name of the session
 * @returns texts: empty tables, descriptor, glossary
 */
export function newSessionFiles(name: string): Map<string, string> {
  const tables = newTables();
  const bytes = new Map([...tables].map(([file, text]) => [file, new TextEncoder().encode(text)]));
  return new Map([
    ...tables,
    ["datapackage.json", makeDescriptor(bytes, { name, title: name, invented: false })],
    ["GLOSSARY.md", glossaryText()],
  ]);
}

function isThere(path: string): boolean {
  try {
    Deno.lstatSync(path);
    return true;
  } catch (error) {
    if (error instanceof Deno.errors.NotFound) return false;
    throw error;
  }
}

/**
 * Writes `data/NAME/` and `notebooks/NAME.ipynb`.
 *
 * Both are written beside their place under a name that starts with a dot and then renamed: what is there under its own
 * name is whole. Nothing is ever overwritten.
 *
 * @param root top folder of the project
 * @param name of the session
 * @returns absolute paths of both
 * @throws UsageError for a name that will not do
 * @throws DataError when either is there already
 */
export function makeSession(root: string, name: string): NewSession {
  requireName(name);
  const folder = join(root, "data", name);
  const notebook = join(root, "notebooks", `${name}.ipynb`);
  for (const [path, what] of [[folder, `data/${name}`], [notebook, `notebooks/${name}.ipynb`]]) {
    if (isThere(path!)) {
      throw new DataError(
        `Cannot make the session: ${what} is there already. Choose another name.`,
      );
    }
  }
  Deno.mkdirSync(join(root, "data"), { recursive: true });
  Deno.mkdirSync(join(root, "notebooks"), { recursive: true });
  const newFolder = Deno.makeTempDirSync({ dir: join(root, "data"), prefix: ".new-" });
  const newNotebook = join(root, "notebooks", `.new-${name}.ipynb`);
  try {
    for (const [file, text] of newSessionFiles(name)) {
      Deno.writeTextFileSync(join(newFolder, file), text);
    }
    Deno.chmodSync(newFolder, 0o755);
    Deno.writeTextFileSync(newNotebook, newNotebookText(name));
    Deno.renameSync(newFolder, folder);
    try {
      Deno.renameSync(newNotebook, notebook);
    } catch (error) {
      Deno.removeSync(folder, { recursive: true });
      throw error;
    }
  } catch (error) {
    for (const path of [newFolder, newNotebook]) {
      if (isThere(path)) Deno.removeSync(path, { recursive: true });
    }
    throw error;
  }
  return { folder, notebook };
}
