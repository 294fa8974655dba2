import { describe, expect, it } from "vitest";
import { kernelForm } from "lakeproof/publish/kernel-form.ts";

describe("the kernel's form of a cell", () => {
  it("keeps every line where it was", () => {
    const source =
      `// first\nimport {\n  a,\n} from "x"; // why\n\n// lost\nexport const b = a;\nb;`;
    const form = kernelForm(source);
    expect(form.split("\n")).toEqual([
      "// first",
      "await (",
      "",
      "0);       ",
      "",
      "       ",
      "       const b = a;",
      "b;",
    ]);
  });

  it("leaves alone what only looks like a comment or an import", () => {
    const source =
      "const a = `// x`;\nimport type { B } from 'b';\nconst c = import('c');\nimport.meta;";
    expect(kernelForm(source)).toBe(source);
  });
});
