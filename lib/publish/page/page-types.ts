/**
 * What the page builder takes and gives: a notebook that has been run, and the page with the files beside it.
 *
 * @module
 */
import type { AnswerRecord, DesignMark } from "../../base/records.ts";
import type { Notebook } from "../notebook.ts";
import type { Publication } from "../publication.ts";
import type { Stamp } from "../stamp.ts";

/** Another page of the same site. */
export interface PageLink {
  /** Name of the page's file without `.html`. */
  readonly slug: string;
  readonly title: string;
}

/** All that a page is built from. */
export interface PageInput {
  /** Names the page's file and those beside it; lower case, digits and hyphens. */
  readonly slug: string;
  /** The notebook after its run, with the numbers in prose filled. */
  readonly notebook: Notebook;
  readonly stamp: Stamp;
  /** All pages of the site in reading order, this one among them. */
  readonly pages: readonly PageLink[];
  /** What the site says of itself; nothing when left out. */
  readonly publication?: Publication;
}

/** A file that belongs to the site, by its path from the site's folder. */
export interface PageFile {
  readonly path: string;
  readonly bytes: Uint8Array;
}

/** What the index says about a page. */
export interface IndexCard {
  readonly slug: string;
  readonly title: string;
  /** The question of the page; its title when it asks none. */
  readonly question: string;
  /** First paragraph after the question; empty when there is none. */
  readonly summary: string;
  /** The page's first figure as a picture, path from the site's folder; `null` when it has none. */
  readonly preview: { readonly path: string; readonly alt: string } | null;
  /** The bottom line, when the page holds an answer. */
  readonly answer: {
    readonly verdict: AnswerRecord["verdict"];
    readonly headline: string;
    readonly detail: string;
    readonly tag: string;
    readonly ahead: DesignMark | null;
  } | null;
}

/** A finished page. */
export interface PageBuild {
  readonly html: string;
  readonly files: readonly PageFile[];
  readonly card: IndexCard;
}
