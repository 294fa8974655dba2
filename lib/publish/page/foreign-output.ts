/**
 * What a cell showed that is not ours: HTML, pictures, JSON, text. Nothing of it can run, load or restyle the page.
 *
 * @module
 */
import sanitizeHtml from "sanitize-html";
import type { Json, MimeBundle, Output } from "../notebook.ts";
import { escapeHtml } from "../../base/escape-html.ts";

/** HTML of a stranger: structure and text only. */
function foreignHtml(html: string): string {
  const clean = sanitizeHtml(html, {
    allowedTags: [
      ...["p", "div", "span", "br", "hr", "ul", "ol", "li", "dl", "dt", "dd", "blockquote"],
      ...["table", "thead", "tbody", "tfoot", "tr", "th", "td", "caption"],
      ...["b", "i", "em", "strong", "small", "sub", "sup", "code", "pre", "kbd", "abbr", "mark"],
    ],
    allowedAttributes: { th: ["scope", "colspan", "rowspan"], td: ["colspan", "rowspan"] },
  });
  return `<div class="foreign">${clean}</div>`;
}

/** Terminal colours say nothing on a page. */
function withoutEscapes(text: string): string {
  // deno-lint-ignore no-control-regex
  return text.replace(/\x1b\[[0-9;?]*[A-Za-z]/g, "");
}

/** Printed text. */
function printedText(text: string, kind: "output" | "problem" = "output"): string {
  const plain = withoutEscapes(text).replace(/\n+$/, "");
  return plain === "" ? "" : `<pre class="${kind}"><samp>${escapeHtml(plain)}</samp></pre>`;
}

/** A report of the library's own: its columns stay columns, and scroll where there is no room. */
function reportText(text: string): string {
  return `<pre class="report" tabindex="0"><samp>${escapeHtml(text.trimEnd())}</samp></pre>`;
}

function picture(mediaType: string, base64: string, alt: string): string {
  return `<p class="picture"><img src="data:${mediaType};base64,${base64.replace(/\s/g, "")}" ` +
    `alt="${escapeHtml(alt)}"></p>`;
}

function encoded(text: string): string {
  return btoa(Array.from(new TextEncoder().encode(text), (b) => String.fromCharCode(b)).join(""));
}

/**
 * The richest form of a bundle that a page can show.
 *
 * @param data forms by media type
 * @param cell number of the code cell, for the text that stands for a picture
 * @returns HTML; empty when the bundle holds nothing that can be shown
 */
export function foreignBundle(data: MimeBundle, cell: number): string {
  const text = (mediaType: string): string | null => {
    const value: Json | undefined = data[mediaType];
    return typeof value === "string" ? value : null;
  };
  const plain = text("text/plain");
  const alt = plain !== null && plain.length <= 200 ? plain : `Picture made by code ${cell}`;
  const html = text("text/html");
  if (plain !== null && html?.startsWith('<pre class="lakeproof-report">')) {
    return reportText(plain);
  }
  if (html !== null) return foreignHtml(html);
  const svg = text("image/svg+xml");
  if (svg !== null) return picture("image/svg+xml", encoded(svg), alt);
  for (const mediaType of ["image/png", "image/jpeg", "image/gif"]) {
    const bytes = text(mediaType);
    if (bytes !== null && /^[A-Za-z0-9+/=\s]+$/.test(bytes)) return picture(mediaType, bytes, alt);
  }
  const json = data["application/json"];
  if (json !== undefined) return printedText(JSON.stringify(json, null, 2));
  return printedText(text("text/markdown") ?? plain ?? "");
}

/**
 * An output that is no bundle.
 *
 * @param output of any kind
 * @returns HTML with all text escaped
 */
export function plainOutput(output: Output): string {
  if (output.output_type === "stream") {
    return printedText(output.text, output.name === "stderr" ? "problem" : "output");
  }
  if (output.output_type === "error") {
    return printedText(`${output.ename}: ${output.evalue}`, "problem");
  }
  return "";
}
