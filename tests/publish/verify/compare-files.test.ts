import { describe, expect, it } from "vitest";
import { formatNotebook } from "lakeproof/publish/notebook.ts";
import { zipFiles } from "lakeproof/publish/zip-files.ts";
import { compareFiles } from "lakeproof/publish/verify/compare-files.ts";
import { notebookOf, prose, shown } from "../../support/example-notebook.ts";

const bytes = (text: string) => new TextEncoder().encode(text);
const found = (file: string, published: string, fresh: string) =>
  compareFiles(file, bytes(published), bytes(fresh)).map((one) => `${one.kind}: ${one.what}`);

const page = (parts: { prose?: string; caption?: string; point?: string; sum?: string }) =>
  `<!DOCTYPE html>
<html><head><title>A page</title></head>
<main id="main"><article>
<h2 id="result">Result</h2>
<p>Birch goes ${parts.prose ?? "1.18"} times as far.</p>
<figure class="figure" id="figure-1" aria-labelledby="figure-1-label">
<div class="wide"><svg class="drawing"><path d="M0,0L${parts.point ?? "10"},20"/></svg></div>
<figcaption><b id="figure-1-label">Figure 1.</b> Birch ${
    parts.caption ?? "lies above"
  }.</figcaption>
</figure>
</article></main>
<footer><section class="stamp" id="stamp">
<dl><dt>Data</dt><dd>${parts.sum ?? "ba7816bf"}</dd></dl>
</section></footer>
</html>`;

describe("a file that differs", () => {
  it("of a page is told by the part and the words", () => {
    expect(found("a.html", page({ prose: "1.28" }), page({}))).toEqual([
      expect.stringMatching(/^prose: part "result": it says ".*1\.28 times.*1\.18 times/),
    ]);
    expect(found("a.html", page({ caption: "lies below" }), page({}))[0])
      .toMatch(/^figure: Figure 1, caption: .*below.*above/);
    expect(found("a.html", page({ point: "11" }), page({}))[0])
      .toMatch(/^figure: Figure 1, drawing/);
    expect(found("a.html", page({ sum: "ba7816be" }), page({}))[0]).toMatch(/^stamp: the stamp/);
  });

  it("of a table is told by row and column", () => {
    expect(
      found("tables/a.csv", "design,mean [m]\r\nalder,21\r\n", "design,mean [m]\r\nalder,20\r\n"),
    )
      .toEqual(['table: row 2, mean [m]: it says "21", a fresh run gives "20"']);
    expect(found("tables/a-decimal-comma.csv", "a;b\r\n1,5;2\r\n", "a;b\r\n1,5;3\r\n"))
      .toEqual(['table: row 2, b: it says "2", a fresh run gives "3"']);
    expect(found("tables/a.csv", "a\n1\n", "a\r\n1\r\n")[0]).toContain("same cells");
  });

  it("of a notebook is told by the cell", () => {
    const notebook = (ratio: number) =>
      formatNotebook(notebookOf(prose("# Title", "a"), shown("glide", { ratio }, "b")));
    expect(found("source/notebooks/a.ipynb", notebook(2), notebook(3))[0])
      .toMatch(/^notebook: cell 2: it holds ".*2.*a fresh run gives ".*3/);
    expect(found("source/notebooks/a.ipynb", notebook(3).replace(/\n$/, "\n\n"), notebook(3))[0])
      .toContain("outside its cells");
  });

  it("of a notebook that can't be read is told as such", () => {
    const whole = formatNotebook(notebookOf(prose("# Title", "a")));
    expect(found("source/notebooks/a.ipynb", whole.slice(2), whole))
      .toEqual(["notebook: can't be read as a notebook"]);
  });

  it("of packed files is told by the file inside", () => {
    const zip = (text: string) => zipFiles([{ file: "x/a.csv", bytes: bytes(text) }]);
    expect(compareFiles("data/x.zip", zip("1"), zip("2"))).toEqual([
      { kind: "file", file: "data/x.zip", what: "holds another x/a.csv than a fresh run packs" },
    ]);
    expect(compareFiles("data/x.zip", bytes("no zip"), zip("2"))[0]!.what).toContain("unpacked");
  });

  it("of any other kind is told by the line, and a picture as a whole", () => {
    expect(found("figures/a.svg", "<svg>\n<path d='M1'/>", "<svg>\n<path d='M2'/>")[0])
      .toMatch(/^figure: line 2: .*M1.*M2/);
    expect(found("figures/a.png", "a", "b")[0]).toMatch(/^figure: is not the picture/);
    expect(found("site.json", '{"commit": 1}', '{"commit": 2}')[0]).toMatch(/^stamp: line 1/);
  });
});
