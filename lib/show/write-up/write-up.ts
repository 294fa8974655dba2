/**
 * A first draft of a write-up for a general reader: question, answer, what was built, how it was tested, what came out,
 * what could be wrong, how to run it again. Its numbers are bound to the answers; its sentences are there to be rewritten.
 *
 * @module
 */
import type { GlideAnswer } from "../../base/answers.ts";
import type { TakeoffAnswer } from "../../base/takeoff-answer.ts";
import type { TowAnswer } from "../../base/tow-answer.ts";
import { glideVerdicts, launchTrap } from "./glide-sentences.ts";
import { takeoffSentences } from "./takeoff-sentences.ts";
import { towVerdicts } from "./tow-sentences.ts";
import {
  CAUTION,
  GLIDE_METHOD,
  LIMITS,
  REFERENCES,
  TAKEOFF_METHOD,
  TOW_METHOD,
} from "./standing-text.ts";
import { inProse, type WriteUpCell } from "./write-up-cell.ts";

/** What a write-up is drafted from. A question that the sessions can't answer is `null` and gets no part. */
export interface WriteUpInput {
  /** What the reader sees at the top. */
  readonly title: string;
  /** Sessions in the order given, by the names under which notebooks open them. */
  readonly sessions: readonly string[];
  readonly invented: boolean;
  readonly glide: { readonly session: string; readonly answer: GlideAnswer } | null;
  readonly tow: { readonly session: string; readonly answer: TowAnswer } | null;
  /** Predicted from the designs of the same session as the tows, or else the glides. */
  readonly takeoff: TakeoffAnswer | null;
}

const markdown = (id: string, ...lines: string[]): WriteUpCell => ({
  id,
  kind: "markdown",
  source: lines.join("\n"),
});

const code = (id: string, ...lines: string[]): WriteUpCell => ({
  id,
  kind: "code",
  source: lines.join("\n"),
});

/** A text as a literal of the notebook's language. */
const literal = (text: string): string => JSON.stringify(text);

function importCell({ glide, tow, takeoff }: WriteUpInput): WriteUpCell {
  const names = new Set(["checkSession", "designsTable", "openSession", "show"]);
  const add = (...more: string[]) => more.forEach((name) => names.add(name));
  if (glide !== null) {
    add("compareGlides", "figureDecomposition", "figureDistance", "resultsTable", "runsTable");
    add("verdictRecord");
  }
  if (tow !== null) {
    add("compareTows", "figureDrag", "figureDragDifference", "towReadingTable", "towRecord");
    add("towTable");
  }
  if (takeoff !== null) add("estimateTakeoff", "figureTowForce", "takeoffRecord", "takeoffTable");
  const lines: string[] = [""];
  for (const name of [...names].sort((a, b) => a.toLowerCase() < b.toLowerCase() ? -1 : 1)) {
    const word = ` ${name},`;
    if (lines.at(-1)!.length + word.length > 98) lines.push("");
    lines[lines.length - 1] += word;
  }
  return code(
    "imports",
    "// What this page uses from the library",
    "import {",
    ...lines.map((line) => ` ${line}`),
    '} from "lakeproof";',
  );
}

function answerCells({ glide, tow }: WriteUpInput): WriteUpCell[] {
  const cells: WriteUpCell[] = [];
  if (glide !== null) {
    cells.push(code(
      "glide-answer",
      "// Read the runs and compare every design with the first",
      `const glideSession = await openSession(${literal(glide.session)});`,
      "const glide = compareGlides([glideSession]);",
      'await show(verdictRecord(glide, { name: "glide" }));',
    ));
  }
  if (tow !== null) {
    cells.push(code(
      "tow-answer",
      "// Read the towed readings and fit each design's drag",
      `const towSession = await openSession(${literal(tow.session)});`,
      "const tow = compareTows(towSession);",
      'await show(towRecord(tow, { name: "tow" }));',
    ));
  }
  return cells;
}

function builtCells({ glide }: WriteUpInput): WriteUpCell[] {
  const session = glide !== null ? "glideSession" : "towSession";
  return [
    markdown(
      "built",
      "## What was built",
      "",
      "The table holds what was measured in the workshop. Write here what it does not hold: what the wings are made of, what " +
        "was meant to be better, and what happened to them before these runs.",
    ),
    code("designs", "// The wings as measured", `await show(designsTable(${session}.designs));`),
  ];
}

