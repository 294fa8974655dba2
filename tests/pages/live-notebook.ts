/** A notebook after its run, made by hand with invented data, that shows a figure which its reader may move. */
import { displayBundle } from "lakeproof/show/display-bundle.ts";
import { liveTakeoff } from "lakeproof/show/live-record.ts";
import type { LiveTask } from "lakeproof/show/live-task.ts";
import type { Notebook } from "lakeproof/publish/notebook.ts";
import { code, display, markdown, notebookOf } from "./sample-notebook.ts";

const struts = { count: 1, chord: 0.115, thickness: 0.0145 };

/** Two wings of an evening class. */
export const LIVE_TASK: LiveTask = {
  gravity: 9.8125,
  published: { mass: 88, temperature: 291.15, salinity: 0, depth: 0.4, areas: [0.15, 0.162] },
  designs: [
    {
      design: "alder",
      place: 1,
      craft: { span: 0.95, area: 0.15, thicknessRatio: 0.13, struts },
      wetVolume: 0.0024,
      largestLiftCoefficient: 1.05,
      takeoffDepth: 0.67,
    },
    {
      design: "birch",
      place: 2,
      craft: { span: 1.12, area: 0.162, thicknessRatio: 0.12, struts },
      wetVolume: 0.0023,
      largestLiftCoefficient: 1.05,
      takeoffDepth: 0.67,
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
