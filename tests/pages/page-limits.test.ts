import { describe, expect, it } from "vitest";
import { MEDIA, type TableRecord } from "lakeproof/base/records.ts";
import { thinned } from "lakeproof/publish/page/figure-part.ts";
import { build } from "./built-page.ts";
import { code, display, markdown, notebookOf } from "./sample-notebook.ts";

describe("what can't be shown", () => {
  it("stops the page with the cell's number and the reason", async () => {
    await expect(build(notebookOf([markdown("# T"), markdown("$$\\frac{1$$")]))).rejects.toThrow(
      /cell 2: Cannot read the formula/,
    );
    const broken = code("x", [display({ [MEDIA.answer]: { name: "glide" } })]);
    await expect(build(notebookOf([markdown("# T"), broken]))).rejects.toThrow(
      /cell 2: Cannot show a record as application\/vnd.lakeproof.answer\+json/,
    );
  });
});

describe("the numbers of a figure", () => {
  const table = (count: number): TableRecord => ({
    name: "curve",
    caption: "A curve.",
    columns: [{ label: "speed", unit: "m/s", align: "right" }],
    rows: Array.from({ length: count }, (_, at) => [{ text: `${at}`, number: at, mark: null }]),
  });

  it("stand whole in the page up to forty rows, and thinned with first and last beyond", () => {
    expect(thinned(table(40))).toEqual({ shown: table(40), note: "" });
    for (const count of [41, 42, 77, 78, 126, 1000]) {
      const { shown, note } = thinned(table(count));
      expect(shown.rows.length).toBeLessThanOrEqual(40);
      expect(shown.rows.length).toBeGreaterThan(18);
      expect(shown.rows[0]![0]!.number).toBe(0);
      expect(shown.rows.at(-1)![0]!.number).toBe(count - 1);
      expect(note).toContain(`of the ${count} rows; the files hold all`);
    }
  });
});
