/**
 * A temporary project in which a published folder is run again, so that the folder itself is only read.
 *
 * Packages are those of the project that checks, when both have the same lock, or those that were installed beside the
 * published source; else they are set up from Deno's cache. Nothing is fetched.
 *
 * @module
 */
import { dirname, join } from "node:path";
import { filesIn } from "../site.ts";
import { SOURCE } from "../source-files.ts";
import { textIn } from "./published-folder.ts";

/** A place to run published sources. */
export interface Workshop {
  /** Absolute path of the temporary project. */
  readonly root: string;
  /** Lays out the source of a published folder: what is there already stays, what does not belong goes. */
  lay(files: ReadonlyMap<string, Uint8Array>): Promise<LaidOut>;
  /** Removes it. */
  close(): void;
}

/** Whether the source can be run here. */
export type LaidOut = { readonly ok: true } | { readonly ok: false; readonly reason: string };

/** Settings under which Deno asks no registry. */
const OFFLINE = { NPM_CONFIG_REGISTRY: "http://127.0.0.1:9/", JSR_URL: "http://127.0.0.1:9/" };

/** Same name for any reader: a path from a published folder that stays inside it. */
const INSIDE = /^(?!.*(?:^|\/)\.\.?(?:\/|$))[^\\]+$/;

function isFolder(path: string): boolean {
  try {
    return Deno.statSync(path).isDirectory;
  } catch {
    return false;
  }
}

function remove(path: string): void {
  try {
    Deno.removeSync(path, { recursive: true });
  } catch (error) {
    if (!(error instanceof Deno.errors.NotFound)) throw error;
  }
}

/**
 * Opens a workshop.
 *
 * @param project the folder of the project that checks
 * @param published the folder on disk, whose own installed packages may serve; `null` for none
 * @returns where copies can be unpacked and run; close it to remove them
 */
export function openWorkshop(project: string, published: string | null): Workshop {
  const root = Deno.realPathSync(Deno.makeTempDirSync({ prefix: "lakeproof-verify-" }));
  let lock: string | null = null;

  const packages = async (wanted: string): Promise<LaidOut> => {
    if (lock === wanted) return { ok: true };
    const modules = join(root, "node_modules");
    remove(modules);
    lock = null;
    const beside = published === null ? "" : join(published, SOURCE, "node_modules");
    const ours = join(project, "node_modules");
    const same = Deno.readTextFileSync(join(project, "deno.lock")) === wanted;
    const at = same && isFolder(ours)
      ? ours
      : published !== null && isFolder(beside)
      ? beside
      : null;
    if (at !== null) {
      Deno.symlinkSync(at, modules, { type: "dir" });
    } else {
      const output = await new Deno.Command(Deno.execPath(), {
        args: ["install", "--frozen", "--quiet"],
        cwd: root,
        env: { ...OFFLINE, NO_COLOR: "1" },
        stdin: "null",
        stdout: "null",
        stderr: "piped",
      }).output();
      if (!output.success) {
        const said = new TextDecoder().decode(output.stderr).trim().split("\n")[0] ?? "";
        return {
          ok: false,
          reason: `the packages that ${SOURCE}/deno.lock names are not installed here (${said}). ` +
            `With a network, once: cd FOLDER/${SOURCE} && npx --yes deno@2.9.6 install --frozen`,
        };
      }
    }
    lock = wanted;
    return { ok: true };
  };

  return {
    root,
    async lay(files) {
      const wanted = new Map(
        [...files].filter(([file]) => file.startsWith(`${SOURCE}/`) && INSIDE.test(file))
          .map(([file, bytes]) => [file.slice(SOURCE.length + 1), bytes]),
      );
      for (const name of ["lib", "data", "shared", "notebooks"]) {
        for (const file of filesIn(join(root, name))?.keys() ?? []) {
          if (!wanted.has(`${name}/${file}`)) remove(join(root, name, file));
        }
      }
      for (const [file, bytes] of wanted) {
        const path = join(root, file);
        Deno.mkdirSync(dirname(path), { recursive: true });
        if (!holdsBytes(path, bytes)) Deno.writeFileSync(path, bytes);
      }
      return await packages(textIn(files, `${SOURCE}/deno.lock`) ?? "");
    },
    close: () => remove(root),
  };
}

function holdsBytes(path: string, bytes: Uint8Array): boolean {
  try {
    const there = Deno.readFileSync(path);
    return there.length === bytes.length && there.every((byte, at) => byte === bytes[at]);
  } catch {
    return false;
  }
}
