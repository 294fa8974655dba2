/** A notebook with everything that the library shows of invented evidence, as a page of the site would hold it. */
import type { TableRecord } from "lakeproof/base/records.ts";
import { DESIGNS, GLIDES } from "lakeproof/base/tables.ts";
import type { Notebook } from "lakeproof/publish/notebook.ts";
import { displayBundle, type Showable } from "lakeproof/show/display-bundle.ts";
import { figureDecomposition } from "lakeproof/show/figure-decomposition.ts";
import { figureDistance } from "lakeproof/show/figure-distance.ts";
import { figureGlideRatio } from "lakeproof/show/figure-glide-ratio.ts";
import { figureRatios } from "lakeproof/show/figure-ratios.ts";
import { fitTable } from "lakeproof/show/fit-table.ts";
import { glossaryTable } from "lakeproof/show/glossary-table.ts";
import { resultsTable } from "lakeproof/show/results-table.ts";
import { runsTable } from "lakeproof/show/runs-table.ts";
import { verdictRecord } from "lakeproof/show/verdict-record.ts";
import {
  inventedCannotTell,
  inventedEvidence,
  inventedRefusal,
  withRun,
} from "../support/invented-evidence.ts";
import { code, display, markdown, notebookOf } from "./sample-notebook.ts";

const evidence = withRun(
  withRun(inventedEvidence(), "alder", 2, { used: false, reason: "fell off the dock" }),
  "birch",
  1,
  { flag: "looks pumped" },
);

const shows = (comment: string, ...records: Showable[]) =>
  code(
    `// ${comment}\nawait show(record);`,
    records.map((record) => display(displayBundle(record))),
  );

/** More rows than a reader wants to see at once. */
const MANY_ROWS: TableRecord = {
  name: "many",
  caption: "Forty rows.",
  columns: [{ label: "row", unit: "", align: "right" }],
  rows: Array.from({ length: 40 }, (_, n) => [{ text: String(n), number: n, mark: null }]),
};

export const WHOLE: Notebook = notebookOf([
  markdown("# Which of two wings glides better?\n\n> Is birch the worse wing, or was it slower?"),
  code('import { show } from "lakeproof";'),
  markdown("## The short answer"),
  shows("Compare", verdictRecord(evidence)),
  markdown("## The data"),
  shows("Every run", runsTable(evidence), evidence.answer.findings),
  markdown("## How the launch is taken out"),
  shows("Glide ratios", figureGlideRatio(evidence)),
  shows("Decomposition", figureDecomposition(evidence)),
  markdown("## Results"),
  shows("Distances", figureDistance(evidence)),
  shows("Ratios", figureRatios(evidence)),
  shows("Table", resultsTable(evidence), fitTable(evidence)),
  markdown("## Other outcomes"),
  shows("Cannot tell", verdictRecord(inventedCannotTell())),
  shows("Refused", verdictRecord(inventedRefusal())),
  markdown("## What the tables hold"),
  shows("Glossary", glossaryTable(DESIGNS), glossaryTable(GLIDES)),
  shows("A table of many rows", MANY_ROWS),
  shows(
    "Report",
    "method    weighted least squares\npoints    7 used, 0 left out\n  a       0.012 ± 0.003",
  ),
]);
