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
  {
    id: "title",
    kind: "markdown",
    source: [
      "# Find out which foil glides better: {{name}}",
      "",
      "> Which of my designs glides further from the same launch, by how much, and how sure is that?",
    ].join("\n"),
  },
  {
    id: "imports",
    kind: "code",
    source: [
      "// What this page uses from the library",
      "import {",
      "  checkSession, compareGlides, figureDecomposition, figureDistance, figureGlideRatio, fitTable, openSession,",
      "  resultsTable, runsTable, show, verdictRecord,",
      '} from "lakeproof";',
    ].join("\n"),
  },
  {
    id: "answer",
    kind: "code",
    source: [
      "// Read the session and compare every design with the first",
      'const session = await openSession("{{name}}");',
      "const evidence = compareGlides([session]);",
      'await show(verdictRecord(evidence, { name: "{{name}}" }));',
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
    id: "data",
    kind: "code",
    source: [
      "// Every run as measured, and what became of it",
      "await show(runsTable(evidence));",
      "await show([...session.findings, ...checkSession(session), ...evidence.answer.findings]);",
    ].join("\n"),
  },
  {
    id: "method",
    kind: "markdown",
    source: [
      "## How it is worked out",
      "",
      "Speed is worth height: a run that loses the height $\\Delta z$ and slows from $v_0$ to $v_1$ has spent the energy height",
      "$\\Delta H = \\Delta z + \\kappa\\,(v_0^2 - v_1^2)/(2g)$, where $\\kappa$ is a little above one for the water that moves along.",
      "Distance over energy height is the run's glide ratio. A drag law whose shape comes from the planform carries every run to",
      "one common launch, and the designs are compared there.",
    ].join("\n"),
  },
  { id: "result-head", kind: "markdown", source: "## What comes out" },
  {
    id: "results",
    kind: "code",
    source: [
      "// Distance from the common launch, design by design",
      "if (evidence.answer.comparisons.length > 0) await show(resultsTable(evidence));",
    ].join("\n"),
  },
  {
    id: "figures",
    kind: "code",
    source: [
      "// Every run with each design's curve, what the launch did, and each run's glide ratio",
      "if (evidence.answer.comparisons.length > 0) {",
      "  await show(figureDistance(evidence));",
      "  await show(figureDecomposition(evidence));",
      "  await show(figureGlideRatio(evidence));",
      "}",
    ].join("\n"),
  },
  {
    id: "limits",
    kind: "markdown",
    source: [
      "## How much to believe",
      "",
      "The answer holds for the riders, the water and the speeds flown, and says nothing about whether a wing will hold.",
      "",
      "> **Caution.** A better glide is found by launching again, and launching is what hurts people: wear impact protection, " +
      "check the depth, dress for the water's temperature, never go alone, and follow the local rules.",
    ].join("\n"),
  },
  {
    id: "again",
    kind: "markdown",
    source: [
      "## Run it again",
      "",
      "```sh",
      "npx --yes deno@2.9.6 task validate {{name}}",
      "npx --yes deno@2.9.6 task answer glide {{name}}",
      "npx --yes deno@2.9.6 task report",
      "```",
      "",
      "The fit in full, for whoever wants to check it:",
    ].join("\n"),
  },
  {
    id: "fit",
    kind: "code",
    source: [
      "// The fitted law of each design, and its report",
      "if (evidence.designs.length > 0) {",
      "  await show(fitTable(evidence));",
      '  await show(evidence.reports.join("\\n\\n"));',
      "}",
    ].join("\n"),
  },
];

/**
 * A notebook for one session.
 *
 * @param name of the session folder
 * @returns the notebook, not run
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

/**
 * Its file's text.
 *
 * @param name of the session that it reads
 * @returns JSON text of the notebook
 */
export function newNotebookText(name: string): string {
  return formatNotebook(newNotebook(name));
}
