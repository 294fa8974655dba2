import { describe, expect, it } from "vitest";
import { terminalProgress } from "lakeproof/publish/progress.ts";

function written(terminal: boolean, columns = 80): string {
  let text = "";
  const progress = terminalProgress((more) => text += more, terminal, columns);
  progress.begin("01-which.ipynb", 1, 2, "deno.lock changed");
  progress.cell(1, 5);
  progress.say("a line of its own");
  progress.end("ran in 0.2 s");
  return text;
}

describe("progress", () => {
  it("away from a terminal is one plain line a notebook, without escapes", () => {
    expect(written(false)).toBe(
      "a line of its own\n[1/2] 01-which.ipynb                       ran in 0.2 s (deno.lock changed)\n",
    );
  });

  it("on a terminal writes over one line, cell by cell, no wider than the terminal", () => {
    expect(written(true)).toContain("\r\x1b[K[1/2] 01-which.ipynb: cell 1 of 5");
    expect(written(true)).toContain("\r\x1b[Ka line of its own\n");
    expect(written(true, 12)).toContain("\r\x1b[K[1/2] 01-wh\r");
  });
});
