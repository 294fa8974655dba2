/**
 * A Python with numpy and scipy to compare with, made where there is none yet.
 *
 * @module
 */

/** Versions compared with. */
const PACKAGES = ["numpy==2.4.6", "scipy==1.17.1"] as const;

async function run(command: string, args: readonly string[]): Promise<boolean> {
  try {
    const { success } = await new Deno.Command(command, {
      args: [...args],
      stdin: "null",
      stdout: "null",
      stderr: "null",
    }).output();
    return success;
  } catch (cause) {
    if (cause instanceof Deno.errors.NotFound) return false;
    throw cause;
  }
}

/** A Python that has the packages, or why there is none. */
export type PythonPeer =
  | { readonly ok: true; readonly command: string; readonly versions: string }
  | { readonly ok: false; readonly reason: string };

/**
 * Makes a virtual environment with numpy and scipy.
 *
 * @param folder to make it in
 * @returns its Python, or what was missing
 */
export async function pythonPeer(folder: string): Promise<PythonPeer> {
  const venv = `${folder}/venv`;
  if (!await run("python3", ["-m", "venv", venv])) {
    return { ok: false, reason: "there is no python3 with venv here" };
  }
  const command = `${venv}/bin/python`;
  const installed = await run(command, [
    "-m",
    "pip",
    "install",
    "-q",
    "--disable-pip-version-check",
    ...PACKAGES,
  ]);
  if (!installed) return { ok: false, reason: `${PACKAGES.join(" and ")} could not be installed` };
  return { ok: true, command, versions: PACKAGES.join(", ") };
}
