/**
 * Installs a kernel description for this Deno where Jupyter's own programs look for one.
 *
 * `deno run -A tests/peers/kernel-spec.ts FOLDER`, then run Jupyter with `JUPYTER_PATH=FOLDER`.
 *
 * @module
 */

/**
 * Writes `FOLDER/kernels/deno/kernel.json`.
 *
 * It names the running binary itself and not a launcher, and asks for interrupts by message: a signal would end this
 * kernel. The name is that of the standard Deno kernel, which the notebooks carry.
 *
 * Source: Jupyter, "Making kernels for Jupyter: kernel specs" (jupyter-client.readthedocs.io).
 *
 * @param folder a Jupyter data folder, made when it is not there
 * @returns path of the file written
 */
export async function installKernelSpec(folder: string): Promise<string> {
  const kernel = `${folder}/kernels/deno`;
  await Deno.mkdir(kernel, { recursive: true });
  const file = `${kernel}/kernel.json`;
  const spec = {
    argv: [Deno.execPath(), "jupyter", "--kernel", "--conn", "{connection_file}"],
    display_name: "Deno",
    env: { NO_COLOR: "1", TZ: "UTC" },
    interrupt_mode: "message",
    language: "typescript",
  };
  await Deno.writeTextFile(file, `${JSON.stringify(spec, null, 1)}\n`);
  return file;
}

if (import.meta.main) {
  const folder = Deno.args[0];
  if (folder === undefined) {
    console.error("usage: deno run -A tests/peers/kernel-spec.ts FOLDER");
    Deno.exit(2);
  }
  console.log(await installKernelSpec(folder));
}
