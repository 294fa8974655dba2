import { describe, expect, it } from "vitest";
import { article } from "lakeproof/publish/page/article.ts";
import { headingId } from "lakeproof/publish/page/markdown-parser.ts";
import { PageState } from "lakeproof/publish/page/page-state.ts";
import { CANNOT_TELL, code, display, markdown, notebookOf } from "../../pages/sample-notebook.ts";
import { MEDIA } from "lakeproof/base/records.ts";

const html = (...sources: string[]) =>
  article(notebookOf(sources.map(markdown)), new PageState("slug")).html;

describe("the article of a notebook", () => {
  it("finds a note that stands in a later cell, and numbers notes over the whole page", () => {
    const page = html("One.[^b]", "Two.[^a] Again.[^b]", "[^a]: Note a.\n[^b]: Note b.");
    expect(page).toContain('<a href="#note-1" id="note-1-text" aria-label="Note 1">1</a>');
    expect(page).toContain('<a href="#note-1" id="note-1-2-text" aria-label="Note 1">1</a>');
    expect(page).toContain('<a href="#note-2" id="note-2-text" aria-label="Note 2">2</a>');
    expect(page.indexOf("Note b.")).toBeLessThan(page.indexOf("Note a."));
    expect(page.match(/id="notes"/g)).toHaveLength(1);
  });

  it("ends an open fence with its cell", () => {
    expect(html("```\nopen", "## After")).toContain('<h2 id="after">');
  });

  it("gives two headings of the same words two ids", () => {
    const page = html("## Runs", "## Runs");
    expect(page).toContain('<h2 id="runs"><a class="anchor" href="#runs">Runs</a></h2>');
    expect(page).toMatch(/<h2 id="runs-[12]">/);
  });

  it("keeps bound words in headings as words, and other links there as their text", () => {
    const page = html("## Further by [1.18](#value:a/b) than [this](https://example.org)");
    expect(page).toContain('by <span class="value">1.18</span> than this</a></h2>');
    expect(page.match(/<a /g)).toHaveLength(1);
  });

  it("turns a link to a notebook beside it into a link to that notebook's page", () => {
    expect(html("[a](90-how.ipynb#x) [b](./01-which.ipynb) [c](https://example.org/a.ipynb)"))
      .toContain(
        '<a href="90-how.html#x">a</a> <a href="01-which.html">b</a> <a href="https://example.org/a.ipynb">c</a>',
      );
  });

  it("keeps a number and its unit on one line", () => {
    expect(html("From 3.8 m/s it goes 18 m ± 1 m, 5 % more; see Figure 2. In 3 more months."))
      .toContain(
        "From 3.8\u00a0m/s it goes 18\u00a0m\u00a0±\u00a01\u00a0m, 5\u00a0% more; see Figure\u00a02. In 3 more months.",
      );
  });

  it("leaves HTML in Markdown as text, and loads no picture from elsewhere", () => {
    const page = html("<b onclick=x>bold</b> ![a lake](https://example.org/lake.png)");
    expect(page).toContain("&lt;b onclick=x&gt;");
    expect(page).toContain('<a href="https://example.org/lake.png">a lake</a>');
    expect(page).not.toContain("<img");
  });

  it("shows a picture that was pasted into the cell", () => {
    const cell = {
      ...markdown("![a lake](attachment:lake.png)"),
      attachments: { "lake.png": { "image/png": "iVBORw0KGgo=" } },
    };
    const page = article(notebookOf([cell as ReturnType<typeof markdown>]), new PageState("slug"));
    expect(page.html).toContain('<img src="data:image/png;base64,iVBORw0KGgo=" alt="a lake">');
  });

  it("takes the first blockquote as the question, unless it is a caution", () => {
    const page = article(
      notebookOf([markdown("# T\n\n> **Caution** Deep.\n\n> Which one?\n\nSo.\n\n> A quote.")]),
      new PageState("slug"),
    );
    expect(page.question).toBe("Which one?");
    expect(page.summary).toBe("So.");
    expect(page.html).toContain(
      '<section class="box caution" id="caution-1" role="note" aria-labelledby="caution-1-title">',
    );
    expect(page.html.match(/class="question"/g)).toHaveLength(1);
  });

  it("lets the answer box take over a heading that says it is the answer, prose in between or not", () => {
    const answer = code("show", [display({ [MEDIA.answer]: CANNOT_TELL })]);
    const page = article(
      notebookOf([markdown("# T"), markdown("## The short answer\n\nWords."), answer]),
      new PageState("slug"),
    ).html;
    expect(page.match(/The short answer/g)).toHaveLength(1);
    expect(page.indexOf("Words.")).toBeLessThan(page.indexOf('<h2 id="answer-title">'));
    const other = article(
      notebookOf([markdown("# T"), markdown("## Cedar\n\nWords."), answer]),
      new PageState("slug"),
    ).html;
    expect(other).toContain('<h2 id="cedar">');
    expect(other).toContain('<h2 id="answer-title">The short answer</h2>');
  });

  it("gives no heading an id that a numbered part has", () => {
    expect(headingId("Figure 1")).toBe("on-figure-1");
    expect(headingId("Note 1")).toBe("on-note-1");
    expect(headingId("Main")).toBe("on-main");
    expect(headingId("The data")).toBe("data");
    expect(headingId("Évidence & Σ")).toBe("evidence");
    expect(headingId("Σ")).toBe("part");
  });
});
