/**
 * The body of a page: all cells of a notebook as one stream of Markdown tokens, with what code cells showed in between.
 *
 * Blocks are parsed cell by cell, so that an open fence ends with its cell; notes, links and headings are then resolved
 * over the whole page, so that a note may stand in the last cell and two headings never share an id.
 *
 * @module
 */
import type { Token } from "markdown-it";
import type { Cell, CodeCell, MarkdownCell, Notebook } from "../notebook.ts";
import { shownAnswers } from "../prose-values.ts";
import { codeCell, showsAnswer } from "./code-cell.ts";
import { markdownParser, type PageEnv } from "./markdown-parser.ts";
import type { PageState } from "./page-state.ts";

const BLOCK_RULES = ["normalize", "block"];

/** The article and what it says of itself. */
export interface Article {
  readonly html: string;
  /** Text of the first heading. */
  readonly title: string;
  /** Text of the first blockquote; empty when there is none. */
  readonly question: string;
  /** Text of the first paragraph outside the question. */
  readonly summary: string;
}

/** Runs `what`, and names the cell in any error. */
function inCell<T>(n: () => number, what: () => T): T {
  try {
    return what();
  } catch (cause) {
    const why = cause instanceof Error ? cause.message : String(cause);
    throw new Error(`cell ${n()}: ${why}`, { cause });
  }
}

/** Pictures pasted into a cell stand in the cell itself. */
function withAttachments(cell: MarkdownCell): string {
  return cell.source.replace(/\]\(attachment:([^)\s]+)\)/g, (whole, name: string) => {
    const forms = cell.attachments?.[decodeURIComponent(name)];
    if (typeof forms !== "object" || forms === null || Array.isArray(forms)) return whole;
    const found = Object.entries(forms).find(([mediaType]) => mediaType.startsWith("image/"));
    if (found === undefined || typeof found[1] !== "string") return whole;
    return `](data:${found[0]};base64,${found[1].replace(/\s/g, "")})`;
  });
}

/** Plain text of an inline token. */
function textOf(token: Token | undefined): string {
  return (token?.children ?? [])
    .map((child) =>
      ["text", "code_inline"].includes(child.type)
        ? child.content
        : child.type === "softbreak"
        ? " "
        : ""
    )
    .join("")
    .trim();
}

/** What the page says of itself, from its first heading, blockquote and paragraph. */
function wordsOf(tokens: readonly Token[]): Omit<Article, "html"> {
  let title = "";
  let question = "";
  let summary = "";
  let inQuestion = false;
  for (const [index, token] of tokens.entries()) {
    if (token.type === "blockquote_open") inQuestion = token.attrGet("class") === "question";
    if (token.type === "blockquote_close") inQuestion = false;
    if (token.type === "heading_open" && title === "") title = textOf(tokens[index + 1]);
    if (token.type !== "paragraph_open") continue;
    const text = textOf(tokens[index + 1]);
    if (inQuestion) question = question === "" ? text : `${question} ${text}`;
    else if (summary === "" && token.level === 0) summary = text;
  }
  return { title, question, summary };
}

/** Headings that say what the answer box says of itself. */
const ANSWER_TITLE = /^(the )?(short answer|answer|bottom line)\b/i;

/**
 * Takes out each heading that stands for an answer box, so that the box itself can carry it: one right before the cell, or
 * the last one before it when its words say so.
 */
function takenTitles(tokens: Token[], isAnswer: (token: Token) => boolean): Map<Token, Token> {
  const titles = new Map<Token, Token>();
  const gone = new Set<Token>();
  let last = -1;
  for (const [index, token] of tokens.entries()) {
    if (token.type === "heading_open") last = index;
    if (token.type !== "code_cell" || !isAnswer(token) || last < 0) continue;
    const [open, inline, close] = [tokens[last]!, tokens[last + 1]!, tokens[last + 2]!];
    if (open.tag === "h2" && (last + 3 === index || ANSWER_TITLE.test(textOf(inline)))) {
      inline.children = (inline.children ?? []).filter((one) =>
        one.type !== "link_open" && one.type !== "link_close" || one.tag === "span"
      );
      titles.set(token, inline);
      for (const one of [open, inline, close]) gone.add(one);
    }
    last = -1;
  }
  const kept = tokens.filter((token) => !gone.has(token));
  tokens.splice(0, tokens.length, ...kept);
  return titles;
}

/**
 * The article of a notebook.
 *
 * @param notebook after its run
 * @param state of the page: gets files, counts and the first answer
 * @returns HTML, and what the index and the head of the page need
 * @throws Error naming the cell that can't be shown
 */
export function article(notebook: Notebook, state: PageState): Article {
  const blocks = markdownParser();
  blocks.core.ruler.enableOnly(BLOCK_RULES);
  const rest = markdownParser();
  rest.core.ruler.disable(BLOCK_RULES);

  const env: PageEnv = {
    equations: 0,
    cautions: 0,
    question: false,
    bound: { answers: shownAnswers(notebook).answers, slug: state.slug },
  };
  const tokens: Token[] = [];
  const cells = new Map<Token, readonly [number, Cell]>();
  for (const [index, cell] of notebook.cells.entries()) {
    const n = index + 1;
    const source = cell.cell_type === "markdown" ? withAttachments(cell) : "";
    const parsed = new blocks.core.State(source, blocks, env);
    inCell(() => n, () => blocks.core.process(parsed));
    const place = new parsed.Token(cell.cell_type === "code" ? "code_cell" : "prose_cell", "", 0);
    place.block = true;
    cells.set(place, [n, cell]);
    tokens.push(place, ...parsed.tokens);
  }
  const whole = new rest.core.State("", rest, env);
  whole.tokens = tokens;
  rest.core.process(whole);

  const words = wordsOf(whole.tokens);
  const titles = takenTitles(whole.tokens, (token) => {
    const [n, cell] = cells.get(token)!;
    return inCell(() => n, () => showsAnswer(cell as CodeCell));
  });
  let current = 1;
  rest.renderer.rules["code_cell"] = (all, index) => {
    const token = all[index]!;
    const [n, cell] = cells.get(token)!;
    current = n;
    const title = titles.get(token) ?? null;
    const heading = title === null ? null : rest.renderer.render([title], rest.options, env);
    return codeCell(cell as CodeCell, heading, state);
  };
  rest.renderer.rules["prose_cell"] = (all, index) => {
    current = cells.get(all[index]!)![0];
    return "";
  };
  const html = inCell(() => current, () => rest.renderer.render(whole.tokens, rest.options, env));
  return { html, ...words };
}
