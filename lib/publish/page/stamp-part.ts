/**
 * The stamp at the foot of a page: notebook, software, data, so that anyone can tell whether they hold the same.
 *
 * @module
 */
import type { Stamp } from "../stamp.ts";
import { escapeHtml } from "../../base/escape-html.ts";

/** A checksum in groups of eight, which the eye can compare. */
const grouped = (sha256: string) =>
  `<span class="sum">${escapeHtml(sha256.match(/.{1,8}/g)?.join(" ") ?? sha256)}</span>`;

/**
 * The footer.
 *
 * @param stamp of the notebook's run
 * @returns HTML of a footer element
 */
export function stampPart(stamp: Stamp): string {
  const versions = Object.entries(stamp.versions)
    .map(([name, version]) => `${escapeHtml(name)}\u00a0${escapeHtml(version)}`);
  const rows: (readonly [string, string])[] = [
    ["Notebook", `${escapeHtml(stamp.notebook)}<br>${grouped(stamp.notebookSha256)}`],
    ["Software", versions.join(", ")],
    [
      "Numbers",
      "Rounded at the second digit of their standard uncertainty; the tables and answers to download hold them in full.",
    ],
    ...(stamp.data.length === 0 ? [] : [
      [
        "Data (SHA-256)",
        stamp.data.map((one) => `${escapeHtml(one.file)}<br>${grouped(one.sha256)}`).join("<br>"),
      ] as const,
    ]),
  ];
  return `<footer><section class="stamp" id="stamp">
<h2>How this page was made</h2>
<dl>
${rows.map(([term, what]) => `<dt>${term}</dt><dd>${what}</dd>`).join("\n")}
</dl>
</section></footer>`;
}
