/**
 * What a page says of itself to programs: a description for catalogues and a preview for links to it.
 *
 * Source: schema.org (`ScholarlyArticle`, `Dataset`, `DataDownload`) in JSON-LD 1.1 (W3C Recommendation 2020); the Open
 * Graph protocol (ogp.me) for previews.
 *
 * @module
 */
import { escapeHtml } from "../../base/escape-html.ts";
import { dataZip } from "../side-files.ts";
import type { Publication } from "../publication.ts";

/** A picture that stands for a page. */
export interface Preview {
  /** Path from the site's folder. */
  readonly path: string;
  readonly alt: string;
}

/** What a page is. */
export interface Described {
  /** Name of the page's file. */
  readonly page: string;
  readonly title: string;
  readonly description: string;
  readonly preview: Preview | null;
  /** Names of the session folders that it rests on. */
  readonly sessions: readonly string[];
  readonly publication: Publication;
}

/** JSON that can stand in a page whatever its texts hold. */
function embedded(value: unknown): string {
  return JSON.stringify(value).replaceAll("<", "\\u003c");
}

function linkedData(of: Described): unknown {
  const { publication, sessions } = of;
  const address = publication.address ?? "";
  const authors = publication.authors.map((name) => ({ "@type": "Organization", name }));
  const licence = publication.licence === null
    ? {}
    : { license: `https://spdx.org/licenses/${publication.licence}.html` };
  const data = sessions.map((name) => ({
    "@type": "Dataset",
    name,
    description:
      `Tables of the session ${name}, and a descriptor of their columns. ${publication.description}`,
    creator: authors,
    ...licence,
    distribution: [{
      "@type": "DataDownload",
      encodingFormat: "application/zip",
      contentUrl: address + dataZip(name),
    }],
  }));
  return {
    "@context": "https://schema.org",
    "@type": "ScholarlyArticle",
    headline: of.title,
    abstract: of.description,
    author: authors,
    inLanguage: "en",
    ...licence,
    ...(publication.address === null ? {} : { url: address + of.page }),
    ...(of.preview === null ? {} : { image: address + of.preview.path }),
    isPartOf: { "@type": "CreativeWork", name: publication.title },
    ...(data.length === 0 ? {} : { isBasedOn: data }),
  };
}

/**
 * Lines for the head of a page.
 *
 * @param of what the page is
 * @returns HTML
 */
export function pageMetadata(of: Described): string {
  const address = of.publication.address ?? "";
  const properties: (readonly [string, string])[] = [
    ["og:type", "article"],
    ["og:title", of.title],
    ["og:description", of.description],
    ...(of.publication.address === null ? [] : [["og:url", address + of.page] as const]),
    ...(of.preview === null ? [] : [
      ["og:image", address + of.preview.path] as const,
      ["og:image:type", "image/png"] as const,
      ["og:image:alt", of.preview.alt] as const,
    ]),
  ];
  return [
    `<meta name="author" content="${escapeHtml(of.publication.authors.join(", "))}">`,
    ...properties.map(([name, content]) =>
      `<meta property="${name}" content="${escapeHtml(content)}">`
    ),
    `<script type="application/ld+json">${embedded(linkedData(of))}</script>`,
  ].join("\n");
}
