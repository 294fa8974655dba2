/**
 * What is known about a page while it is being built: the counters behind "Figure 2", the files so far, the answer that
 * the index will show.
 *
 * @module
 */
import type { AnswerRecord } from "../../base/records.ts";
import type { PageFile } from "./page-types.ts";
import { plainName, UniqueNames } from "./part-names.ts";

/** Kinds of numbered parts. */
export type Numbered =
  | "figure"
  | "table"
  | "equation"
  | "code"
  | "caution"
  | "answer"
  | "findings"
  | "live";

/** The state of one page's building; made anew for each build. */
export class PageState {
  readonly slug: string;
  readonly files: PageFile[] = [];
  /** First answer shown on the page. */
  answer: AnswerRecord | null = null;
  /** Whether the page holds something that its reader may move. */
  live = false;
  /** Wide drawings that still want their PNG: path and SVG. */
  readonly drawings: { readonly path: string; readonly svg: string; readonly alt: string }[] = [];
  readonly #counts = new Map<Numbered, number>();
  readonly #fileNames = new Map<string, UniqueNames>();

  /** @param slug of the page */
  constructor(slug: string) {
    this.slug = slug;
  }

  /** Next number of a kind of part, from 1. */
  next(kind: Numbered): number {
    const n = (this.#counts.get(kind) ?? 0) + 1;
    this.#counts.set(kind, n);
    return n;
  }

  /**
   * A path for a file of a part, without ending, never the same twice on a page.
   *
   * @param folder `figures`, `tables` or `answers`
   * @param name the part's own name, as its record has it
   * @returns for instance "figures/01-which-foil-glides-better-glides"
   */
  path(folder: string, name: string): string {
    const names = this.#fileNames.get(folder) ?? new UniqueNames();
    this.#fileNames.set(folder, names);
    return `${folder}/${this.slug}-${names.take(plainName(name, "part"))}`;
  }

  /** Adds a text file. */
  addText(path: string, text: string): void {
    this.files.push({ path, bytes: new TextEncoder().encode(text) });
  }
}
