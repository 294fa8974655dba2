/**
 * A cell of a write-up, and the links by which its prose takes numbers from answers.
 *
 * @module
 */
import { printable } from "../../base/printable.ts";

/** A cell as text; the notebook's form is put around it where it is written to a file. */
export interface WriteUpCell {
  readonly id: string;
  readonly kind: "markdown" | "code";
  readonly source: string;
}

/**
 * A name from a table as Markdown shows it: letter by letter, never as markup.
 *
 * @param name of a design or session
 * @returns Markdown
 */
export function inProse(name: string): string {
  return printable(name).replace(/[\\`*_{}[\]()#<>|~!&$]/g, "\\$&");
}

/**
 * A number that the publisher fills in from an answer.
 *
 * @param path for instance `glide/comparisons[birch]/ratio`
 * @returns a link without words, to be filled
 */
export function valueOf(path: string): string {
  return `[](#value:${path})`;
}

/**
 * Words that rest on a condition; the page is not published once it no longer holds.
 *
 * @param words as the reader sees them, Markdown without markup
 * @param condition for instance `glide/comparisons[birch]/verdict=candidate-better`
 * @returns the link
 */
export function claim(words: string, condition: string): string {
  return `[${words}](#claim:${condition})`;
}

/**
 * How a member of a list is called in a path: by its name where that is plain, else by its place.
 *
 * @param list key of the list
 * @param name of the design
 * @param place in the list, from 0
 * @returns path of the member: by name where a name can stand in a path, else by place
 */
export function memberOf(list: string, name: string, place: number): string {
  return /^[A-Za-z][A-Za-z0-9_-]*$/.test(name) ? `${list}[${name}]` : `${list}/${place}`;
}
