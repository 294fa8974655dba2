/**
 * Finds the links in a Markdown cell that bind words to values: `[1.18](#value:...)` and `[further](#claim:...)`.
 *
 * Code, whether in a block or between backticks, is left alone, as are HTML blocks and escaped brackets.
 *
 * @module
 */
import MarkdownIt from "markdown-it";

/** A bound stretch of prose. */
export interface ProseLink {
  readonly kind: "value" | "claim";
  /** What stands between the square brackets, as written. */
  readonly text: string;
  /** What stands after `#value:` or `#claim:`, decoded. */
  readonly target: string;
  /** Where the text begins in the cell's source. */
  readonly start: number;
  /** Where the text ends in the cell's source. */
  readonly end: number;
  /** Line in the cell, from 1. */
  readonly line: number;
}

// A value's text holds no bracket unless it is escaped. A target in angle brackets may hold spaces.
const LINK =
  /\[((?:[^[\]\\]|\\[\s\S])*)\]\((?:<#(value|claim):([^<>\n]*)>|#(value|claim):((?:[^\s()\\]|\([^\s()]*\))*))(?:\s+"[^"]*")?\)/y;

let parser: MarkdownIt | null = null;

/** Offsets of the lines that hold running text, by Markdown's own block rules. */
function textLines(source: string): Set<number> {
  parser ??= new MarkdownIt({ html: true });
  const lines = new Set<number>();
  for (const token of parser.parse(source, {})) {
    if (token.type !== "inline" || token.map === null) continue;
    for (let line = token.map[0]; line < token.map[1]; line++) lines.add(line);
  }
  return lines;
}

function decoded(target: string): string {
  try {
    return decodeURIComponent(target);
  } catch {
    return target;
  }
}

/** The bound links of one paragraph or other run of text lines. */
function scan(source: string, from: number, to: number, firstLine: number): ProseLink[] {
  const found: ProseLink[] = [];
  const text = source.slice(0, to);
  let at = from;
  while (at < to) {
    const character = text[at];
    if (character === "\\") {
      at += 2;
    } else if (character === "`") {
      const run = /`+/y;
      run.lastIndex = at;
      const ticks = run.exec(text)![0];
      const closing = new RegExp(`(?<!\`)${ticks}(?!\`)`, "g");
      closing.lastIndex = at + ticks.length;
      const close = closing.exec(text);
      at = close === null ? at + ticks.length : close.index + ticks.length;
    } else if (character === "[") {
      LINK.lastIndex = at;
      const match = LINK.exec(text);
      if (match === null) {
        at++;
        continue;
      }
      const start = at + 1;
      found.push({
        kind: (match[2] ?? match[4]) as "value" | "claim",
        text: match[1]!,
        target: decoded(match[3] ?? match[5]!),
        start,
        end: start + match[1]!.length,
        line: firstLine + text.slice(from, at).split("\n").length - 1,
      });
      at += match[0].length;
    } else {
      at++;
    }
  }
  return found;
}

/**
 * Every bound link of a Markdown cell, in order.
 *
 * @param source the cell's source
 * @returns the links, with where each stands
 */
export function proseLinks(source: string): ProseLink[] {
  if (!/#(?:value|claim):/.test(source)) return [];
  const inText = textLines(source);
  const found: ProseLink[] = [];
  let offset = 0;
  let begin = -1;
  let beginLine = 0;
  const lines = source.split("\n");
  for (const [index, line] of [...lines, null].entries()) {
    const isText = line !== null && inText.has(index);
    if (isText && begin < 0) {
      begin = offset;
      beginLine = index + 1;
    } else if (!isText && begin >= 0) {
      found.push(...scan(source, begin, Math.min(offset, source.length), beginLine));
      begin = -1;
    }
    offset += (line?.length ?? 0) + 1;
  }
  return found;
}
