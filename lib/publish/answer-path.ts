/**
 * Finds one value inside an answer by a written path such as `glide/comparisons[birch]/ratio/@interval`.
 *
 * The first part is the name of a shown answer; each further one is a key, a place in a list counted from 0, or a key
 * with the name of the wanted member in square brackets. A last part with `@` says how to write the value.
 *
 * @module
 */
import { didYouMean } from "../base/did-you-mean.ts";

/** Ways to write a value, put at the end of a path. */
const FORMS = ["@interval", "@plusMinus", "@percent", "@count", "@word"] as const;

/** One of the ways to write a value. */
export type Form = typeof FORMS[number];

/** What a path led to, or why it led nowhere, in words for the author. */
export type Located =
  | { readonly ok: true; readonly value: unknown; readonly form: Form | null }
  | { readonly ok: false; readonly reason: string };

/** Keys by which a member of a list is called by name, the most telling first. */
const NAME_KEYS = ["candidate", "run", "point", "design"];

function nameOf(member: unknown): string | null {
  if (typeof member !== "object" || member === null) return null;
  for (const key of NAME_KEYS) {
    const name = (member as Record<string, unknown>)[key];
    if (typeof name === "string") return name;
  }
  return null;
}

/** Splits at slashes that stand outside square brackets, so that a design may have a slash in its name. */
function partsOf(path: string): string[] {
  return path.match(/(?:\[[^\]]*\]|[^/[])+/g) ?? [];
}

function failed(where: string, word: string, known: readonly string[], kind: string): Located {
  const guess = didYouMean(word, known);
  const list = known.length === 0
    ? `there is nothing in ${where}`
    : `${kind} in ${where}: ${known.join(", ")}`;
  return {
    ok: false,
    reason: `no "${word}" in ${where}${
      guess === null ? "" : `; did you mean "${guess}"?`
    } (${list})`,
  };
}

function member(list: readonly unknown[], name: string, where: string): Located {
  const index = /^\d+$/.test(name) ? Number(name) : -1;
  const named = list.filter((one) => nameOf(one) === name);
  if (named.length > 1) {
    return {
      ok: false,
      reason: `"${name}" stands ${named.length} times in ${where}; use its place`,
    };
  }
  if (named.length === 1) return { ok: true, value: named[0], form: null };
  if (index >= 0 && index < list.length) return { ok: true, value: list[index], form: null };
  const names = list.map((one, place) => nameOf(one) ?? String(place));
  return failed(where, name, names, "members");
}

function step(value: unknown, key: string, where: string): Located {
  if (Array.isArray(value)) return member(value, key, where);
  if (value === null) return { ok: false, reason: `${where} could not be told (it is null)` };
  if (typeof value !== "object") {
    return { ok: false, reason: `${where} is a single value, so there is no "${key}" in it` };
  }
  if (!Object.hasOwn(value, key)) return failed(where, key, Object.keys(value), "keys");
  return { ok: true, value: (value as Record<string, unknown>)[key], form: null };
}

/**
 * Walks a path from the answers shown in a notebook.
 *
 * @param answers the JSON of each shown answer, by name
 * @param path for instance `glide/designs[alder]/distance`
 * @returns the value found and the form asked for, or the reason why there is none, with a guess where one is near
 *
 * @example
 * ```ts
 * import { locate } from "lakeproof/publish/answer-path.ts";
 * const answers = new Map([["glide", { designs: [{ design: "alder", runsUsed: 7 }] }]]);
 * const found = locate(answers, "glide/designs[alder]/runsUsed");
 * console.assert(found.ok && found.value === 7);
 * ```
 */
export function locate(answers: ReadonlyMap<string, unknown>, path: string): Located {
  const parts = partsOf(path);
  const last = parts.at(-1);
  let form: Form | null = null;
  if (last?.startsWith("@")) {
    form = FORMS.find((one) => one === last) ?? null;
    if (form === null) return failed("the ways to write a value", last, FORMS, "known");
    parts.pop();
  }
  const [name, ...keys] = parts;
  if (name === undefined) return { ok: false, reason: "the path is empty" };
  if (!answers.has(name)) {
    return failed("the answers of this notebook", name, [...answers.keys()], "names");
  }
  let value = answers.get(name);
  let where = name;
  for (const part of keys) {
    const named = /^([^[]+)\[([^\]]*)\]$/.exec(part);
    const wanted = named === null ? [part] : [named[1]!, named[2]!];
    for (const [place, key] of wanted.entries()) {
      if (place === 1 && !Array.isArray(value)) {
        return { ok: false, reason: `${where} is not a list, so "[${key}]" finds nothing in it` };
      }
      const next = step(value, key, where);
      if (!next.ok) return next;
      value = next.value;
      where = `${where}/${key}`;
    }
  }
  return { ok: true, value, form };
}
