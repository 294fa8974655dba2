/**
 * How to cite a site, as the file that repositories and reference managers read.
 *
 * Source: Citation File Format 1.2.0 (citation-file-format.github.io); values are quoted as JSON texts, which YAML 1.2
 * reads alike.
 *
 * @module
 */
import type { Publication } from "./publication.ts";

/**
 * The text of `CITATION.cff`.
 *
 * @param publication title, authors, licence, address
 * @returns YAML, without a date: a site that is made again from the same source is the same site
 *
 * @example
 * ```ts
 * import { citationText } from "lakeproof/publish/citation.ts";
 * import { UNNAMED } from "lakeproof/publish/publication.ts";
 * console.assert(citationText(UNNAMED).startsWith("cff-version: 1.2.0\n"));
 * ```
 */
export function citationText(publication: Publication): string {
  const { title, description, authors, licence, address } = publication;
  const text = (value: string) => JSON.stringify(value);
  return [
    "cff-version: 1.2.0",
    `message: "If you use these data or results, please cite them as below."`,
    "type: dataset",
    `title: ${text(title)}`,
    `abstract: ${text(description)}`,
    "authors:",
    ...authors.map((name) => `  - name: ${text(name)}`),
    ...(licence === null ? [] : [`license: ${text(licence)}`]),
    ...(address === null ? [] : [`url: ${text(address)}`]),
  ].join("\n") + "\n";
}
