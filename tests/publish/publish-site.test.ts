import { afterEach, beforeEach, describe, expect, it } from "vitest";
import type { Cell, Notebook } from "lakeproof/publish/notebook.ts";
import { parseNotebook } from "lakeproof/publish/notebook.ts";
import type { NotebookRun } from "lakeproof/publish/notebook-run.ts";
import { explainReport, publishSite } from "lakeproof/publish/publish-site.ts";
import type { Makers, ReportRequest } from "lakeproof/publish/report-request.ts";
import { SILENT } from "lakeproof/publish/progress.ts";
import { filesIn } from "lakeproof/publish/site.ts";
import { recoverSite } from "lakeproof/publish/swap-site.ts";
import { code, notebookOf, prose, shown } from "../support/example-notebook.ts";
import { type SmallProject, smallProject } from "../support/small-project.ts";

// A kernel and a page builder of a few lines: what is tested here is what the report makes of theirs.

const VALUE = "[](#value:glide/value)";
const first = notebookOf(prose(`# First\n\nIt is ${VALUE}.`, "a"), code("await show(glide);", "b"));
const second = notebookOf(prose("# Second", "a"), code("1;", "b"));

let project: SmallProject;
let ran: string[];
let built: string[];
let checked: string[];
let cellFaults: { file: string; words: string }[];
let onRun: (notebook: Notebook) => void;

/** Shows the text of data/value.txt as the answer's value. */
function fakeRun(notebook: Notebook): NotebookRun {
  const title = notebook.cells[0]!.source.split("\n")[0]!.slice(2);
  ran.push(title);
  onRun(notebook);
  const failing = notebook.cells.findIndex((cell) => cell.source.includes("throw"));
  if (failing >= 0) {
    return {
      ok: false,
      notebook,
      codeCell: failing,
      cell: failing + 1,
      line: 2,
      sourceLine: "throw x",
      name: "Error",
      message: "it broke",
      traceback: [],
    };
  }
  const value = Number(project.read("data/evening/value.txt"));
  const cells = notebook.cells.map((cell): Cell =>
    cell.cell_type !== "code"
      ? cell
      : cell.source.includes("show")
      ? { ...shown("glide", { value }, cell.id), source: cell.source }
      : { ...cell, execution_count: 1 }
  );
  const filesRead = title === "First" ? [`${project.root}/data/evening/value.txt`] : [];
  return { ok: true, notebook: { ...notebook, cells }, filesRead, pathsAsked: filesRead };
}

const makers = (): Makers => ({
  runner: `${project.root}/lib/runner.ts`,
  builder: `${project.root}/lib/builder.ts`,
  live: `${project.root}/lib/live.ts`,
  run: () => Promise.resolve((notebook) => Promise.resolve(fakeRun(notebook))),
  check: () =>
    Promise.resolve((notebooks) => {
      checked = notebooks.map((one) => one.file);
      return Promise.resolve(cellFaults);
    }),
  build: () =>
    Promise.resolve((input) => {
      built.push(input.slug);
      const text = JSON.stringify([input.notebook.cells, input.stamp, input.pages]);
      const card = {
        slug: input.slug,
        title: input.slug,
        question: "",
        summary: "",
        preview: null,
        answer: null,
      };
      const files = [{ path: `tables/${input.slug}-x.csv`, bytes: new TextEncoder().encode("1") }];
      return Promise.resolve({ html: text, files, card });
    }),
  buildChanges: () => Promise.resolve((changes) => Promise.resolve(JSON.stringify(changes))),
  buildIndex: () => Promise.resolve((cards) => Promise.resolve(JSON.stringify(cards))),
});

async function report(more: Partial<ReportRequest> = {}) {
  ran = [];
  built = [];
  checked = [];
  recoverSite(project.root);
  return await publishSite({
    root: project.root,
    names: [],
    fresh: false,
    twice: false,
    refill: false,
    signal: new AbortController().signal,
    progress: SILENT,
    makers: makers(),
    ...more,
  });
}

