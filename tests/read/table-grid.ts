/** A table as a grid of texts, for tests that change one thing in it and write it again. */
export type Grid = string[][];

/** Cells of a simple CSV text (quotes only around whole cells). */
export function gridOf(text: string): Grid {
  return text.trimEnd().split("\n").map((line) =>
    [...line.matchAll(/("(?:[^"]|"")*"|[^,]*)(?:,|$)/g)].slice(
      0,
      line.match(/,(?=(?:[^"]*"[^"]*")*[^"]*$)/g)!.length + 1,
    )
      .map((match) => match[1]!.replace(/^"|"$/g, "").replaceAll('""', '"'))
  );
}

export interface Writing {
  readonly delimiter?: string;
  readonly quoteAll?: boolean;
  readonly lineEnd?: string;
}

/** The grid as CSV text. */
export function csvOf(grid: Grid, writing: Writing = {}): string {
  const { delimiter = ",", quoteAll = false, lineEnd = "\n" } = writing;
  const cell = (text: string) =>
    quoteAll || text.includes(delimiter) || /["\r\n]/.test(text)
      ? `"${text.replaceAll('"', '""')}"`
      : text;
  return grid.map((row) => row.map(cell).join(delimiter) + lineEnd).join("");
}

/** Place of a column in the header. */
export function columnAt(grid: Grid, name: string): number {
  const at = grid[0]!.indexOf(name);
  if (at < 0) throw new Error(`no column ${name}`);
  return at;
}

/** A copy with one cell changed; rows as the spreadsheet numbers them. */
export function withCell(grid: Grid, row: number, name: string, text: string): Grid {
  const at = columnAt(grid, name);
  return grid.map((cells, i) => cells.map((cell, j) => i === row - 1 && j === at ? text : cell));
}
