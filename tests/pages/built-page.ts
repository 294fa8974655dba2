/** How the tests of pages build them, and what they look at. */
import { HtmlValidate } from "html-validate";
import { buildPage } from "lakeproof/publish/page/build-page.ts";
import type { PageBuild } from "lakeproof/publish/page/page-types.ts";
import type { Notebook } from "lakeproof/publish/notebook.ts";
import { SAMPLE_STAMP } from "./sample-notebook.ts";

/** Pages of the site that each page links to. */
export const pages = [
  { slug: "00-first", title: "The <first> page" },
  { slug: "01-sample", title: "Which of two wings glides better?" },
];

/** Builds a page of a notebook. */
export const build = (notebook: Notebook): Promise<PageBuild> =>
  buildPage({ slug: "01-sample", notebook, stamp: SAMPLE_STAMP, pages });

const validator = new HtmlValidate({
  extends: ["html-validate:recommended", "html-validate:a11y"],
  // Formulas carry their few styles as attributes; fonts make the style element long.
  rules: { "no-inline-style": "off", "long-title": "off" },
});

/** What the rules of valid, accessible HTML say against a page. */
export async function messages(html: string): Promise<string[]> {
  const report = await validator.validateString(html);
  return report.results.flatMap((result) =>
    result.messages.map((message) => `${message.ruleId}: ${message.message} (${message.selector})`)
  );
}

/** The page without what it tells programs: data that nothing runs, and in which no markup can stand. */
export const withoutData = (html: string) =>
  html.replace(/<script type="application\/ld\+json">[^<]*<\/script>/, "");

/** The page without its style sheet, whose fonts are long and never hold markup. */
export const withoutStyles = (html: string) => html.replace(/<style>[\s\S]*?<\/style>/, "");