const site = () => Object.fromEntries(filesIn(`${project.root}/out`)!);
const why = () => explainReport({ root: project.root, names: [], makers: makers() });

beforeEach(() => {
  onRun = () => {};
  cellFaults = [];
  project = smallProject({
    library: false,
    notebooks: { "01-first.ipynb": first, "02-second.ipynb": second },
    files: {
      "data/evening/value.txt": "3",
      "lib/mod.ts": "export const x = 1;\n",
      "lib/runner.ts": "export const run = 1;\n",
      "lib/builder.ts": "export const build = 1;\n",
      "lib/live.ts": 'import "./moved.ts";\n',
      "lib/moved.ts": "export const drawn = 1;\n",
    },
  });
});
afterEach(() => project.remove());

describe("a report", () => {
  it("makes the whole site and writes outputs and numbers into the notebooks", async () => {
    const done = await report();
    expect(done).toMatchObject({ ran: 2, pages: 2, swapped: true });
    expect(Object.keys(site()).sort()).toEqual([
      "01-first.html",
      "02-second.html",
      "CITATION.cff",
      "SHA256SUMS",
      "data/evening.zip",
      "index.html",
      "site.json",
      "site.zip",
      "sitemap.txt",
      "source/data/evening/value.txt",
      "source/deno.json",
      "source/deno.lock",
      "source/lib/builder.ts",
      "source/lib/live.ts",
      "source/lib/mod.ts",
      "source/lib/moved.ts",
      "source/lib/runner.ts",
      "source/notebooks/01-first.ipynb",
      "source/notebooks/02-second.ipynb",
      "tables/01-first-x.csv",
      "tables/02-second-x.csv",
    ]);
    expect(project.read("out/source/notebooks/01-first.ipynb"))
      .toBe(project.read("notebooks/01-first.ipynb"));
    const written = parseNotebook(project.read("notebooks/01-first.ipynb"));
    expect(written.cells[0]!.source).toContain("It is [3](#value:glide/value).");
    expect(written.cells[1]).toMatchObject({ execution_count: 1 });
    const record = JSON.parse(project.read("out/site.json"));
    expect(record).toMatchObject({ madeBy: "lakeproof", commit: null });
    expect(record.pages[0]).toMatchObject({ page: "01-first.html", notebook: "01-first.ipynb" });
    for (const { file, sha256 } of record.files) expect(site()[file]).toBe(sha256);
  });

  it("publishes only the sessions that a notebook read, and all that lies in them", async () => {
    project.write("data/evening/designs.csv", "design\nalder\n");
    project.write("data/evening/raw/film.txt", "a film");
    project.write("data/evening/.hidden", "x");
    project.write("data/private/glides.csv", "run\n1\n");
    await report();
    expect(Object.keys(site()).filter((file) => file.startsWith("source/data/"))).toEqual([
      "source/data/evening/designs.csv",
      "source/data/evening/value.txt",
    ]);
  });

  it("with nothing changed runs, builds and writes nothing", async () => {
    await report();
    const link = Deno.readLinkSync(`${project.root}/out`);
    const done = await report();
    expect(done).toEqual({ ran: 0, pages: 2, swapped: false, written: [] });
    expect([ran, built]).toEqual([[], []]);
    expect(Deno.readLinkSync(`${project.root}/out`)).toBe(link);
    expect(why().map((one) => one.why)).toEqual([[], []]);
  });

  it("runs again only what a change of data reaches, and says what moved", async () => {
    await report();
    project.write("data/evening/value.txt", "4");
    expect(why()[0]).toEqual({ file: "01-first.ipynb", why: ["data/evening/value.txt changed"] });
    expect(why()[1]!.why).toEqual([]);
    await expect(report()).rejects.toThrow('it says "3", but the fresh value is "4"');
    expect([ran, checked]).toEqual([["First"], []]);
    // The run is kept, the stale sentence still stops.
    await expect(report()).rejects.toThrow("--refill");
    expect(ran).toEqual([]);
    expect(project.read("out/01-first.html")).toContain("[3](#value");
    const done = await report({ refill: true });
    expect(done).toMatchObject({ ran: 0, swapped: true, written: ["01-first.ipynb"] });
    expect(project.read("out/01-first.html")).toContain("[4](#value");
    expect(project.read("notebooks/01-first.ipynb")).toContain("[4](#value");
  });

  it("after a change of prose builds the page without running the cells", async () => {
    await report();
    const edited = project.read("notebooks/02-second.ipynb").replace(
      "# Second",
      "# Second thought",
    );
    project.write("notebooks/02-second.ipynb", edited);
    expect(await report()).toMatchObject({ ran: 0, swapped: true });
    // Both pages, since each names the other by its title.
    expect(built).toEqual(["01-first", "02-second"]);
    expect(project.read("out/01-first.html")).toContain("Second thought");
  });

  it("after a change of the builder builds the pages without running the cells", async () => {
    await report();
    project.write("lib/builder.ts", "export const build = 2;\n");
    expect(await report()).toMatchObject({ ran: 0 });
    expect(built).toEqual(["01-first", "02-second"]);
    project.write("lib/runner.ts", "export const run = 2;\n");
    expect(await report()).toMatchObject({ ran: 2 });
  });

  it("after a change of what runs in the reader's browser builds the pages anew", async () => {
    await report();
    project.write("lib/moved.ts", "export const drawn = 2;\n");
    expect(await report()).toMatchObject({ ran: 0 });
    expect(built).toEqual(["01-first", "02-second"]);
  });

  it("puts back outputs that somebody cleared, and a site that somebody damaged", async () => {
    await report();
    const good = [project.read("notebooks/01-first.ipynb"), site()] as const;
    project.notebook("01-first.ipynb", first);
    Deno.removeSync(`${project.root}/out/01-first.html`);
    project.write("out/tables/extra.csv", "2");
    expect(await report()).toMatchObject({ ran: 0, swapped: true, written: ["01-first.ipynb"] });
    expect([project.read("notebooks/01-first.ipynb"), site()]).toEqual(good);
  });

  it("gives the same site from a lost or damaged cache", async () => {
    await report();
    const good = site();
    for (const entry of [...Deno.readDirSync(`${project.root}/.site/cache/contents`)]) {
      project.write(`.site/cache/contents/${entry.name}`, "damaged");
    }
    Deno.removeSync(`${project.root}/out/01-first.html`);
    project.write("notebooks/02-second.ipynb", project.read("notebooks/02-second.ipynb") + "\n");
    await report();
    expect(site()).toEqual(good);
    Deno.removeSync(`${project.root}/.site/cache`, { recursive: true });
    expect(await report()).toMatchObject({ ran: 2, swapped: false });
    expect(site()).toEqual(good);
  });

  it("with --fresh runs all, and a named notebook alone runs alone", async () => {
    await report();
    expect(await report({ fresh: true })).toMatchObject({ ran: 2, swapped: false, written: [] });
    expect(await report({ fresh: true, names: ["02-second"] })).toMatchObject({ ran: 1, pages: 2 });
    expect(ran).toEqual(["Second"]);
    project.write("data/evening/value.txt", "4");
    const lines: string[] = [];
    const progress = { ...SILENT, say: (line: string) => void lines.push(line) };
    expect(await report({ names: ["02-second"], progress })).toMatchObject({ ran: 0, pages: 2 });
    expect(lines.join()).toContain("01-first.ipynb stays as published before");
    await expect(report({ names: ["02-secnd"] })).rejects.toThrow('Did you mean "02-second"?');
  });

  it("that fails leaves the site and the notebooks as they were, and names cell and line", async () => {
    await report();
    const good = [site(), project.read("notebooks/01-first.ipynb")];
    const broken = notebookOf(prose("# Second", "a"), code("//\nthrow x", "b"));
    project.notebook("02-second.ipynb", broken);
    const text = project.read("notebooks/02-second.ipynb");
    await expect(report()).rejects.toThrow(/02-second\.ipynb, code cell 1 .*line 2:\n {4}throw x/);
    expect([site(), project.read("notebooks/01-first.ipynb")]).toEqual(good);
    expect(project.read("notebooks/02-second.ipynb")).toBe(text);
  });

  it("stops at what the type checker has against a cell, each time until it is mended", async () => {
    cellFaults = [{ file: "02-second.ipynb", words: "02-second.ipynb: a number is no text" }];
    await expect(report()).rejects.toThrow("a number is no text");
    await expect(report()).rejects.toThrow("a number is no text");
    expect([ran, checked]).toEqual([["Second"], ["02-second.ipynb"]]);
    cellFaults = [];
    expect(await report()).toMatchObject({ ran: 1, swapped: true });
  });

  it("fails when a file of the project changed under the kernel, and keeps nothing of that run", async () => {
    onRun = (notebook) => {
      if (notebook.cells[0]!.source.startsWith("# First")) {
        project.write("data/evening/new.csv", "1");
      }
    };
    await expect(report()).rejects.toThrow(
      /01-first.ipynb ran, .*\n.*data\/evening\/new.csv is new/,
    );
    expect(filesIn(`${project.root}/out`)).toBeNull();
    onRun = () => {};
    expect(await report()).toMatchObject({ ran: 2 });
  });

  it("with --twice fails at the first cell whose bytes differ between two clean kernels", async () => {
    await report({ twice: true });
    expect(ran).toEqual(["First", "First", "Second", "Second"]);
    const request = makers();
    let runs = 0;
    const drifting: Makers = {
      ...request,
      run: () =>
        Promise.resolve((notebook) => {
          const done = fakeRun(notebook);
          const cells = done.notebook.cells.map((cell) =>
            cell.cell_type === "code"
              ? {
                ...cell,
                outputs: [
                  { output_type: "stream", name: "stdout", text: `run ${runs++}` } as const,
                ],
              }
              : cell
          );
          return Promise.resolve({ ...done, notebook: { ...done.notebook, cells } });
        }),
    };
    await expect(report({ twice: true, makers: drifting }))
      .rejects.toThrow(/01-first.ipynb, code cell 1 [^]*run 0[^]*run 1/);
  });

  it("stops when asked to, with the last site in place", async () => {
    await report();
    const good = site();
    project.write("data/evening/value.txt", "4");
    const stop = new AbortController();
    onRun = () => stop.abort(new Error("Stopped."));
    await expect(report({ signal: stop.signal })).rejects.toThrow("Stopped.");
    expect(site()).toEqual(good);
    expect(ran).toEqual(["First"]);
  });

  it("does not write over a notebook that somebody saved meanwhile", async () => {
    const lines: string[] = [];
    const progress = { ...SILENT, say: (line: string) => void lines.push(line) };
    const slow = makers();
    const request: Makers = {
      ...slow,
      buildIndex: async () => {
        project.write("notebooks/01-first.ipynb", "somebody's own");
        return await slow.buildIndex();
      },
    };
    expect((await report({ makers: request, progress })).written).toEqual(["02-second.ipynb"]);
    expect(project.read("notebooks/01-first.ipynb")).toBe("somebody's own");
    expect(lines.join()).toContain("were not written back");
  });

  it("refuses an empty project, and two notebooks that make one page", async () => {
    project.write("notebooks/01-First.ipynb", project.read("notebooks/01-first.ipynb"));
    await expect(report()).rejects.toThrow("already is 01-first.html");
    Deno.removeSync(`${project.root}/notebooks`, { recursive: true });
    await expect(report()).rejects.toThrow("there is no notebook");
  });
});
