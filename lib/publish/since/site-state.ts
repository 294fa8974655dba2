/**
 * What a project said and rested on at some time: its answers, and a checksum of every file that they came from.
 *
 * It can be had from a published folder or from a commit, since both hold notebooks with their answers beside the sources.
 *
 * @module
 */
import { createHash } from "node:crypto";
import { DataError, UsageError } from "../../base/errors.ts";
import type { Quantity } from "../../base/quantity.ts";
import { isQuantity } from "../prose-text.ts";
import { parseNotebook } from "../notebook.ts";
import { shownAnswers } from "../prose-values.ts";
import { SOURCE } from "../source-files.ts";
import { readPublished, siteRecordIn } from "../verify/published-folder.ts";

/** Answers and sources at one time. */
export interface SiteState {
  /** What was asked for: a commit's name or a folder. */
  readonly from: string;
  /** Whether it was read from a commit, which also holds what was never published. */
  readonly commit: boolean;
  /** Results of each notebook by file, then by answer and place in it, such as `glide/comparisons[birch]/ratio`. */
  readonly results: Readonly<Record<string, Readonly<Record<string, Quantity>>>>;
  /** Verdicts likewise. */
  readonly verdicts: Readonly<Record<string, Readonly<Record<string, string>>>>;
  /** Checksum of the code cells of each notebook. */
  readonly code: Readonly<Record<string, string>>;
  /** Git's name of each source file's bytes, by path from the project's folder. */
  readonly files: Readonly<Record<string, string>>;
  /** Packages by their pins in `deno.json`; Deno itself where that is known. */
  readonly versions: Readonly<Record<string, string>>;
}

/**
 * The name that git gives to some bytes, so that a folder and a commit can be compared file by file.
 *
 * Source: git-hash-object(1); the empty file is e69de29bb2d1d6434b8b29ae775ad8c2e48c5391.
 *
 * @param bytes of the file
 * @returns SHA-1 in hexadecimal
 * @example
 * ```ts
 * import { blobName } from "lakeproof/publish/since/site-state.ts";
 * console.assert(blobName(new Uint8Array()).startsWith("e69de29b"));
 * ```
 */
export function blobName(bytes: Uint8Array): string {
  return createHash("sha1").update(`blob ${bytes.length}\0`).update(bytes).digest("hex");
}

/** Folders and files whose content can move a result. */
const WATCHED = /^(?:(?:lib|data|shared)\/|deno\.(?:json|lock)$)/;

const NAMES = ["candidate", "run", "point", "design"];

interface Found {
  readonly results: Record<string, Quantity>;
  readonly verdicts: Record<string, string>;
}

/** Every quantity and verdict in an answer, by place. */
function look(value: unknown, path: string, found: Found): void {
  if (isQuantity(value)) found.results[path] = value;
  else if (Array.isArray(value)) {
    for (const [at, one] of value.entries()) {
      const name = NAMES.map((key) => (one as Record<string, unknown> | null)?.[key])
        .find((text) => typeof text === "string");
      look(one, `${path}[${name ?? at}]`, found);
    }
  } else if (typeof value === "object" && value !== null) {
    for (const [key, one] of Object.entries(value)) {
      if (key === "verdict" && typeof one === "string") found.verdicts[`${path}/${key}`] = one;
      else look(one, `${path}/${key}`, found);
    }
  }
}

/**
 * A state from notebooks and names of files.
 *
 * @param parts where they come from, notebooks' text by file, names of bytes by file, text of `deno.json`, version of Deno
 * @returns results and verdicts by path, checksums of code and data
 */
export function stateOf(parts: {
  readonly from: string;
  readonly commit: boolean;
  readonly notebooks: ReadonlyMap<string, string>;
  readonly files: ReadonlyMap<string, string>;
  readonly settings: string;
  readonly deno: string | null;
}): SiteState {
  const results: Record<string, Record<string, Quantity>> = {};
  const verdicts: Record<string, Record<string, string>> = {};
  const code: Record<string, string> = {};
  for (const [file, text] of [...parts.notebooks].sort()) {
    const notebook = parseNotebook(text, file);
    const found: Found = { results: {}, verdicts: {} };
    for (const [name, answer] of shownAnswers(notebook).answers) look(answer, name, found);
    results[file] = found.results;
    verdicts[file] = found.verdicts;
    const cells = notebook.cells.filter((cell) => cell.cell_type === "code");
    code[file] = blobName(new TextEncoder().encode(JSON.stringify(cells.map((one) => one.source))));
  }
  const imports: Record<string, string> = JSON.parse(parts.settings)["imports"] ?? {};
  const pins = Object.entries(imports).filter(([, target]) => /^(?:npm|jsr):/.test(target));
  return {
    from: parts.from,
    commit: parts.commit,
    results,
    verdicts,
    code,
    files: Object.fromEntries([...parts.files].filter(([file]) => WATCHED.test(file)).sort()),
    versions: {
      ...(parts.deno === null ? {} : { Deno: parts.deno }),
      ...Object.fromEntries(pins.map(([name, target]) => [name, target.replace(/^.*@/, "")])),
    },
  };
}

