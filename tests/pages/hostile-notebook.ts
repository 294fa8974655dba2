/** A notebook of hostile names and outputs: nothing of it may ever become markup. */
import { MEDIA } from "lakeproof/base/records.ts";
import {
  code,
  display,
  markdown,
  notebookOf,
  SAMPLE_ANSWER,
  SAMPLE_FIGURE,
  SAMPLE_TABLE,
} from "./sample-notebook.ts";

/** A name that tries to become markup wherever text is put between tags or into an attribute. */
export const HOSTILE_NAME = `<script>alert(1)</script>"'><img src=x onerror=alert(1)>`;
const name = HOSTILE_NAME;
const mark = { design: name, place: 1 };
/** A notebook in which every text is that name, and whose outputs try everything at once. */
export const HOSTILE = notebookOf([
  markdown(`# About ${name}\n\n> Is ${name} better?\n\n${name}\n\n[x](javascript:alert(1))`),
  code(`// ${name}\nconst a = "${name}";`, [
    { output_type: "stream", name: "stdout", text: name },
    display({
      [MEDIA.answer]: {
        ...SAMPLE_ANSWER,
        name: `../../${name}`,
        question: name,
        headline: name,
        ahead: mark,
        details: [name],
        rests: name,
        sides: [name, name],
        tag: name,
        answer: { design: name },
      },
    }),
    display({
      [MEDIA.table]: {
        ...SAMPLE_TABLE,
        name,
        caption: name,
        columns: [{ label: name, unit: name, align: "left" }],
        rows: [[{ text: name, number: null, mark }], [{
          text: "=cmd()",
          number: null,
          mark: null,
        }]],
      },
    }),
    display({
      [MEDIA.figure]: {
        ...SAMPLE_FIGURE,
        name,
        title: name,
        description: name,
        caption: name,
        // A drawing that tries everything at once.
        wide: SAMPLE_FIGURE.wide.replace(
          "</svg>",
          `<script>alert(1)</script><foreignObject><iframe src="https://example.org"/>` +
            `</foreignObject><image href="https://example.org/x.png"/>` +
            `<a href="javascript:alert(1)"><text onclick="alert(1)">a</text></a>` +
            `<rect fill="url(https://example.org/x)" style="fill:red"/>` +
            `<text>${name.replaceAll("&", "&amp;").replaceAll("<", "&lt;")}</text></svg>`,
        ),
      },
    }),
    display({
      [MEDIA.findings]: [{
        severity: "error",
        code: name,
        file: name,
        row: 2,
        column: name,
        count: 1,
        what: name,
        wanted: name,
      }],
    }),
    display({ "text/html": `<p style="color:red" onclick="alert(1)">kept</p>${name}<svg><a/>` }),
    display({ "image/svg+xml": `<svg><script>alert(1)</script></svg>`, "text/plain": name }),
    display({ "image/png": `x" onerror="alert(1)`, "text/plain": name }),
    display({ "text/plain": name }),
    { output_type: "error", ename: name, evalue: name, traceback: [name] },
  ]),
]);
