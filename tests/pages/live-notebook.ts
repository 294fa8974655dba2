/** A notebook after its run, made by hand with invented data, that shows a figure which its reader may move. */
import { USUAL_DOUBTS } from "lakeproof/fit/takeoff-doubts.ts";
import { USUAL_CRAFT } from "lakeproof/model/usual-craft.ts";
import { displayBundle } from "lakeproof/show/display-bundle.ts";
import { liveTakeoff } from "lakeproof/show/live-record.ts";
import type { LiveTask } from "lakeproof/show/live-task.ts";
import type { Notebook } from "lakeproof/publish/notebook.ts";
import { code, display, markdown, notebookOf } from "./sample-notebook.ts";

const WATER = { mass: 88, temperature: 291.15, salinity: 0, runningDepth: 0.4, takeoffDepth: 0.67 };
const STRUT = { strutChord: 0.115, strutThickness: 0.0145 };

/** Two wings of an evening class. */
export const LIVE_TASK: LiveTask = {
  designs: [
    {
      design: "alder",
      place: 1,
      craft: { ...USUAL_CRAFT, ...WATER, ...STRUT, span: 0.95, area: 0.15, thicknessRatio: 0.13 },
      doubts: USUAL_DOUBTS,
      published: "It flies, says the published answer.",
    },
    {
      design: "birch",
      place: 2,
      craft: { ...USUAL_CRAFT, ...WATER, ...STRUT, span: 1.12, area: 0.1625 },
      doubts: USUAL_DOUBTS,
      published: "It flies, says the published answer.",
    },
  ],
};

/** One page with a figure to move. */
export function liveNotebook(task: LiveTask = LIVE_TASK): Notebook {
  return notebookOf([
    markdown(
      "# Takeoff, moved by hand\n\n> How slowly do these wings fly?\n\nTwo invented wings, at any load and in any water.",
    ),
    code('import { liveTakeoff, show } from "lakeproof";\n'),
    markdown("## The result"),
    code("await show(liveTakeoff(task));\n", [display(displayBundle(liveTakeoff(task)))]),
    markdown("Words after the figure."),
  ]);
}
