/** A tiny real notebook: reads one file of data, shows an answer, and binds its prose to it. */
import type { Notebook } from "lakeproof/publish/notebook.ts";
import { code, notebookOf, prose } from "./example-notebook.ts";

/** The data that it reads: `data/evening/glides.csv`, invented. */
export const TINY_DATA = "run,design,distance\n1,alder,20\n2,birch,25\n";

const READ = `const text = await Deno.readTextFile("data/evening/glides.csv");
const [alder, birch] = text.trim().split("\\n").slice(1).map((line) => Number(line.split(",")[2]));`;

const SHOW = `await show({
  name: "glide",
  verdict: "cannot-tell-yet",
  question: "Which goes further?",
  headline: "Cannot tell yet.",
  ahead: null,
  details: ["One run each."],
  rests: "Rests on one run of each; invented.",
  strip: null,
  sides: ["alder further", "birch further"],
  tag: "2 designs, 2 runs",
  answer: { ratio: birch! / alder!, verdict: "cannot-tell-yet" },
});`;

/** The notebook. `title` is its heading; `pause` makes it take that many milliseconds longer. */
export function tinyNotebook(title: string, pause = 0): Notebook {
  const ratio = "[](#value:glide/ratio)";
  return notebookOf(
    prose(
      `# ${title}\n\n> Which goes further?\n\nBirch went ${ratio} times as far, invented.`,
      "top",
    ),
    code('import { show } from "lakeproof/show/show.ts";', "imports"),
    code(READ, "read"),
    ...(pause === 0
      ? []
      : [code(`await new Promise((done) => setTimeout(done, ${pause}));`, "pause")]),
    code(SHOW, "show"),
    prose("That is [not enough](#claim:glide/verdict=cannot-tell-yet) to tell.", "end"),
  );
}
