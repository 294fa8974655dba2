/**
 * Names the part of a page in which a place of its HTML lies.
 *
 * @module
 */
import type { CheckKind } from "./finding-of-check.ts";

/** A part of a page, as a reader calls it. */
export interface PagePlace {
  readonly kind: CheckKind;
  readonly words: string;
}

const NAMED: readonly (readonly [RegExp, CheckKind, (n: string) => string])[] = [
  [/^figure-(\d+)-numbers/, "figure", (n) => `the numbers of Figure ${n}`],
  [/^figure-(\d+)/, "figure", (n) => `Figure ${n}`],
  [/^table-(\d+)/, "table", (n) => `Table ${n}`],
  [/^code-(\d+)/, "page", (n) => `Code ${n}`],
  [/^equation-(\d+)/, "page", (n) => `formula (${n})`],
  [/^answer(?:-(\d+))?(?:-title)?$/, "result", () => "the answer box"],
  [/^stamp/, "stamp", () => "the stamp"],
];

/** Elements that say more than the id above them. */
const INSIDE: readonly (readonly [string, string])[] = [
  ["figcaption", "caption"],
  ["svg", "drawing"],
  ["style", "style sheet"],
  ["script", "script or data"],
  ["head", "head of the page"],
  ["table", "cells"],
];

/**
 * The part in which a place lies: the nearest id before it, and the element around it.
 *
 * @param html of the page
 * @param at index into it
 * @returns kind and words of the place
 */
export function pagePlace(html: string, at: number): PagePlace {
  const upTo = html.slice(0, at + 1);
  const ids = [...upTo.matchAll(/<[a-z][\w-]*[^<>]*\sid="([^"]+)"/g)]
    .filter((match) => !/^<(?:svg|g|path|clipPath|title|desc|input)|\sid="value-\d/.test(match[0]));
  const id = ids.at(-1)?.[1] ?? "";
  const named = NAMED.find(([pattern]) => pattern.test(id));
  const around = INSIDE.find(([tag]) => {
    const open = Math.max(upTo.lastIndexOf(`<${tag} `), upTo.lastIndexOf(`<${tag}>`));
    return open >= 0 && upTo.indexOf(`</${tag}>`, open) < 0;
  });
  const what = around === undefined ? "" : `, ${around[1]}`;
  if (around?.[0] === "head" || around?.[0] === "style") return { kind: "page", words: around[1] };
  if (named === undefined) {
    return {
      kind: "prose",
      words: id === "" || id === "main" ? `text${what}` : `part "${id}"${what}`,
    };
  }
  return { kind: named[1], words: named[2](named[0].exec(id)?.[1] ?? "") + what };
}
