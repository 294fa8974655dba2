/** A notebook after its run, made by hand with invented data, that uses every part a page can have. */
import { type AnswerRecord, MEDIA, type TableRecord } from "lakeproof/base/records.ts";
import type { Cell, Json, Notebook, Output } from "lakeproof/publish/notebook.ts";
import { NOTEBOOK_METADATA } from "lakeproof/publish/notebook.ts";
import type { Stamp } from "lakeproof/publish/stamp.ts";
import { designColour, INK, PAPER } from "lakeproof/show/design-style.ts";

let cellCount = 0;

export const markdown = (source: string): Cell => ({
  id: `cell-${++cellCount}`,
  cell_type: "markdown",
  metadata: {},
  source,
});

export const code = (source: string, outputs: readonly Output[] = []): Cell => ({
  id: `cell-${++cellCount}`,
  cell_type: "code",
  metadata: {},
  source,
  execution_count: null,
  outputs,
});

export const display = (data: Record<string, unknown>): Output => ({
  output_type: "display_data",
  data: data as { [mediaType: string]: Json },
  metadata: {},
});

export const notebookOf = (cells: readonly Cell[]): Notebook => ({
  cells,
  metadata: NOTEBOOK_METADATA,
  nbformat: 4,
  nbformat_minor: 5,
});

export const SAMPLE_STAMP: Stamp = {
  notebook: "01-sample.ipynb",
  notebookSha256: "3b5d5c3712955042212316173ccf37be8002f3a4f1b2c4d5e6f708192a3b4c5d",
  versions: { Deno: "2.9.6", "@observablehq/plot": "0.6.17", "pure-rand": "8.4.2" },
  data: [{
    file: "data/quillwater/glides.csv",
    sha256: "9f86d081884c7d659a2feaa0c55ad015a3bf4f1b2b0b822cd15d6c15b0f00a08",
  }],
};

const RUNS = [[3.4, 12.1, 1], [3.8, 15.2, 1], [4.1, 17.9, 1], [3.2, 12.6, 2], [3.6, 15.9, 2], [
  4.0,
  19.4,
  2,
]] as const;

/** A small finished drawing with two designs' runs and curves. */
function drawing(width: number, fontSize: number): string {
  const x = (speed: number) => (50 + (speed - 3) / 1.4 * (width - 120)).toFixed(1);
  const y = (distance: number) => (250 - (distance - 10) / 11 * 210).toFixed(1);
  const marks = RUNS.map(([speed, distance, place]) =>
    `<circle cx="${x(speed)}" cy="${y(distance)}" r="4.5" fill="${designColour(place)}" ` +
    `stroke="${PAPER}"/>`
  );
  const ticks = [3, 3.5, 4].map((speed) =>
    `<text x="${x(speed)}" y="270" text-anchor="middle" fill="currentColor">${
      speed.toFixed(1)
    }</text>`
  );
  return `<svg xmlns="http://www.w3.org/2000/svg" role="img" width="${width}" height="300" ` +
    `viewBox="0 0 ${width} 300" aria-labelledby="d-title" aria-describedby="d-desc" ` +
    `color="var(--ink, #1a1e23)" font-family="'Source Sans 3','Lakeproof Math',sans-serif" ` +
    `font-size="${fontSize}"><rect width="${width}" height="300" fill="${PAPER}"/>` +
    `<title id="d-title">Distance against launch speed</title>` +
    `<desc id="d-desc">Birch covers 1.18 times the distance of alder.</desc>` +
    `<clipPath id="d-clip-1"><rect x="50" y="20" width="${width - 120}" height="230"/></clipPath>` +
    `<g clip-path="url(#d-clip-1)">` +
    `<path d="M${x(3)} ${y(9.5)}L${x(4.4)} ${y(19.8)}" fill="none" stroke="${designColour(1)}" ` +
    `stroke-width="2.25"/><path d="M${x(3)} ${y(11)}L${x(4.4)} ${y(21.5)}" fill="none" ` +
    `stroke="${designColour(2)}" stroke-width="2.25" stroke-dasharray="8 4"/></g>${
      marks.join("")
    }<text x="0" y="14" fill="${INK}">distance (m) ↑</text>${ticks.join("")}` +
    `<text x="${width - 4}" y="292" text-anchor="end" fill="${INK}">launch speed (m/s) →</text>` +
    `<text x="${width - 66}" y="${y(19.8)}" fill="${INK}">alder</text>` +
    `<text x="${width - 66}" y="${y(21.3)}" fill="${INK}">birch</text></svg>`;
}

