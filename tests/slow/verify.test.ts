import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { runReport } from "../support/run-report.ts";
import { runTask } from "../support/run-task.ts";
import { PROJECT, type SmallProject, smallProject } from "../support/small-project.ts";
import { TINY_DATA, tinyNotebook } from "../support/tiny-notebook.ts";

// The real task on the site of two tiny notebooks, copied away from the project that made it.

let project: SmallProject;
let copy: string;
let reported: string;

async function copyOf(folder: string): Promise<string> {
  const parent = await Deno.makeTempDir({ prefix: "lakeproof-copy-" });
  const to = `${parent}/another name, with spaces é`;
  await new Deno.Command("cp", { args: ["-rL", folder, to] }).output();
  return to;
}

beforeAll(async () => {
  project = smallProject({
    notebooks: {
      "01-first.ipynb": tinyNotebook("First"),
      "02-second.ipynb": tinyNotebook("Second"),
    },
    files: { "data/evening/glides.csv": TINY_DATA },
  });
  const report = await runReport(project.root);
  expect(report.code).toBe(0);
  reported = report.output;
  copy = await copyOf(`${project.root}/out`);
}, 900_000);
afterAll(() => {
  project.remove();
  Deno.removeSync(`${copy}/..`, { recursive: true });
});

/** Checks a copy in which one file was changed, and puts the file back. */
async function changed(file: string, change: (text: string) => string) {
  const path = `${copy}/${file}`;
  const text = Deno.readTextFileSync(path);
  const other = change(text);
  expect(other).not.toBe(text);
  Deno.writeTextFileSync(path, other);
  const end = await runTask("verify", [copy]);
  Deno.writeTextFileSync(path, text);
  return end;
}

describe("task verify", () => {
  it("says same of an untouched copy under another name, time zone and language", async () => {
    const env = { TZ: "Pacific/Chatham", LANG: "de_DE.UTF-8", LC_ALL: "de_DE.UTF-8" };
    const { code, output } = await runTask("verify", [copy], { env });
    expect(output).toContain("Same: everything in this folder");
    expect(output).not.toContain("Published with");
    expect(code).toBe(0);
  });

  it("leaves the folder as it was", async () => {
    const list = () =>
      new Deno.Command("find", { args: [copy, "-printf", "%p %T@\\n"] }).output()
        .then((output) => new TextDecoder().decode(output.stdout));
    const before = await list();
    await runTask("verify", [copy]);
    expect(await list()).toBe(before);
  });

  // The kernel of this system can take the network away from a command and all that it starts.
  it.runIf(Deno.build.os === "linux")("says same where there is no network at all", async () => {
    const before = ["unshare", "-rn", "sh", "-c", 'ip link set lo up; exec "$0" "$@"'];
    const probe = await new Deno.Command("unshare", { args: ["-rn", "true"] }).output();
    if (!probe.success) return;
    const { code, output } = await runTask("verify", [copy], { before });
    expect(output).toContain("Same: everything in this folder");
    expect(code).toBe(0);
  });

  it("says same when the folder checks itself with its own library", async () => {
    const own = await copyOf(copy);
    Deno.symlinkSync(`${PROJECT}/node_modules`, `${own}/source/node_modules`);
    const { code, output } = await runTask("verify", [".."], { cwd: `${own}/source` });
    expect(output).toContain("Same: everything in this folder");
    expect(code).toBe(0);
    Deno.removeSync(`${own}/..`, { recursive: true });
  });

  it("says same of the site packed in one file, and takes a fingerprint that was kept", async () => {
    const packed = [`${copy}/site.zip`];
    const { code, output } = await runTask("verify", packed);
    expect(output).toContain("Same: everything in this folder");
    expect(code).toBe(0);
    expect(reported).toContain(/Fingerprint of this folder: ([0-9a-f]{64})/.exec(output)![1]);
    const print = /Fingerprint of this folder: ([0-9a-f]{64})/.exec(output)![1]!;
    expect((await runTask("verify", [...packed, "--fingerprint", print.slice(0, 12)])).code).toBe(
      0,
    );
    const other = await runTask("verify", [...packed, "--fingerprint", "0123456789ab"]);
    expect(other.output).toContain(`gives the fingerprint ${print}, but 0123456789ab was kept`);
    expect(other.code).toBe(1);
    expect((await runTask("verify", [...packed, "--fingerprint", "x"])).code).toBe(2);
  });

  it("checks one page by its address on disk", async () => {
    const { code, output } = await runTask("verify", [`${copy}/02-second.html`]);
    expect(output).toContain("1 notebook run again");
    expect(output).not.toContain("01-first");
    expect(code).toBe(0);
  });

  it("names a digit changed in a page, its sentence and the fresh one", async () => {
    const { code, output } = await changed("01-first.html", (text) => text.replace("1.25", "1.35"));
    expect(output).toMatch(/01-first\.html: .*1\.35.*1\.25/);
    expect(output).toContain("01-first.html: does not have the checksum");
    expect(code).toBe(1);
  });

  it("names a result changed in an answer, in units of nothing where it has no uncertainty", async () => {
    const { code, output } = await changed(
      "answers/01-first-glide.json",
      (text) => text.replace("1.25", "1.35"),
    );
    expect(output).toContain("ratio: published 1.35, a fresh run gives 1.25");
    expect(code).toBe(1);
  });

  it("names what a changed byte of data does to prose, answers and stamps", async () => {
    const { code, output } = await changed(
      "source/data/evening/glides.csv",
      (text) => text.replace("25", "26"),
    );
    expect(output).toContain("source/data/evening/glides.csv: does not have the checksum");
    expect(output).toContain('it says "1.25", but the fresh value is "1.3"');
    expect(output).toContain("ratio: published 1.25, a fresh run gives 1.3");
    expect(output).toMatch(/Stamps:/);
    expect(code).toBe(1);
  });

  it("names the cell at which a changed notebook stops", async () => {
    const { code, output } = await changed(
      "source/notebooks/01-first.ipynb",
      (text) => text.replace("await Deno.readTextFile", "await Deno.writeTextFile"),
    );
    expect(output).toContain("01-first.ipynb, code cell 2 (cell 3 of all), line 1:");
    expect(output).toContain("notebooks may only read");
    expect(code).toBe(1);
  });

  it("stops a notebook that writes, starts a program or reaches out, and says so", async () => {
    const attempts = [
      [`await Deno.writeTextFile("/x.txt", "x")`, "tried to write /x.txt"],
      [`new Deno.Command("ls").outputSync()`, "tried to start ls"],
      [`await fetch("https://lake.invalid/")`, "tried to reach lake.invalid"],
    ] as const;
    for (const [code, words] of attempts) {
      const { code: exit, output } = await changed(
        "source/notebooks/02-second.ipynb",
        (text) =>
          text.replace(
            /const text = await Deno\.readTextFile\([^)]*\);/,
            (old) => JSON.stringify(`${code}; `).slice(1, -1) + old,
          ),
      );
      expect(output).toContain("02-second.ipynb, code cell 2 (cell 3 of all), line 1:");
      expect(output).toContain(words);
      expect(exit).toBe(1);
    }
  });

  it("asks for a folder that can be run again", async () => {
    const nothing = await Deno.makeTempDir();
    expect(await runTask("verify", [nothing])).toMatchObject({ code: 2 });
    expect((await runTask("verify", [`${nothing}/none`])).output).toContain("no such folder");
    expect((await runTask("verify", [`${copy}/site.json`])).output).toContain("give a page");
    Deno.removeSync(nothing, { recursive: true });
  });
});
