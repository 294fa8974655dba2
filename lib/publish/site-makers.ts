/**
 * The kernel and the page builder, loaded only when there is something for them to do: a report that finds everything
 * true needs neither.
 *
 * @module
 */
import { join } from "node:path";
import type { Makers } from "./report-request.ts";

/**
 * The makers of a project's site.
 *
 * @param root the project's folder, where kernels start
 * @returns modules that are loaded when first needed
 */
export function siteMakers(root: string): Makers {
  return {
    runner: join(root, "lib", "publish", "run-notebook.ts"),
    builder: join(root, "lib", "publish", "page", "build-page.ts"),
    live: join(root, "lib", "live", "live-page.ts"),
    async run() {
      const { runNotebook } = await import("./run-notebook.ts");
      return async (notebook, { signal, onCell }) =>
        await runNotebook(notebook, {
          cwd: root,
          signal,
          onCell: (place, count) => onCell(place.codeCell, count),
        });
    },
    async check() {
      const { checkCells, describeFault } = await import("./check-cells.ts");
      return async (notebooks) =>
        (await checkCells(notebooks, root))
          .map((fault) => ({ file: fault.file, words: describeFault(fault) }));
    },
    async build() {
      return (await import("./page/build-page.ts")).buildPage;
    },
    async buildChanges() {
      return (await import("./page/build-changes.ts")).buildChanges;
    },
    async buildIndex() {
      return (await import("./page/build-index.ts")).buildIndex;
    },
  };
}
