/**
 * The form in which the kernel hands a cell to its emitter, as far as lines go.
 *
 * The kernel turns each import into a declaration with an awaited `import()`, and takes `export` away. Comments before
 * such a statement are lost with it, unless it is the cell's first. The emitter spreads what is left over lines of its
 * own.
 *
 * @module
 */
import { blank, IMPORT } from "./extract-cells.ts";

/** Whole lines of comments and empty lines at the end of a text. */
const COMMENTS_BEFORE =
  /(?:^[ \t]*(?:\/\/[^\n]*|\/\*(?:(?!\*\/)[\s\S])*\*\/[ \t]*)?\n)+(?![\s\S])/m;

const EXPORT = /^export(?=\s+(?:const|let|var|function|async|class|enum|abstract)\b)/gm;

/**
 * A text with the lines of the cell that the emitter spreads as it does the kernel's own form.
 *
 * What it computes does not matter: it is never run.
 *
 * @param source the cell's TypeScript
 * @returns code of as many lines, each import and export where the kernel can take it
 */
export function kernelForm(source: string): string {
  const statements = [
    ...Array.from(source.matchAll(IMPORT), (match) => ({ match, stand: importStand(match[0]) })),
    ...Array.from(source.matchAll(EXPORT), (match) => ({ match, stand: blank(match[0]) })),
  ].filter(({ match }) => !/^import\s+type\b/.test(match[0]))
    .sort((left, right) => left.match.index - right.match.index);
  let form = "";
  let from = 0;
  for (const { match, stand } of statements) {
    const before = source.slice(from, match.index);
    const comments = COMMENTS_BEFORE.exec(before);
    const first = form.trim() === "" && (comments?.[0].length ?? 0) === before.length;
    form += comments === null || first
      ? before
      : before.slice(0, comments.index) + blank(comments[0]);
    form += stand;
    from = match.index + match[0].length;
  }
  return form + source.slice(from);
}

/** One statement on as many lines, so that a comment after it stays after it. */
function importStand(statement: string): string {
  return `await (${statement.replace(/[^\n]/g, "")}0);`;
}
