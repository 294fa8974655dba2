import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { parseNotebook } from "lakeproof/publish/notebook.ts";
import { filesIn } from "lakeproof/publish/site.ts";
import { code, notebookOf, prose } from "../support/example-notebook.ts";
import { runReport, startReport } from "../support/run-report.ts";
import { type SmallProject, smallProject } from "../support/small-project.ts";
import { TINY_DATA, tinyNotebook } from "../support/tiny-notebook.ts";

// The real task, kernel and page builder on two tiny notebooks.

/** Moments at which the report is killed, spread over its run. */
const MOMENTS = Number(Deno.env.get("LAKEPROOF_KILL_MOMENTS") ?? 6);

let project: SmallProject;

beforeAll(() => {
  project = smallProject({
    notebooks: {
      "01-first.ipynb": tinyNotebook("First"),
      "02-second.ipynb": tinyNotebook("Second", 200),
    },
    files: { "data/evening/glides.csv": TINY_DATA },
  });
});
afterAll(() => project.remove());

const site = () => Object.fromEntries(filesIn(`${project.root}/out`) ?? []);

/** Whether a site is complete: it holds exactly the files that its own record names, with their bytes. */
function complete(): boolean {
  const { "site.json": record, SHA256SUMS: list, "site.zip": packed, ...files } = site();
  if (record === undefined || list === undefined || packed === undefined) return false;
  const named: { file: string; sha256: string }[] = JSON.parse(project.read("out/site.json")).files;
  return named.length === Object.keys(files).length &&
    named.every((one) => files[one.file] === one.sha256);
}

