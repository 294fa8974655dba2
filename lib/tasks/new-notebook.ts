/**
 * The notebook that comes with a new session, as data: one entry a cell.
 *
 * @module
 */
import { formatNotebook, type Notebook } from "../publish/notebook.ts";

/** A cell of the template; `{{name}}` stands for the session's name. */
interface TemplateCell {
  readonly id: string;
  readonly kind: "markdown" | "code";
  readonly source: string;
}

const TEMPLATE: readonly TemplateCell[] = [
  { id: "title", kind: "markdown", source: "# {{name}}: which foil glides better?" },
  {
    id: "question",
    kind: "markdown",
    source:
      "> Which of my designs glides farther from the same launch, by how much, and how sure is that?",
  },
  {
    id: "imports",
    kind: "code",
    source:
      'import { checkSession, compareGlides, openSession, resultsTable, runsTable, show, verdictRecord } from "lakeproof";',
  },
  { id: "answer-head", kind: "markdown", source: "## The bottom line" },
  {
    id: "answer",
    kind: "code",
    source: [
      'const session = await openSession("{{name}}");',
      "const evidence = compareGlides([session]);",
      "await show(verdictRecord(evidence));",
    ].join("\n"),
  },
  {
    id: "data-head",
    kind: "markdown",
    source: [
      "## The data",
      "",
      "Write here who flew, where and when, and how speeds, distances and heights were measured.",
    ].join("\n"),
  },
  {
    id: "findings",
    kind: "code",
    source: "await show([...session.findings, ...checkSession(session)]);",
  },
  { id: "result-head", kind: "markdown", source: "## The result, run by run" },
  {
    id: "results",
    kind: "code",
    source: ["await show(resultsTable(evidence));", "await show(runsTable(evidence));"].join("\n"),
  },
  {
    id: "limits",
    kind: "markdown",
    source: [
      "## Limits and cautions",
      "",
      "The answer holds for this rider, this water and the speeds flown. A design that glides better is not a design that",
      "holds better: look after cracks and play before each session. Wear impact protection and a flotation aid, keep off",
      "shallow water, dress for the water's temperature, never go alone, and follow the rules of the place.",
    ].join("\n"),
  },
  {
    id: "again",
    kind: "markdown",
    source: [
      "## How to run this again",
      "",
      "`deno task validate {{name}}` looks through the tables, `deno task answer glide {{name}}` gives the answer at the",
      "command line, `deno task report` makes this page.",
    ].join("\n"),
  },
];

/**
 * A notebook for one session.
 *
 * @param name of the session folder
 */
export function newNotebook(name: string): Notebook {
  return {
    cells: TEMPLATE.map(({ id, kind, source }) => {
      const text = source.replaceAll("{{name}}", name);
      return kind === "markdown"
        ? { cell_type: "markdown", id, metadata: {}, source: text }
        : { cell_type: "code", id, metadata: {}, source: text, execution_count: null, outputs: [] };
    }),
    metadata: {
      kernelspec: { display_name: "Deno", language: "typescript", name: "deno" },
      language_info: { name: "typescript" },
    },
    nbformat: 4,
    nbformat_minor: 5,
  };
}

/** Its file's text. */
export function newNotebookText(name: string): string {
  return formatNotebook(newNotebook(name));
}
