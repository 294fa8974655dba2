/**
 * The commit that a project stands at, where there is a git to ask.
 *
 * @module
 */

/** A commit and what differs from it. */
export interface GitState {
  readonly commit: string | null;
  readonly changed: readonly string[];
}

/** Folders and files whose change makes the commit alone say too little. Notebooks carry their own checksum. */
const WATCHED = ["lib", "data", "shared", "deno.json", "deno.lock"];

async function git(root: string, args: string[]): Promise<string | null> {
  try {
    const command = new Deno.Command("git", {
      args: ["-C", root, ...args],
      stdin: "null",
      stdout: "piped",
      stderr: "null",
      env: { GIT_OPTIONAL_LOCKS: "0" },
    });
    const output = await command.output();
    return output.success ? new TextDecoder().decode(output.stdout) : null;
  } catch {
    return null;
  }
}

/**
 * Asks git, if the folder itself is a git checkout and git is there.
 *
 * @param root the project's folder
 * @returns commit and changed paths; no commit where there is no repository
 */
export async function gitState(root: string): Promise<GitState> {
  try {
    Deno.statSync(`${root}/.git`);
  } catch {
    return { commit: null, changed: [] };
  }
  const [commit, status] = await Promise.all([
    git(root, ["rev-parse", "--verify", "HEAD"]),
    git(root, ["status", "--porcelain", "-z", "--no-renames", "--", ...WATCHED]),
  ]);
  const changed = (status ?? "").split("\0").filter((line) => line !== "");
  return { commit: commit?.trim() ?? null, changed: changed.map((line) => line.slice(3)).sort() };
}