const cell = (text: string, number: number | null = null, place: number | null = null) => ({
  text,
  number,
  mark: place === null ? null : { design: text, place },
});

export const SAMPLE_TABLE: TableRecord = {
  name: "results",
  caption: "What each design does from the same launch at 3.8 m/s.",
  columns: [
    { label: "design", unit: "", align: "left" },
    { label: "glide ratio", unit: "", align: "right" },
    { label: "distance", unit: "m", align: "right" },
    { label: "95 % interval", unit: "m", align: "left" },
    { label: "runs", unit: "", align: "right" },
  ],
  rows: [
    [
      cell("alder", null, 1),
      cell("9.8", 9.81234567890123),
      cell("15.3", 15.312),
      cell("14.2 to 16.4"),
      cell("7", 7),
    ],
    [
      cell("birch", null, 2),
      cell("11.6", 11.58),
      cell("18.1", 18.07),
      cell("16.9 to 19.3"),
      cell("7", 7),
    ],
  ],
};

export const SAMPLE_FIGURE = {
  name: "distance-against-launch-speed",
  title: "Distance against launch speed",
  description: "Birch covers 1.18 times the distance of alder.",
  caption: "Birch's curve lies above alder's at every launch speed that both were flown at.",
  wide: drawing(560, 14),
  narrow: drawing(344, 13),
  breakout: false,
  table: { ...SAMPLE_TABLE, name: "runs", caption: "Every run." },
};

export const SAMPLE_ANSWER: AnswerRecord = {
  name: "glide",
  verdict: "candidate-better",
  question: "Which of the two foils glides better?",
  headline: "Birch glides further than alder.",
  ahead: { design: "birch", place: 2 },
  details: [
    "From the same launch birch covers 1.18 times alder's distance; the 95 % interval runs from 1.04 to 1.34.",
    "Alder's longer runs came from launches that were faster by 0.4 m/s.",
  ],
  rests:
    "Rests on 7 runs of each by one rider on one day, launched at 3.2 to 4.3 m/s. The verdict stays if any one run is dropped.",
  strip: { low: 1.04, value: 1.18, high: 1.34 },
  sides: ["alder further", "birch further"],
  tag: "2 designs, 14 runs, 1 day",
  answer: { contract: 1, question: "glide", comparisons: [{ ratio: { value: 1.18 } }] },
};

export const CANNOT_TELL: AnswerRecord = {
  ...SAMPLE_ANSWER,
  name: "glide-cedar",
  verdict: "cannot-tell-yet",
  question: "And cedar against alder?",
  headline: "Cannot tell yet whether cedar differs from alder.",
  ahead: null,
  details: [
    "Equal is inside the 95 % interval, which runs from 0.86 to 1.21.",
    "About 12 more runs of each would settle a difference of 10 %.",
  ],
  rests: "Rests on 4 runs of cedar and 7 of alder.",
  strip: { low: 0.86, value: 1.02, high: 1.21 },
  sides: ["alder further", "cedar further"],
};

const finding = (severity: string, what: string, wanted: string | null, row: number | null) => ({
  severity,
  code: "sample",
  file: "glides.csv",
  row,
  column: row === null ? null : "launch_speed",
  count: 1,
  what,
  wanted,
});

