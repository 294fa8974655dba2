import { afterEach, describe, expect, it } from "vitest";
import { codeInputs, dataInputs, projectState, whatMoved } from "lakeproof/publish/cache-key.ts";
import { code, notebookOf, prose } from "../support/example-notebook.ts";
import { type SmallProject, smallProject } from "../support/small-project.ts";

let project: SmallProject;
afterEach(() => project?.remove());

function make(): SmallProject {
  project = smallProject({
    library: false,
    notebooks: {},
    files: {
      "lib/mod.ts": 'export * from "./a.ts";\nimport type { T } from "./types.ts";\n',
      "lib/a.ts":
        'import { b } from "./deep/b.ts";\nimport { ode } from "odex";\nexport const a = b;\n',
      "lib/deep/b.ts": 'export const b = 1;\nexport const late = () => import("./late.ts");\n',
      "lib/deep/late.ts": "export const late = 1;\n",
      "lib/types.ts": "export type T = 1;\n",
      "lib/other.ts": "export const other = 1;\n",
      "lib/runner.ts": "export const run = 1;\n",
      "data/evening/glides.csv": "run\n1\n",
      "data/evening/designs.csv": "design\nalder\n",
    },
  });
  return project;
}

const notebook = notebookOf(
  prose("# Title"),
  code('import { a } from "lakeproof";', "one"),
  code("a + 1;", "two"),
);

function inputsNow(of = notebook) {
  return codeInputs(of, projectState(project.root), `${project.root}/lib/runner.ts`);
}

describe("what a notebook's outputs rest on", () => {
  it("are its code cells, every module that they reach, Deno, the lock and the settings", () => {
    make();
    const { inputs, packages } = inputsNow();
    expect(Object.keys(inputs).sort()).toEqual([
      "Deno",
      "deno.json",
      "deno.lock",
      "lib/a.ts",
      "lib/deep/b.ts",
      "lib/deep/late.ts",
      "lib/mod.ts",
      "lib/runner.ts",
      "the code cells",
    ]);
    expect(packages).toEqual(["odex"]);
  });

  it("name the one thing that moved, and nothing else does", () => {
    make();
    const before = inputsNow().inputs;
    const movedBy = (path: string, text: string) => {
      const old = project.read(path);
      project.write(path, text);
      const moved = whatMoved(before, inputsNow().inputs);
      project.write(path, old);
      return moved;
    };
    expect(movedBy("lib/deep/b.ts", "export const b = 2;\n")[0]).toBe("lib/deep/b.ts changed");
    expect(movedBy("lib/deep/late.ts", "export const late = 2;\n")).toEqual([
      "lib/deep/late.ts changed",
    ]);
    expect(movedBy("lib/other.ts", "export const other = 2;\n")).toEqual([]);
    expect(movedBy("lib/types.ts", "export type T = 2;\n")).toEqual([]);
    expect(movedBy("deno.lock", "{}")).toEqual(["deno.lock changed"]);
    const settings = JSON.parse(project.read("deno.json"));
    settings.tasks.x = "echo";
    expect(movedBy("deno.json", JSON.stringify(settings))).toEqual([]);
    settings.imports.odex = "npm:odex@2.0.3";
    expect(movedBy("deno.json", JSON.stringify(settings))).toEqual(["deno.json changed"]);
    expect(movedBy("lib/runner.ts", "export const run = 2;")).toEqual(["lib/runner.ts changed"]);
  });

  it("move with code but not with prose or outputs", () => {
    make();
    const before = inputsNow().inputs;
    const [title, one, two] = notebook.cells;
    const moved = (of: typeof notebook) => whatMoved(before, inputsNow(of).inputs);
    expect(moved(notebookOf(prose("# Another"), one!, two!))).toEqual([]);
    expect(moved(notebookOf(title!, one!, { ...two!, source: "a + 2;" } as typeof two & object)))
      .toEqual(["the code cells changed"]);
  });

  it("count the data read by bytes, and each folder by its list of files", () => {
    make();
    const root = project.root;
    const read = [`${root}/data/evening/designs.csv`, `${root}/data/evening/glides.csv`];
    const before = dataInputs(root, read);
    const moved = () => whatMoved(before, dataInputs(root, read));
    expect(moved()).toEqual([]);
    project.write("data/evening/glides.csv", "run\n2\n");
    expect(moved()).toEqual(["data/evening/glides.csv changed"]);
    project.write("data/evening/glides.csv", "run\n1\n");
    expect(moved()).toEqual([]);
    project.write("data/evening/tow.csv", "point\n");
    expect(moved()).toEqual(["the list of files in data/evening/ changed"]);
    Deno.removeSync(`${root}/data/evening/tow.csv`);
    Deno.removeSync(`${root}/data/evening/glides.csv`);
    expect(moved()).toContain("data/evening/glides.csv is gone");
  });
});
