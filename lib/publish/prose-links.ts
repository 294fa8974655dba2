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

// A text holds no bracket unless it is escaped; a target in angle brackets may hold spaces, and > only escaped.
const LINK =
  /\[((?:[^[\]\\]|\\[\s\S])*)\]\((?:<#(value|claim):((?:[^<>\n\\]|\\.)*)>|#(value|claim):((?:[^\s()\\]|\\.|\((?:[^\s()\\]|\\.)*\))*))(?:\s+"[^"]*")?\s*\)/y;

let parser: InstanceType<typeof MarkdownIt> | null = null;

/** A stretch of running text: where it begins and ends in the source. */
interface Stretch {
  readonly from: number;
  readonly to: number;
}

/** The running text of a source by Markdown's own block rules, and how many bound links a renderer sees in it. */
function runningText(source: string): { stretches: Stretch[]; seen: number } {
  parser ??= new MarkdownIt({ html: true });
  const starts = [0, ...[...source.matchAll(/\n/g)].map((match) => match.index + 1)];
  const startOf = (line: number) => starts[line] ?? source.length;
  const stretches: Stretch[] = [];
  let seen = 0;
  for (const token of parser.parse(source, {})) {
    if (token.type === "inline") {
      seen += (token.children ?? [])
        .filter((one) => /^#(?:value|claim):/.test(String(one.attrGet("href") ?? ""))).length;
    }
    if (token.map === null) continue;
    const from = startOf(token.map[0]);
    const to = startOf(token.map[1]);
    if (token.type === "inline") {
      stretches.push({ from, to });
    } else if (token.type === "tr_open") {
      // The text of a table's cell has no lines of its own; cells part at pipes that are not escaped.
      let at = from;
      for (const match of source.slice(from, to).matchAll(/\\[\s\S]|\|/g)) {
        if (match[0] !== "|") continue;
        stretches.push({ from: at, to: from + match.index });
        at = from + match.index + 1;
      }
      stretches.push({ from: at, to });
    }
  }
  return { stretches, seen };
}

function decoded(target: string): string {
  const plain = target.replace(/\\([!-/:-@[-`{-~])/g, "$1");
  try {
    return decodeURIComponent(plain);
  } catch {
    return plain;
  }
}

function scan(source: string, { from, to }: Stretch): ProseLink[] {
  const found: ProseLink[] = [];
  const text = source.slice(0, to);
  let at = from;
  while (at < to) {
    const character = text[at];
    if (character === "\\" || (character === "!" && text[at + 1] === "[")) {
      at += 2;
    } else if (character === "`") {
      const ticks = /`+/y;
      ticks.lastIndex = at;
      const run = ticks.exec(text)![0];
      const closing = new RegExp(`(?<!\`)${run}(?!\`)`, "g");
      closing.lastIndex = at + run.length;
      at = (closing.exec(text)?.index ?? at) + run.length;
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
        line: text.slice(0, at).split("\n").length,
      });
      at += match[0].length;
    } else {
      at++;
    }
  }
  return found;
}

/** The bound links of a cell, and how many more a renderer sees that are not written in a form that can be bound. */
export interface FoundLinks {
  readonly links: readonly ProseLink[];
  readonly unreadable: number;
}

/**
 * Every bound link of a Markdown cell, in order.
 *
 * @param source the cell's source
 * @returns the links with where each stands, and the number of those that were written in another way
 */
export function proseLinks(source: string): FoundLinks {
  if (!/#(?:value|claim):/.test(source)) return { links: [], unreadable: 0 };
  const { stretches, seen } = runningText(source);
  const links = stretches.flatMap((stretch) => scan(source, stretch));
  return { links, unreadable: Math.max(0, seen - links.length) };
}
