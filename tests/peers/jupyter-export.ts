/**
 * Has Jupyter's own command-line exporter run and export notebooks, and compares its outputs with ours.
 *
 * `deno run -A tests/peers/jupyter-export.ts PATH_OF_JUPYTER [NOTEBOOK...]`; needs `pip install nbconvert`. Without
 * notebooks all of `notebooks/` are taken. Besides them it runs a notebook of 300 cells that show something and end without
 * a value: that client stops listening when the kernel says it is idle, and must lose none of them.
 *
 * @module
 */
import { basename } from "node:path";
import {
  type CodeCell,
  formatNotebook,
  type Notebook,
  NOTEBOOK_METADATA,
  parseNotebook,
} from "lakeproof/publish/notebook.ts";
import { describeFailure, runNotebook } from "lakeproof/publish/run-notebook.ts";
import { firstDifference } from "lakeproof/publish/first-difference.ts";
import { installKernelSpec } from "./kernel-spec.ts";

const ROOT = decodeURIComponent(new URL("../..", import.meta.url).pathname);
const [jupyter, ...named] = Deno.args;
if (jupyter === undefined) {
  console.error("usage: deno run -A tests/peers/jupyter-export.ts PATH_OF_JUPYTER [NOTEBOOK...]");
  Deno.exit(2);
}

const folder = await Deno.makeTempDir({ prefix: "lakeproof-peer-" });
await installKernelSpec(`${folder}/jupyter`);
let failed = 0;

// That client starts the kernel beside the notebook, which has to find the project's imports from there.
const inside = await Deno.makeTempDir({ dir: ROOT, prefix: ".peer-" });
const loud = `${inside}/many-displays.ipynb`;
await Deno.writeTextFile(loud, formatNotebook(manyDisplays()));
const notebooks = named.length > 0 ? named : [...Deno.readDirSync(`${ROOT}/notebooks`)]
  .filter((entry) => entry.name.endsWith(".ipynb"))
  .map((entry) => `${ROOT}/notebooks/${entry.name}`)
  .sort();
for (const path of [loud, ...notebooks]) {
  const fault = await compare(path);
  if (fault !== null) failed++;
  console.log(`${basename(path)}: ${fault ?? "runs, exports, same outputs as ours"}`);
}
await Promise.all([folder, inside].map((path) => Deno.remove(path, { recursive: true })));
console.log(`${notebooks.length + 1 - failed} passed, ${failed} failed`);
Deno.exit(failed === 0 ? 0 : 1);

/** What is wrong with this notebook in the other client; `null` when nothing is. */
async function compare(path: string): Promise<string | null> {
  const name = basename(path);
  const executed = await convert(["--to", "notebook", "--execute"], path, name);
  if (executed !== null) return executed;
  const exported = await convert(["--to", "html"], `${folder}/out/${name}`, `${name}.html`);
  if (exported !== null) return exported;
  const ours = await runNotebook(parseNotebook(await Deno.readTextFile(path), name), { cwd: ROOT });
  if (!ours.ok) return describeFailure(name, ours);
  const theirs = parseNotebook(await Deno.readTextFile(`${folder}/out/${name}`), name);
  const difference = firstDifference(withoutTraces(ours.notebook), withoutTraces(theirs));
  return difference === null
    ? null
    : `code cell ${difference.codeCell} differs: ours ${difference.first}, theirs ${difference.second}`;
}

async function convert(how: string[], path: string, output: string): Promise<string | null> {
  const { success, stderr } = await new Deno.Command(jupyter!, {
    args: ["nbconvert", ...how, "--output-dir", `${folder}/out`, "--output", output, path],
    cwd: ROOT,
    env: { JUPYTER_PATH: `${folder}/jupyter`, NO_COLOR: "1" },
    stdin: "null",
    stdout: "null",
    stderr: "piped",
  }).output();
  return success ? null : `nbconvert failed: ${new TextDecoder().decode(stderr).slice(-2000)}`;
}

/** The other client keeps times and its own kernel's description, which are no outputs. */
function withoutTraces(notebook: Notebook): Notebook {
  return {
    ...notebook,
    metadata: {},
    cells: notebook.cells.map((cell) => ({ ...cell, metadata: {} })),
  };
}

function manyDisplays(): Notebook {
  const sources = [
    'import { show } from "lakeproof/show/show.ts";',
    ...Array.from({ length: 300 }, (_, index) => `await show("shown ${index + 1}");`),
  ];
  const cells = sources.map((source, index): CodeCell => ({
    cell_type: "code",
    execution_count: null,
    id: `show-${index}`,
    metadata: {},
    outputs: [],
    source,
  }));
  return { cells, metadata: NOTEBOOK_METADATA, nbformat: 4, nbformat_minor: 5 };
}