function testedCells({ glide, tow }: WriteUpInput): WriteUpCell[] {
  const cells: WriteUpCell[] = [
    markdown(
      "tested",
      "## How it was tested",
      "",
      "Write here who flew, where and when, and how speeds, distances, heights and loads were measured. Every row that was " +
        "measured stands below, those that were left out too, with the reason.",
    ),
    markdown("caution", CAUTION),
  ];
  if (glide !== null) {
    cells.push(code(
      "runs",
      "// Every run, and what was found in the tables",
      "await show(runsTable(glide));",
      "await show([...glideSession.findings, ...checkSession(glideSession), ...glide.answer.findings]);",
    ));
  }
  if (tow !== null) {
    cells.push(code(
      "readings",
      "// Every towed reading, and what was found in the tables",
      "await show(towReadingTable(tow));",
      "await show([...towSession.findings, ...checkSession(towSession), ...tow.answer.findings]);",
    ));
  }
  return cells;
}

function resultCells({ glide, tow, takeoff }: WriteUpInput): WriteUpCell[] {
  const cells = [markdown("result", "## What came out")];
  if (glide !== null && glide.answer.comparisons.length > 0) {
    cells.push(
      markdown(
        "glide-result",
        ...["### Glides", "", glideVerdicts(glide.answer), "", launchTrap(glide.answer)],
      ),
      code(
        "distance",
        "// Every run, each design's curve and its band",
        "await show(figureDistance(glide));",
      ),
      code(
        "decomposition",
        "// What the launch did, and what the wing",
        "await show(figureDecomposition(glide));",
      ),
      code("results", "// The numbers", "await show(resultsTable(glide));"),
    );
  }
  if (tow !== null) {
    cells.push(
      markdown("tow-result", "### Towed behind a boat", "", towVerdicts(tow.answer)),
      code(
        "drag",
        "// Drag over speed: curve, band, every reading",
        "await show(figureDrag(tow));",
      ),
    );
    if (tow.answer.comparisons.length > 0) {
      cells.push(code(
        "drag-difference",
        "// Where they differ, and where nobody can tell",
        "await show(figureDragDifference(tow));",
      ));
    }
    cells.push(code("tow-results", "// The numbers", "await show(towTable(tow));"));
  }
  if (takeoff !== null) {
    cells.push(
      markdown(
        "takeoff-result",
        "### From which speed it carries",
        "",
        "This part is a prediction, not a measurement. " + takeoffSentences(takeoff),
      ),
      code(
        "takeoff",
        "// Takeoff of each design, predicted from its planform, the load and the water",
        `const takeoff = estimateTakeoff(${tow !== null ? "towSession" : "glideSession"});`,
        'await show(takeoffRecord(takeoff, { name: "takeoff" }));',
      ),
      code(
        "tow-force",
        "// Pull over speed, with the takeoff",
        "await show(figureTowForce(takeoff));",
      ),
      code(
        "takeoff-numbers",
        "// The numbers, in water and in air",
        "await show(takeoffTable(takeoff));",
      ),
    );
  }
  return cells;
}

/**
 * The cells of a first draft.
 *
 * @param input answers that were just worked out; the draft's claims are theirs
 * @returns cells in order; numbers are open links that the publisher fills
 * @throws RangeError when there is no answer to write about
 */
export function writeUp(input: WriteUpInput): WriteUpCell[] {
  if (input.glide === null && input.tow === null) {
    throw new RangeError("Cannot draft a write-up as it needs an answer on glides or on tows");
  }
  const methods = [
    ...(input.glide === null ? [] : [GLIDE_METHOD]),
    ...(input.tow === null ? [] : [TOW_METHOD]),
    ...(input.takeoff === null ? [] : [TAKEOFF_METHOD]),
  ];
  return [
    markdown(
      "title",
      `# ${inProse(input.title)}`,
      "",
      "> Which of these wings is better, by how much, how sure is that, and would somebody else find the same?",
      ...(input.invented
        ? [
          "",
          "The data are invented, to show what a write-up looks like; nobody flew these wings.",
        ]
        : []),
    ),
    importCell(input),
    ...answerCells(input),
    ...builtCells(input),
    ...testedCells(input),
    markdown("method", "## How it is worked out", "", methods.join("\n\n")),
    ...resultCells(input),
    markdown("limits", "## What could be wrong", "", LIMITS),
    markdown(
      "again",
      "## Data and code, to run it again",
      "",
      "Beside this page lie the data with their checksums, every figure, the answers in full, and the code that made them.",
      "",
      "```sh",
      ...input.sessions.map((name) => `npx --yes deno@2.9.6 task validate ${name}`),
      "npx --yes deno@2.9.6 task report",
      "npx --yes deno@2.9.6 task verify",
      "```",
    ),
    markdown("references", "## References", "", REFERENCES),
  ];
}
