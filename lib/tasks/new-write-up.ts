/**
 * A first draft of a write-up about sessions that hold data: every number in it is right when it is made.
 *
 * @module
 */
import { join } from "node:path";
import { DataError } from "../base/errors.ts";
import { MEDIA } from "../base/records.ts";
import { type GlideEvidence } from "../decide/glide-evidence.ts";
import { compareGlides } from "../decide/compare-glides.ts";
import { compareTows, type TowEvidence } from "../decide/compare-tows.ts";
import { estimateTakeoff } from "../decide/estimate-takeoff.ts";
import { bindProse, describeFaults } from "../publish/prose-values.ts";
import {
  type Cell,
  formatNotebook,
  type Notebook,
  NOTEBOOK_METADATA,
} from "../publish/notebook.ts";
import { openSession } from "../read/open-session.ts";
import { glideAnswerObject } from "../show/answer-json.ts";
import { takeoffAnswerObject } from "../show/takeoff-json.ts";
import { towAnswerObject } from "../show/tow-json.ts";
import type { WriteUpCell } from "../show/write-up/write-up-cell.ts";
import { writeUp } from "../show/write-up/write-up.ts";
import { requireName } from "./new-session.ts";

/** A cell of a notebook that nobody has run yet. */
function notebookCell({ id, kind, source }: WriteUpCell): Cell {
  return kind === "markdown"
    ? { cell_type: "markdown", id, metadata: {}, source }
    : { cell_type: "code", id, metadata: {}, source, execution_count: null, outputs: [] };
}

/** A cell that shows an answer, so that prose can be bound to it. */
function shown(name: string, answer: unknown): Cell {
  const record = JSON.parse(JSON.stringify({ name, answer }));
  return {
    cell_type: "code",
    id: `answer-${name}`,
    metadata: {},
    source: "",
    execution_count: null,
    outputs: [{ output_type: "display_data", data: { [MEDIA.answer]: record }, metadata: {} }],
  };
}

/** Prose with its numbers filled. */
function filled(notebook: Notebook, answers: readonly Cell[], file: string): Notebook {
  const bound = bindProse({ ...notebook, cells: [...notebook.cells, ...answers] });
  if (bound.faults.length > 0) throw new DataError(describeFaults(file, bound.faults));
  return { ...notebook, cells: bound.notebook.cells.slice(0, notebook.cells.length) };
}

/**
 * The notebook of a write-up.
 *
 * @param title what the reader sees at the top
 * @param names sessions under `data/`, or their paths; glides come from the first that compares some, tows likewise
 * @returns the notebook, its prose filled, not yet run
 * @throws DataError when no session holds something to write about, or is not there
 */
export async function draftWriteUp(title: string, names: readonly string[]): Promise<Notebook> {
  let invented = false;
  let glide: { session: string; evidence: GlideEvidence } | null = null;
  let tow: { session: string; evidence: TowEvidence } | null = null;
  for (const name of names) {
    const session = await openSession(name);
    invented ||= session.invented;
    if (glide === null && session.glides.length > 0) {
      const evidence = compareGlides([session]);
      if (evidence.answer.comparisons.length > 0) glide = { session: name, evidence };
    }
    if (tow === null && session.tow.length > 0) {
      const evidence = compareTows(session);
      if (evidence.answer.designs.some((one) => one.law !== null)) {
        tow = { session: name, evidence };
      }
    }
  }
  if (glide === null && tow === null) {
    throw new DataError(
      `Cannot draft a write-up yet: ${
        names.join(" and ")
      } hold no glides of two designs that can be compared, and no ` +
        "tows that carry a curve. `task validate` says what is missing.",
    );
  }
  const answers: Cell[] = [];
  if (glide !== null) answers.push(shown("glide", glideAnswerObject(glide.evidence.answer)));
  if (tow !== null) answers.push(shown("tow", towAnswerObject(tow.evidence.answer)));
  const { answer } = estimateTakeoff(await openSession((tow ?? glide)!.session));
  const takeoff = answer.designs.some((one) => one.takeoffSpeed !== null) ? answer : null;
  if (takeoff !== null) answers.push(shown("takeoff", takeoffAnswerObject(takeoff)));
  const cells = writeUp({
    title,
    sessions: names,
    invented,
    glide: glide && { session: glide.session, answer: glide.evidence.answer },
    tow: tow && { session: tow.session, answer: tow.evidence.answer },
    takeoff,
  });
  const notebook: Notebook = {
    cells: cells.map(notebookCell),
    metadata: NOTEBOOK_METADATA,
    nbformat: 4,
    nbformat_minor: 5,
  };
  return filled(notebook, answers, `${title}.ipynb`);
}

/**
 * Writes `notebooks/NAME.ipynb`; nothing is ever overwritten.
 *
 * @param root top folder of the project
 * @param name of the notebook
 * @param sessions that it is about
 * @returns absolute path of the notebook
 * @throws UsageError for a name that will not do
 * @throws DataError when it is there already, or there is nothing to write about
 */
export async function makeWriteUp(
  root: string,
  name: string,
  sessions: readonly string[],
): Promise<string> {
  requireName(name);
  const path = join(root, "notebooks", `${name}.ipynb`);
  const title = `What ${sessions.join(" and ")} showed`;
  const text = formatNotebook(await draftWriteUp(title, sessions));
  Deno.mkdirSync(join(root, "notebooks"), { recursive: true });
  try {
    Deno.writeTextFileSync(path, text, { createNew: true });
  } catch (error) {
    if (!(error instanceof Deno.errors.AlreadyExists)) throw error;
    throw new DataError(
      `Cannot make the write-up: notebooks/${name}.ipynb is there already. Choose another name.`,
    );
  }
  return path;
}
