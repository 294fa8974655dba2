/**
 * The stamp at the foot of a page: notebook, software, data, so that anyone can tell whether they hold the same.
 *
 * @module
 */
import type { Stamp } from "../stamp.ts";
import { dataZip, sessionsOf } from "../side-files.ts";
import { CHECKSUMS, SITE_ZIP } from "../site.ts";
import { SOURCE } from "../source-files.ts";
import { escapeHtml } from "../../base/escape-html.ts";

/** A checksum in groups of eight, which the eye can compare. */
const grouped = (sha256: string) =>
  `<span class="sum">${escapeHtml(sha256.match(/.{1,8}/g)?.join(" ") ?? sha256)}</span>`;

/** Where everything is that a run needs, and the command. */
function rerun(stamp: Stamp): string {
  const data = sessionsOf(stamp.data).map((session) =>
    `<a href="${escapeHtml(dataZip(session))}" download>${escapeHtml(session)}.zip</a>`
  );
  const tables = data.length === 0 ? "" : ` The data alone: ${data.join(", ")}.`;
  return `<a href="${SITE_ZIP}" download>${SITE_ZIP}</a> holds this whole site with data, notebooks and library. ` +
    `Unpacked, in its folder <code>${SOURCE}</code>: <code>npx --yes deno@2.9.6 task verify ..</code> runs ` +
    `everything again and names what differs.${tables} ` +
    `Checksums: <a href="${CHECKSUMS}">${CHECKSUMS}</a>; how to cite: <a href="CITATION.cff">CITATION.cff</a>.`;
}

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
    ["To run it again", rerun(stamp)],
  ];
  return `<footer><section class="stamp" id="stamp">
<h2>How this page was made</h2>
<dl>
${rows.map(([term, what]) => `<dt>${term}</dt><dd>${what}</dd>`).join("\n")}
</dl>
</section></footer>`;
}
