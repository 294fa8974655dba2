/**
 * Finds numbers in a notebook's prose that nothing computes: typed by hand, they go stale without a word.
 *
 * A number may stand in a bound link, in code, in a formula, in a link's words, in a paragraph of sources (it begins with
 * "Source:" or "Source of ...:", or
 * stands under a heading "Sources" or "References" of its cell) or in a note. Anywhere else it is marked as meant to be typed, with the reason:
 * `[nineteen of twenty](<#literal:what 95 % means>)`, a link that any viewer shows as its words. Number words count from
 * two to a dozen dozens; "one", "first" and "half" do not, since they mostly count nothing.
 *
 * @module
 */
import MarkdownIt, { type Token } from "markdown-it";
import footnote from "markdown-it-footnote";
import { tex } from "@mdit/plugin-tex";
import type { Notebook } from "./notebook.ts";
import type { ProseFault } from "./prose-values.ts";

const UNITS = "two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|thirteen|fourteen|" +
  "fifteen|sixteen|seventeen|eighteen|nineteen|twenty|thirty|forty|fifty|sixty|seventy|eighty|" +
  "ninety|dozens?|hundreds?|thousands?|millions?|twice|thrice";

/** Digits that begin no part of a name (as in "A4"), and number words. */
const NUMBER = new RegExp(
  `(?<![\\p{L}\\p{N}_])\\d[\\d.,\u202f]*\\d|(?<![\\p{L}\\p{N}_])\\d|\\b(?:${UNITS})\\b`,
  "giu",
);

/** A paragraph that names what something rests on. */
const SOURCE = /^\s*[*_]*Sources?\b[^.]*?:/;

/** A heading under which sources are listed. */
const LIST_OF_SOURCES = /^(?:sources|references|literature)\b/i;

let parser: InstanceType<typeof MarkdownIt> | null = null;

function proseParser(): InstanceType<typeof MarkdownIt> {
  parser ??= new MarkdownIt({ html: false }).use(footnote).use(tex, { render: () => "" });
  return parser;
}

/** Running text with line breaks, links and code and formulas taken out, and text of literal links checked for a reason. */
function runningText(children: readonly Token[]): { text: string; whole: string; empty: boolean } {
  let text = "";
  let whole = "";
  let links = 0;
  let empty = false;
  for (const child of children) {
    if (child.type === "link_open") {
      links++;
      empty ||= /^#literal:\s*$/.test(decodeURIComponent(String(child.attrGet("href") ?? "")));
    } else if (child.type === "link_close") links--;
    else if (child.type === "softbreak" || child.type === "hardbreak") {
      text += "\n";
      whole += "\n";
    } else if (child.type === "text") {
      text += links > 0 ? child.content.replace(/[^\n]/g, "\u0000") : child.content;
      whole += child.content;
    } else if (child.type === "code_inline" || child.type.startsWith("math")) {
      text += "\u0000".repeat(child.content.length);
      whole += child.content;
    }
  }
  return { text, whole, empty };
}

/** The sentence about a place in a text. */
function sentenceAt(whole: string, at: number): string {
  const before = whole.slice(0, at);
  const begins = [...before.matchAll(/[.!?][*_)"]*\s+/g)].at(-1);
  const from = begins === undefined ? 0 : begins.index + begins[0].length;
  const end = whole.slice(at).search(/[.!?](?=[*_)"]*(?:\s|$))|$/);
  return whole.slice(from, at + end + 1).replace(/\s+/g, " ").trim();
}

function faultsOf(source: string, cell: number): ProseFault[] {
  const faults: ProseFault[] = [];
  let inNote = 0;
  let line = 1;
  let sources = false;
  const tokens = proseParser().parse(source, {});
  for (const [index, token] of tokens.entries()) {
    if (token.map !== null) line = token.map[0] + 1;
    if (token.type === "footnote_open") inNote++;
    if (token.type === "footnote_close") inNote--;
    if (token.type !== "inline" || inNote > 0) continue;
    const { text, whole, empty } = runningText(token.children ?? []);
    if (tokens[index - 1]?.type === "heading_open") sources = LIST_OF_SOURCES.test(whole.trim());
    if (sources || SOURCE.test(whole)) continue;
    const tell = (at: number, what: string) =>
      faults.push({
        cell,
        line: line + text.slice(0, at).split("\n").length - 1,
        sentence: sentenceAt(whole, at),
        what,
        stale: false,
      });
    if (empty) tell(0, "a number is marked #literal: without a reason; write it after the colon");
    for (const match of text.matchAll(NUMBER)) {
      tell(
        match.index,
        `"${
          match[0]
        }" is typed by hand, so nothing keeps it true: bind it, [](#value:...), or say why it may stand, ` +
          `[${match[0]}](<#literal:the reason>)`,
      );
    }
  }
  return faults;
}

/**
 * Every number in a notebook's prose that is neither bound nor marked.
 *
 * @param notebook its Markdown cells are looked at
 * @returns faults in order
 */
export function bareNumbers(notebook: Notebook): ProseFault[] {
  return notebook.cells.flatMap((cell, index) =>
    cell.cell_type === "markdown" ? faultsOf(cell.source, index + 1) : []
  );
}
