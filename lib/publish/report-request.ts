/**
 * What is asked of a report, and what came of it.
 *
 * @module
 */
import type { Notebook } from "./notebook.ts";
import type { Runner } from "./notebook-turn.ts";
import type { PageBuilder } from "./page-turn.ts";
import type { IndexCard } from "./page/page-types.ts";
import type { Changes } from "./since/changes.ts";
import type { Publication } from "./publication.ts";
import type { Progress } from "./progress.ts";

/** Tells what the type checker has against the cells of some notebooks, in words. */
export type CellChecker = (
  notebooks: readonly { readonly file: string; readonly notebook: Notebook }[],
) => Promise<readonly { readonly file: string; readonly words: string }[]>;

/** The costly parts, loaded only when there is something for them to do. */
export interface Makers {
  /** Absolute path of the module that runs notebooks, for the cache's keys. */
  readonly runner: string;
  /** Absolute path of the module that builds pages, for the cache's keys. */
  readonly builder: string;
  /** Absolute path of the module that runs in the reader's browser, for the cache's keys. */
  readonly live: string;
  run(): Promise<Runner>;
  check(): Promise<CellChecker>;
  build(): Promise<PageBuilder>;
  buildChanges(): Promise<(changes: Changes, publication: Publication) => Promise<string>>;
  buildIndex(): Promise<
    (
      cards: readonly IndexCard[],
      publication: Publication,
      changes: boolean,
    ) => Promise<string>
  >;
}

/** What is asked of a report. */
export interface ReportRequest {
  /** Absolute path of the project's folder. */
  readonly root: string;
  /** Notebooks to look at; empty means all. Others stay as they were published last. */
  readonly names: readonly string[];
  readonly fresh: boolean;
  readonly twice: boolean;
  readonly refill: boolean;
  readonly signal: AbortSignal;
  readonly progress: Progress;
  readonly makers: Makers;
  /** False swaps folders even where links could be made. */
  readonly links?: boolean;
}

/** What came of it. */
export interface ReportDone {
  /** Notebooks that were run. */
  readonly ran: number;
  readonly pages: number;
  /** Whether `out/` was swapped for a new site. */
  readonly swapped: boolean;
  /** Notebook files that were written back. */
  readonly written: readonly string[];
}
