/**
 * Two rules about words in prose: numbers bound to an answer are marked, and a number never parts from its unit.
 *
 * @module
 */
import type MarkdownIt from "markdown-it";
import type { Token } from "markdown-it";
import { escapeHtml } from "../../base/escape-html.ts";
import { type BoundAnswers, valueNote } from "./bound-value.ts";

/** A link to another notebook of the site, from one that stands beside it. */
const NOTEBOOK = /^(?:\.\/)?([\w.-]+)\.ipynb(#.*)?$/;

/** What the rule reads and counts on a page. */
export interface NoteEnv {
  /** Answers behind the numbers; without them numbers are marked only. */
  bound?: BoundAnswers;
  /** Notes so far. */
  values?: number;
}

/** An address as its author wrote it. */
function decodedAddress(address: string): string {
  try {
    return decodeURIComponent(address);
  } catch {
    return address;
  }
}

/** The parser's instances: the package types its class as a value only. */
export type MarkdownParser = InstanceType<typeof MarkdownIt>;

const BOUND = /^#(?:value|claim):/;

/** A number that may stand as typed: words like any other. */
const LITERAL = /^#literal:/;

/**
 * Turns links that bind words to an answer into marked words and links to notebooks into links to their pages, and takes
 * links out of headings, which are links themselves.
 *
 * @param parser gets the rule
 */
export function boundWords(parser: MarkdownParser): void {
  parser.renderer.rules["value_note"] = (tokens, index) => tokens[index]!.content;
  parser.core.ruler.after("inline", "bound_words", (state) => {
    for (const [index, token] of state.tokens.entries()) {
      if (token.type !== "inline" || token.children === null) continue;
      const inHeading = state.tokens[index - 1]?.type === "heading_open";
      token.children = unbound(token.children, inHeading, state.env as NoteEnv, state.Token);
    }
  });
}

function unbound(
  children: readonly Token[],
  inHeading: boolean,
  env: NoteEnv,
  Made: typeof Token,
): Token[] {
  const kept: Token[] = [];
  let note: string | null = null;
  /** What became of each link that is open: its new tag, or `null` when it went. */
  const open: (string | null)[] = [];
  for (const child of children) {
    if (child.type === "link_open") {
      const address = String(child.attrGet("href") ?? "");
      const bound = BOUND.test(address);
      // Pages stand beside each other as the notebooks do.
      child.attrSet("href", address.replace(NOTEBOOK, "$1.html$2"));
      open.push(bound ? "span" : inHeading || LITERAL.test(address) ? null : "a");
      if (bound) child.attrs = [["class", "value"]];
      const path = inHeading ? null : /^#value:(.*)$/s.exec(address)?.[1] ?? null;
      if (path !== null && env.bound !== undefined) {
        const id = `value-${(env.values ?? 0) + 1}`;
        note = valueNote(env.bound, decodedAddress(path), id);
        if (note !== null) {
          env.values = (env.values ?? 0) + 1;
          open[open.length - 1] = "button";
          child.attrs = [["type", "button"], ["class", "value"], ["popovertarget", id]];
        }
      }
    } else if (child.type !== "link_close") {
      kept.push(child);
      continue;
    }
    const tag = child.type === "link_close" ? open.pop() ?? null : open.at(-1)!;
    if (tag === null) continue;
    child.tag = tag;
    kept.push(child);
    if (child.type === "link_close" && tag === "button" && note !== null) {
      const behind = new Made("value_note", "", 0);
      behind.content = note;
      kept.push(behind);
      note = null;
    }
  }
  return unparted(kept, Made);
}

/**
 * Keeps a number that opens a note on one line with the bracket before it and the stop after it: a browser may break a
 * line on either side of a button, whatever letter stands there.
 */
function unparted(tokens: readonly Token[], Made: typeof Token): Token[] {
  const kept = [...tokens];
  const raw = (content: string): Token => {
    const made = new Made("value_note", "", 0);
    made.content = content;
    return made;
  };
  for (let at = kept.length - 1; at >= 0; at--) {
    if (kept[at]!.type !== "link_open" || kept[at]!.tag !== "button") continue;
    const end = kept.findIndex((one, place) => place > at && one.type === "value_note");
    const [before, after] = [kept[at - 1], kept[end + 1]];
    const opening = before?.type === "text" ? /[(\[\u201c"]+$/.exec(before.content)?.[0] ?? "" : "";
    const closing = after?.type === "text"
      ? /^[)\].,;:!?\u201d"]+/.exec(after.content)?.[0] ?? ""
      : "";
    if (end < 0 || opening + closing === "") continue;
    if (opening !== "") before!.content = before!.content.slice(0, -opening.length);
    if (closing !== "") after!.content = after!.content.slice(closing.length);
    kept.splice(end + 1, 0, raw(`${escapeHtml(closing)}</span>`));
    kept.splice(at, 0, raw(`<span class="whole">${escapeHtml(opening)}`));
  }
  return kept;
}

const UNIT =
  "m/s²|m/s|km/h|kn|mph|km|cm|mm|m²|m³|m|kg|g/kg|g|kN|N/m²|N/m|N|kPa|Pa|W|l|ml|s|min|h|Hz|°C|°|%|times|runs?|points?";

const BEFORE_UNIT = new RegExp(`(\\d) (?=(?:${UNIT})(?![\\p{L}\\d]))`, "gu");

/**
 * A space that must not break: between number and unit, about ±, and in "Figure 2".
 *
 * @param text plain
 * @returns the same words
 */
export function withoutBreaks(text: string): string {
  return text
    .replace(BEFORE_UNIT, "$1\u00a0")
    .replace(/ ?± ?/g, (sign) => sign.replaceAll(" ", "\u00a0"))
    .replace(/\b(Figure|Table|Note|Code|Section|Eq\.|row) (?=\d)/g, "$1\u00a0");
}

/**
 * Puts spaces that don't break where a number and its unit would part.
 *
 * @param parser gets the rule
 */
export function keepTogether(parser: MarkdownParser): void {
  parser.core.ruler.push("keep_together", (state) => {
    for (const token of state.tokens) {
      for (const child of token.children ?? []) {
        if (child.type === "text") child.content = withoutBreaks(child.content);
      }
    }
  });
}