/**
 * The state of a published folder.
 *
 * @param path of the folder, or of a ZIP that holds it
 * @returns its state
 */
export function stateOfFolder(path: string): SiteState {
  const { files } = readPublished(path);
  const decoder = new TextDecoder();
  const notebooks = new Map<string, string>();
  const names = new Map<string, string>();
  for (const [file, bytes] of files) {
    if (!file.startsWith(`${SOURCE}/`)) continue;
    const inside = file.slice(SOURCE.length + 1);
    names.set(inside, blobName(bytes));
    const notebook = /^notebooks\/(.*\.ipynb)$/.exec(inside)?.[1];
    if (notebook !== undefined) notebooks.set(notebook, decoder.decode(bytes));
  }
  return stateOf({
    from: path,
    commit: false,
    notebooks,
    files: names,
    settings: decoder.decode(files.get(`${SOURCE}/deno.json`)),
    deno: siteRecordIn(files)?.versions["Deno"] ?? null,
  });
}

async function git(root: string, ...args: string[]): Promise<string | null> {
  try {
    const output = await new Deno.Command("git", {
      args: ["-C", root, ...args],
      stdin: "null",
      stdout: "piped",
      stderr: "null",
      env: { GIT_OPTIONAL_LOCKS: "0" },
    }).output();
    return output.success ? new TextDecoder().decode(output.stdout) : null;
  } catch {
    return null;
  }
}

/**
 * The state of a commit, from the notebooks as they were committed.
 *
 * @param root the project's folder
 * @param reference a commit, branch or tag
 * @returns its state
 * @throws UsageError when git knows no such commit
 */
export async function stateOfCommit(root: string, reference: string): Promise<SiteState> {
  const commit = await git(
    root,
    "rev-parse",
    "--verify",
    "--end-of-options",
    `${reference}^{commit}`,
  );
  if (commit === null) {
    throw new UsageError(
      `Cannot compare with ${reference}: it is neither a published folder nor a commit that git knows here.`,
    );
  }
  const name = commit.trim();
  const list = await git(
    root,
    "ls-tree",
    "-r",
    "-z",
    name,
    "--",
    "lib",
    "data",
    "shared",
    "notebooks",
    "deno.json",
    "deno.lock",
  );
  const files = new Map(
    (list ?? "").split("\0").flatMap((line) => {
      const match = /^\d+ blob ([0-9a-f]+)\t(.*)$/s.exec(line);
      return match === null ? [] : [[match[2]!, match[1]!] as const];
    }),
  );
  const notebooks = new Map<string, string>();
  for (const file of files.keys()) {
    const notebook = /^notebooks\/([^/]*\.ipynb)$/.exec(file)?.[1];
    if (notebook === undefined) continue;
    const text = await git(root, "show", `${name}:${file}`);
    if (text !== null) notebooks.set(notebook, text);
  }
  const settings = await git(root, "show", `${name}:deno.json`);
  if (settings === null) {
    throw new DataError(`Cannot compare with ${reference}: that commit holds no deno.json.`);
  }
  return stateOf({
    from: `${reference} (${name.slice(0, 12)})`,
    commit: true,
    notebooks,
    files,
    settings,
    deno: null,
  });
}

/**
 * The state that was asked for.
 *
 * @param root the project's folder
 * @param asked a published folder, its ZIP, or a commit
 * @returns the state of the folder or commit
 */
export async function stateSince(root: string, asked: string): Promise<SiteState> {
  try {
    const info = Deno.statSync(asked);
    if (info.isDirectory || asked.endsWith(".zip")) return stateOfFolder(asked);
  } catch {
    // No folder of that name: a commit, perhaps.
  }
  return await stateOfCommit(root, asked);
}
