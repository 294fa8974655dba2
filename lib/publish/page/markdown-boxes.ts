/**
 * Blockquotes that mean something: the first of a page is its question; one that opens with a bold "Caution" is a box.
 *
 * @module
 */
import type { Token } from "markdown-it";
import type { MarkdownParser } from "./markdown-words.ts";

/** The bold word at the start of a blockquote, if it is a caution's. */
function cautionWord(tokens: readonly Token[], open: number): Token | null {
  if (tokens[open + 1]?.type !== "paragraph_open") return null;
  const children = tokens[open + 2]?.children ?? [];
  const first = children.findIndex((child) => child.type !== "text" || child.content !== "");
  const strong = children[first];
  if (strong?.type !== "strong_open") return null;
  return /^Caution\b/i.test(children[first + 1]?.content ?? "") ? strong : null;
}

/** Index of the token that closes the one at `open`. */
function closing(tokens: readonly Token[], open: number): number {
  const level = tokens[open]!.level;
  for (let n = open + 1; n < tokens.length; n++) {
    if (tokens[n]!.type === "blockquote_close" && tokens[n]!.level === level) return n;
  }
  return open;
}

/**
 * Adds the rule.
 *
 * @param parser gets it; its env counts cautions and remembers whether the question was met
 */
export function boxes(parser: MarkdownParser): void {
  parser.core.ruler.push("boxes", (state) => {
    const { tokens } = state;
    for (const [index, token] of tokens.entries()) {
      if (token.type !== "blockquote_open") continue;
      const word = cautionWord(tokens, index);
      if (word !== null) {
        const id = `caution-${state.env["cautions"] = Number(state.env["cautions"] ?? 0) + 1}`;
        word.attrSet("id", `${id}-title`);
        token.tag = tokens[closing(tokens, index)]!.tag = "section";
        token.attrs = [
          ["class", "box caution"],
          ["id", id],
          ["role", "note"],
          ["aria-labelledby", `${id}-title`],
        ];
      } else if (state.env["question"] !== true && token.level === 0) {
        state.env["question"] = true;
        token.attrSet("class", "question");
      }
    }
  });
}
