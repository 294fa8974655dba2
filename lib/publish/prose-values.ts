/**
 * Keeps the numbers and claims in a notebook's prose true: fills what is open, passes what is right, stops what is stale.
 *
 * `[1.18](#value:glide/comparisons[birch]/ratio)` binds words to a value; `[further](#claim:glide/.../verdict=...)` binds
 * words to a condition. Both are ordinary links, so any viewer shows the words.
 *
 * @module
 */
import { MEDIA } from "../base/records.ts";
import { locate } from "./answer-path.ts";
import type { Cell, Notebook } from "./notebook.ts";
import { checkClaim } from "./prose-claims.ts";
import { type ProseLink, proseLinks } from "./prose-links.ts";
import { fromMarkdown, isBlank, toMarkdown, writeValue } from "./prose-text.ts";

/** A place in the prose that must not be published. */
export interface ProseFault {
  /** From 1, every cell counted. */
  readonly cell: number;
  /** Line in the cell, from 1. */
  readonly line: number;
  /** The sentence in which it stands, as a reader sees it. */
  readonly sentence: string;
  /** What is wrong, and what to do. */
  readonly what: string;
  /** True when refilling would put it right. */
  readonly stale: boolean;
}

/** A notebook with its prose bound, or what stands against it. */
export interface BoundProse {
  readonly notebook: Notebook;
  /** Number of texts that were filled or refilled. */
  readonly filled: number;
  readonly faults: readonly ProseFault[];
}

/** What a notebook shows: its answers by name, and names that two different answers share. */
export interface ShownAnswers {
  readonly answers: ReadonlyMap<string, unknown>;
  readonly twice: ReadonlySet<string>;
}

/**
 * The JSON of every answer that a notebook shows, by the answer's name.
 *
 * @param notebook with the outputs of a run
 * @returns answers by name, and names that were shown twice
 */
export function shownAnswers(notebook: Notebook): ShownAnswers {
  const answers = new Map<string, unknown>();
  const twice = new Set<string>();
  for (const cell of notebook.cells) {
    if (cell.cell_type !== "code") continue;
    for (const output of cell.outputs) {
      if (output.output_type !== "display_data" && output.output_type !== "execute_result") {
        continue;
      }
      const record = output.data[MEDIA.answer] as { name?: unknown; answer?: unknown } | undefined;
      if (typeof record?.name !== "string") continue;
      const { name, answer } = record;
      const other = answers.get(name);
      if (other !== undefined && JSON.stringify(other) !== JSON.stringify(answer)) twice.add(name);
      answers.set(name, answer);
    }
  }
  return { answers, twice };
}

/** The sentence around a link, links and line ends turned to plain words. */
function sentenceAround(source: string, link: ProseLink): string {
  const before = source.slice(0, link.start);
  const after = source.slice(link.end);
  const begins = [...before.matchAll(/\n\s*\n|[.!?][*_)"]*\s+/g)];
  const from = begins.reduce((_, match) => match.index + match[0].length, 0);
  const to = after.search(/[.!?](?=[*_)"]*(?:\s|$))|\n\n|$/);
  return source.slice(from, link.end + to + 1)
    .replace(/\[((?:[^[\]\\]|\\.)*)\]\((?:<[^>]*>|[^)\s]*)\)/g, "$1")
    .replace(/\s+/g, " ")
    .trim();
}

interface Outcome {
  readonly text?: string;
  readonly fault?: { readonly what: string; readonly stale: boolean };
}

function bindLink({ answers, twice }: ShownAnswers, link: ProseLink, refill: boolean): Outcome {
  const name = /^[^/[=<>!]*/.exec(link.target)![0];
  if (twice.has(name)) {
    const what = `two different answers are called "${name}"; give one of them another name`;
    return { fault: { what, stale: false } };
  }
  if (link.kind === "claim") {
    const check = checkClaim(answers, link.target);
    if (!check.ok) {
      return { fault: { what: `#claim:${link.target}: ${check.reason}`, stale: false } };
    }
    if (check.holds) return {};
    const what =
      `the words "${fromMarkdown(link.text)}" rest on ${link.target}, which no longer holds: ` +
      `the value is now ${check.now}. Rewrite the sentence.`;
    return { fault: { what, stale: false } };
  }
  const found = locate(answers, link.target);
  const written = found.ok ? writeValue(found.value, found.form) : found;
  if (!written.ok) {
    return { fault: { what: `#value:${link.target}: ${written.reason}`, stale: false } };
  }
  if (isBlank(link.text)) return { text: toMarkdown(written.text) };
  const old = fromMarkdown(link.text);
  if (old === fromMarkdown(toMarkdown(written.text))) return {};
  if (refill) return { text: toMarkdown(written.text) };
  return {
    fault: { what: `it says "${old}", but the fresh value is "${written.text}"`, stale: true },
  };
}

/**
 * Binds the prose of a notebook to the answers among its outputs.
 *
 * @param notebook with the outputs of a run
 * @param options `refill`: put the fresh value in place of a stale one instead of stopping; claims stop all the same
 * @returns the notebook with its texts filled, and everything that must not be published, all at once
 */
export function bindProse(
  notebook: Notebook,
  options: { readonly refill?: boolean } = {},
): BoundProse {
  const answers = shownAnswers(notebook);
  const faults: ProseFault[] = [];
  let filled = 0;
  const cells = notebook.cells.map((cell, index): Cell => {
    if (cell.cell_type !== "markdown") return cell;
    const { links, unreadable } = proseLinks(cell.source);
    if (unreadable > 0) {
      const sentence = cell.source.split("\n").find((line) => /#(?:value|claim):/.test(line)) ?? "";
      const what = "a link to a value or claim is written in a way that can't be filled; " +
        "write [text](#value:...) or [text](#claim:...), without markup in the text";
      faults.push({ cell: index + 1, line: 1, sentence: sentence.trim(), what, stale: false });
    }
    let source = "";
    let done = 0;
    for (const link of links) {
      const outcome = bindLink(answers, link, options.refill === true);
      if (outcome.fault !== undefined) {
        const sentence = sentenceAround(cell.source, link);
        faults.push({ cell: index + 1, line: link.line, sentence, ...outcome.fault });
      }
      if (outcome.text !== undefined) {
        source += cell.source.slice(done, link.start) + outcome.text;
        done = link.end;
        filled++;
      }
    }
    source += cell.source.slice(done);
    return source === cell.source ? cell : { ...cell, source };
  });
  return { notebook: { ...notebook, cells }, filled, faults };
}

/**
 * Faults in words: notebook, cell, line, the sentence, what is wrong, and how to accept it where that can be done.
 *
 * @param file the notebook's name
 * @param faults at least one
 * @returns lines for the terminal
 */
export function describeFaults(file: string, faults: readonly ProseFault[]): string {
  const lines = faults.flatMap((fault, index) => {
    const last = faults[index - 1];
    const same = last?.cell === fault.cell && last.sentence === fault.sentence;
    const where = `${file}, cell ${fault.cell}, line ${fault.line}:`;
    return [...(same ? [] : [where, `    ${fault.sentence}`]), fault.what];
  });
  if (faults.some((fault) => fault.stale)) {
    lines.push(
      "Read the sentences again. If they still say the right thing: npx --yes deno@2.9.6 task report --refill",
    );
  }
  return lines.join("\n");
}
