/**
 * A small project in a temporary folder: the library and the shared tables as they are, the installed packages, notebooks and data of one's own.
 */
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { formatNotebook, type Notebook } from "lakeproof/publish/notebook.ts";

/** The folder of this project. */
export const PROJECT = fileURLToPath(new URL("../../", import.meta.url));

/** What stands in the small project besides the library. */
export interface SmallProjectParts {
  /** Notebooks by file name. */
  readonly notebooks: Readonly<Record<string, Notebook>>;
  /** Other files by path from the project's folder. */
  readonly files?: Readonly<Record<string, string>>;
  /** False leaves out the library, the shared tables and the packages, for tests that start no Deno of their own. */
  readonly library?: boolean;
}

/** A small project and ways to look at it. */
export interface SmallProject {
  readonly root: string;
  write(path: string, text: string): void;
  read(path: string): string;
  notebook(file: string, notebook: Notebook): void;
  remove(): void;
}

function copyFolder(from: string, to: string): void {
  Deno.mkdirSync(to, { recursive: true });
  for (const entry of Deno.readDirSync(from)) {
    const [source, target] = [join(from, entry.name), join(to, entry.name)];
    if (entry.isDirectory) copyFolder(source, target);
    else Deno.copyFileSync(source, target);
  }
}

/** Makes a small project. Call `remove` when done. */
export function smallProject(parts: SmallProjectParts): SmallProject {
  const root = Deno.realPathSync(Deno.makeTempDirSync({ prefix: "lakeproof-test-" }));
  const project: SmallProject = {
    root,
    write(path, text) {
      Deno.mkdirSync(dirname(join(root, path)), { recursive: true });
      Deno.writeTextFileSync(join(root, path), text);
    },
    read: (path) => Deno.readTextFileSync(join(root, path)),
    notebook: (file, notebook) => project.write(`notebooks/${file}`, formatNotebook(notebook)),
    remove: () => Deno.removeSync(root, { recursive: true }),
  };
  for (const name of ["deno.json", "deno.lock"]) {
    Deno.copyFileSync(join(PROJECT, name), join(root, name));
  }
  if (parts.library !== false) {
    for (const name of ["lib", "shared"]) copyFolder(join(PROJECT, name), join(root, name));
    Deno.symlinkSync(join(PROJECT, "node_modules"), join(root, "node_modules"), { type: "dir" });
  }
  for (const [file, notebook] of Object.entries(parts.notebooks)) project.notebook(file, notebook);
  for (const [path, text] of Object.entries(parts.files ?? {})) project.write(path, text);
  return project;
}