/** The sample: invented from end to end. */
export const SAMPLE: Notebook = notebookOf([
  markdown(
    "# Which of two wings glides better?\n\n" +
      "> Birch flew shorter distances than alder all morning. Is it really the worse wing, or was it launched slower?\n\n" +
      "Two wings built in an evening class, flown from one jetty on one morning. All of it is invented, to show how a page looks.",
  ),
  code('// Take what the page needs from the library\nimport { show } from "lakeproof";\n'),
  markdown("## The short answer"),
  code("// Compare the glides of both designs\nawait show(answer);\n", [
    display({ [MEDIA.answer]: SAMPLE_ANSWER, "text/plain": "Birch glides further than alder." }),
  ]),
  markdown(
    "The ratio of [1.18](#value:glide/comparisons/0/ratio) says that birch goes [further](#claim:glide/comparisons/0/verdict=candidate-better) " +
      "from the same launch, by 2.8 m from 3.8 m/s. The raw distances said the opposite.[^raw] Why, is shown [below](#method).\n\n" +
      "> **Caution: cold water.** Below 15 °C wear a suit, never go alone, and keep to the rules of your water.\n",
  ),
  markdown(
    "## The data\n\nFourteen runs, alternating, on a reservoir called Quillwater.\n\n" +
      "| what | how | uncertainty |\n|---|---|---|\n| launch speed | video, 30 frames a second | 0.15 m/s |\n| distance | tape | 0.5 m |\n",
  ),
  code("// Check the session\nawait show(checkSession(session));\n", [
    display({
      [MEDIA.findings]: [
        finding("note", "column water_colour is not one of ours.", null, null),
        finding(
          "warning",
          "the end speed, 4.4 m/s, is above the launch speed.",
          "an end speed below 3.9 m/s.",
          9,
        ),
        finding(
          "error",
          "launch speed of 14 m/s is 50 km/h; did you mean 14 km/h?",
          "a speed below 12 m/s.",
          4,
        ),
      ],
    }),
  ]),
  markdown(
    "## How the launch is taken out\n\nA glide turns speed and height into distance. With the drag law $D(v) = a + b v^2 + c/v^2$ the distance is\n\n" +
      "$$x = \\int_{v_e}^{v_0} \\frac{m\\,v\\,\\mathrm{d}v}{D(v) - m g h / x}, \\qquad \\bar v = \\frac{x}{t}$$\n\n" +
      "where $m$ is all that flies, $v_0$ the launch speed and $\\sigma_\\varepsilon$ the scatter of runs.[^energy]\n\n### What it assumes\n\n1. The water is deep.\n2. The rider does not pump.\n\n" +
      "```\ndeno task answer glide quillwater\n```\n\nThe command `answer` prints the same.",
  ),
  code(
    "// Fit each design\nconst fits = designs.map((design) => fitGlides(session, design));\n" +
      "for (const fit of fits) console.log(`${fit.design}: ${fit.glideRatio.value.toFixed(1)}`);\nawait show(distanceFigure(fits));\n",
    [
      { output_type: "stream", name: "stdout", text: "alder: 9.8\nbirch: 11.6\n" },
      display({ [MEDIA.figure]: SAMPLE_FIGURE }),
    ],
  ),
  markdown("## Results"),
  code("await show(resultsTable(evidence));\n", [display({ [MEDIA.table]: SAMPLE_TABLE })]),
  code("// The third design\nawait show(cedar);\n", [display({ [MEDIA.answer]: CANNOT_TELL })]),
  markdown("## Limits and cautions\n\nOne rider, one day, deep water; ≈ 5 % at best."),
  markdown(
    "## Run it again\n\n1. Take the folder.\n2. Run it:\n\n   ```\n   npx --yes deno@2.9.6 task report\n   ```\n3. Compare the checksums at the foot of this page.\n",
  ),
  markdown(
    "[^raw]: Alder was launched faster: 4.1 against 3.6 m/s.\n[^energy]: The same sum of energies is used for models in [still air](https://example.org/energy).\n",
  ),
]);