describe("task report", () => {
  it("makes a site from notebooks run in the real kernel", async () => {
    const { code, output } = await runReport(project.root);
    expect(output).toContain("Open out/index.html");
    expect(code).toBe(0);
    expect(complete()).toBe(true);
    expect(project.read("out/01-first.html")).toContain("1.25");
    const record = JSON.parse(project.read("out/answers/01-first-glide.json"));
    expect(record.ratio).toBe(1.25);
    const notebook = parseNotebook(project.read("notebooks/01-first.ipynb"));
    expect(notebook.cells[0]!.source).toContain("[1.25](#value:glide/ratio)");
  });

  it("reuses all when nothing changed, and takes under a second by its own clock", async () => {
    const before = site();
    const { code, output } = await runReport(project.root);
    expect(code).toBe(0);
    expect(output).toMatch(/no notebook had to run, 0\.\d s/);
    expect(site()).toEqual(before);
    expect((await runReport(project.root, ["--why"])).output).toContain("nothing changed, reused");
  });

  it("names the data that a cell itself read, when they change", async () => {
    project.write("data/evening/glides.csv", TINY_DATA.replace("25", "26"));
    const { code, output } = await runReport(project.root, ["--why"]);
    expect(code).toBe(0);
    expect(output).toContain("01-first.ipynb: data/evening/glides.csv changed\n");
    project.write("data/evening/glides.csv", TINY_DATA);
  });

  it("gives the same bytes in two clean kernels, and in notebooks and site on a fresh run", async () => {
    const before = [site(), project.read("notebooks/01-first.ipynb")];
    const { code, output } = await runReport(project.root, ["--twice"]);
    expect(output).toContain("2 run anew");
    expect(code).toBe(0);
    expect([site(), project.read("notebooks/01-first.ipynb")]).toEqual(before);
  });

  it("stops a notebook that writes, starts a program or reaches out, with the last site in place", async () => {
    const before = site();
    for (
      const [cell, words] of [
        [`await Deno.writeTextFile("data/x.csv", "x")`, "tried to write"],
        [`new Deno.Command("ls").outputSync()`, "tried to start ls"],
        [`await fetch("https://lake.invalid/")`, "tried to reach lake.invalid"],
      ] as const
    ) {
      project.notebook("03-reaching.ipynb", notebookOf(prose("# Reaching", "a"), code(cell, "b")));
      const { code: exit, output } = await runReport(project.root);
      expect(output).toContain("03-reaching.ipynb, code cell 1 (cell 2 of all), line 1:");
      expect(output).toContain(words);
      expect(exit).toBe(1);
      expect(site()).toEqual(before);
    }
    Deno.removeSync(`${project.root}/notebooks/03-reaching.ipynb`);
  });

  it("says what moved since the last site, and takes that back when it fails", async () => {
    project.write("data/evening/glides.csv", TINY_DATA.replace("25", "26"));
    const failed = await runReport(project.root, ["--since", "out"]);
    expect(failed.code).toBe(1);
    expect(failed.output).toContain('it says "1.25", but the fresh value is "1.3"');
    expect(() => project.read("notebooks/since.json")).toThrow();
    const { code: exit, output } = await runReport(project.root, ["--since", "out", "--refill"]);
    expect(exit).toBe(0);
    expect(output).toContain("Since out: ");
    expect(output).toContain("Data: data/evening/glides.csv changed");
    expect(JSON.parse(project.read("out/changes.json")).causes.data)
      .toEqual(["data/evening/glides.csv changed"]);
    expect(project.read("out/changes.html")).toContain("data/evening/glides.csv changed");
    expect(project.read("out/index.html")).toContain('href="changes.html"');
    expect(complete()).toBe(true);
    Deno.removeSync(`${project.root}/notebooks/since.json`);
    project.write("data/evening/glides.csv", TINY_DATA);
    expect((await runReport(project.root, ["--refill"])).code).toBe(0);
    expect(Object.keys(site())).not.toContain("changes.html");
  });

  it("that fails exits 1 with notebook, cell and line, and leaves the last site", async () => {
    const before = site();
    const first = project.read("notebooks/01-first.ipynb");
    project.notebook(
      "03-broken.ipynb",
      notebookOf(prose("# Broken"), code("const a: number = 1;\n\nthrow new Error(`lost ${a}`);")),
    );
    const { code: exit, output } = await runReport(project.root);
    expect(exit).toBe(1);
    expect(output).toMatch(/03-broken\.ipynb, code cell 1 .*line 3:/);
    expect(output).toContain("Error: lost 1");
    expect([site(), project.read("notebooks/01-first.ipynb")]).toEqual([before, first]);
    Deno.removeSync(`${project.root}/notebooks/03-broken.ipynb`);
  });

  it("told to stop ends its kernel, exits 130 and leaves the last site", async () => {
    const before = site();
    const sleeps = notebookOf(
      prose("# Sleeps"),
      code("await new Promise((done) => setTimeout(done, 60_000));"),
    );
    project.notebook("03-sleeps.ipynb", sleeps);
    const report = startReport(project.root);
    try {
      // Long enough for the kernel to be at the cell that sleeps; shorter than its sleep by far.
      await new Promise((done) => setTimeout(done, 3_000));
      report.signal("SIGTERM");
      const { code: exit, output } = await report.ended;
      expect(output).toContain("Stopped.");
      expect(exit).toBe(130);
      expect(await report.anyLeft()).toBe(false);
      expect(site()).toEqual(before);
    } finally {
      report.kill();
      Deno.removeSync(`${project.root}/notebooks/03-sleeps.ipynb`);
    }
  });

  it("started twice at once lets the second wait for the first", async () => {
    const both = [runReport(project.root, ["--twice"]), runReport(project.root, ["--twice"])];
    const ends = await Promise.all(both);
    expect(ends.map((one) => one.code)).toEqual([0, 0]);
    expect(ends.filter((one) => one.output.includes("waiting for it to end"))).toHaveLength(1);
    expect(complete()).toBe(true);
  });

  it("asked wrongly exits 2 with a guess", async () => {
    const flag = await runReport(project.root, ["--frsh"]);
    expect([flag.code, flag.output]).toEqual([2, expect.stringContaining("--fresh")]);
    const name = await runReport(project.root, ["01-frist"]);
    expect([name.code, name.output]).toEqual([2, expect.stringContaining("01-first")]);
  });

  it(`killed at ${MOMENTS} moments leaves the last site or the whole new one`, async () => {
    const start = performance.now();
    expect((await runReport(project.root, ["--fresh"])).code).toBe(0);
    const duration = performance.now() - start;
    let fell = 0;
    for (let moment = 0; moment < MOMENTS; moment++) {
      // Each run would make another site, since its data differ from the last run's.
      project.write("data/evening/glides.csv", TINY_DATA.replace("25", String(30 + moment)));
      const before = site();
      const report = startReport(project.root, ["--fresh", "--refill"]);
      await new Promise((done) => setTimeout(done, duration * (moment + 0.5) / MOMENTS));
      report.kill();
      const { code } = await report.ended;
      if (code === null) fell++;
      const after = site();
      if (JSON.stringify(after) !== JSON.stringify(before)) {
        expect(complete()).toBe(true);
        expect(after["01-first.html"]).not.toBe(before["01-first.html"]);
      }
      for (const file of ["01-first.ipynb", "02-second.ipynb"]) {
        parseNotebook(project.read(`notebooks/${file}`), file);
      }
    }
    // Most kills must fall into the run for this to show anything; the last may come after its end.
    expect(fell).toBeGreaterThanOrEqual(Math.floor(MOMENTS / 2));
    const { code, output } = await runReport(project.root, ["--refill"]);
    expect(output).toContain("Open out/index.html");
    expect(code).toBe(0);
    expect(complete()).toBe(true);
    expect([...Deno.readDirSync(`${project.root}/.site/sites`)]).toHaveLength(1);
    expect([...Deno.readDirSync(`${project.root}/notebooks`)].map((one) => one.name).sort())
      .toEqual(["01-first.ipynb", "02-second.ipynb"]);
  }, 60_000 + MOMENTS * 20_000);
});
