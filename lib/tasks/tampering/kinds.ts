/**
 * The ways in which the suite tampers with a published folder, and whether running it again can bring each to light.
 *
 * @module
 */
import type { SeededRandom } from "../../numeric/random.ts";
import {
  changeDigit,
  changeText,
  type Files,
  oneOf,
  pathsLike,
  type Stretch,
  stretches,
  type Tamper,
  textOf,
} from "./change.ts";

/** A way of tampering. */
export interface TamperKind {
  readonly name: string;
  readonly tamper: Tamper;
  /** How often it is tried: half with the checksums left, half with every checksum made anew. */
  readonly tries: number;
  /** Why a run can't find it once every checksum was made anew; `null` where it must be found. */
  readonly hidden: string | null;
  /** True where most tries must be found all the same, and the reason holds for the others. */
  readonly mostly?: true;
}

const PAGE = /^\d\d-[^/]+\.html$/;
const NOTEBOOK = /^source\/notebooks\/.*\.ipynb$/;
const DATA = /^source\/data\/[^/]+\/(?:glides|tow|designs|calibrations)\.csv$/;
const encoder = new TextEncoder();

/** Text nodes inside the elements that a pattern finds in a page's article. */
const words = (pattern: RegExp) => (page: string): Stretch[] => {
  const from = page.indexOf("<article>");
  const to = page.indexOf("</article>");
  return stretches(page, />([^<>]+)</g, stretches(page, pattern, [{ from, to }]));
};

const PARAGRAPHS = words(/<p>.*<\/p>/g);

function swap(files: Files, pattern: RegExp, random: SeededRandom) {
  const paths = pathsLike(files, pattern);
  const [one, two] = random.shuffle(paths);
  if (one === undefined || two === undefined) return null;
  return {
    files: new Map([[one, files.get(two)!], [two, files.get(one)!]]),
    words: `${one} and ${two} swapped`,
  };
}

/** A word in a sentence that stands alike in a notebook and on its page, changed in both. */
const freeNote: Tamper = (files, random) => {
  const file = oneOf(pathsLike(files, NOTEBOOK), random)!;
  const page = `${file.replace(/^.*\//, "").replace(/\.ipynb$/, "")}.html`;
  if (!files.has(page)) return null;
  const [notebook, html] = [textOf(files, file), textOf(files, page)];
  const cells: { cell_type: string; source: string[] }[] = JSON.parse(notebook).cells;
  const sentences = cells.filter((cell) => cell.cell_type === "markdown")
    .flatMap((cell) => cell.source.join("").match(/[A-Z][a-z]+(?: [a-z]+){4,}(?=\.)/g) ?? [])
    .filter((one) => notebook.split(one).length === 2 && html.split(one).length === 2);
  const sentence = oneOf(sentences, random);
  if (sentence === undefined) return null;
  const now = sentence.replace(/ [a-z]+$/, " otherwise");
  return {
    files: new Map([
      [file, encoder.encode(notebook.replace(sentence, now))],
      [page, encoder.encode(html.replace(sentence, now))],
    ]),
    words: `${file} and its page: "${sentence}" to "${now}"`,
  };
};

const drawings = (page: string) => stretches(page, /<svg class="drawing"[\s\S]*?<\/svg>/g);

/** Two drawings of a page, each put in the place of the other. */
const swappedDrawings: Tamper = (files, random) => {
  const pages = pathsLike(files, PAGE).filter((file) => drawings(textOf(files, file)).length >= 4);
  const file = oneOf(pages, random);
  if (file === undefined) return null;
  const page = textOf(files, file);
  // Wide ones, which stand first of each two.
  const wide = drawings(page).filter((_, at) => at % 2 === 0);
  const at = random.integer(wide.length - 1);
  const [one, two] = [wide[at]!, wide[at + 1]!];
  const text = page.slice(0, one.from) + page.slice(two.from, two.to) +
    page.slice(one.to, two.from) + page.slice(one.from, one.to) + page.slice(two.to);
  return { files: new Map([[file, encoder.encode(text)]]), words: `${file}: two drawings swapped` };
};

/** A digit in one kind of file, within what a pattern finds there. */
const digit = (paths: RegExp, within: RegExp): Tamper => (files, random) =>
  changeDigit(
    files,
    oneOf(pathsLike(files, paths), random),
    random,
    (text) => stretches(text, within),
  );

/** Cells of a notebook of one kind: a pattern within the JSON text of their sources. */
const inCells = (kind: "code" | "outputs", within: RegExp): Tamper => (files, random) => {
  const file = oneOf(pathsLike(files, NOTEBOOK), random)!;
  return changeDigit(files, file, random, (text) => {
    const pattern = kind === "code"
      ? /"cell_type": "code"[\s\S]*?"source": \[\n([\s\S]*?)\n {3}\]/g
      : /"outputs": \[\n([\s\S]*?)\n {3}\],/g;
    return stretches(text, within, stretches(text, pattern));
  });
};

const UNUSED = "It stands in a column that no result, table or figure of the page uses.";
const NOTE = "No number rests on it, so a run has nothing to compare it with.";

/** Every way, 200 tries in all. */
export const TAMPERINGS: readonly TamperKind[] = [
  {
    name: "a digit in the text of a page",
    tamper: (files, random) =>
      changeDigit(files, oneOf(pathsLike(files, PAGE), random), random, PARAGRAPHS),
    tries: 12,
    hidden: null,
  },
  {
    name: "a number filled into a notebook's prose",
    tamper: digit(NOTEBOOK, /\[((?:[^\]\\"]|\\\\.)*)\]\(#value:/g),
    tries: 8,
    hidden: null,
  },
  {
    name: "a word in the text of a page",
    tamper: (files, random) =>
      changeText(
        files,
        oneOf(pathsLike(files, PAGE), random),
        random,
        (text) => stretches(text, /\b[a-z]{4,}\b/g, PARAGRAPHS(text)),
        () => "never",
      ),
    tries: 8,
    hidden: null,
  },
  {
    name: "a digit in the data",
    tamper: digit(DATA, /(?<=[,\n])[\d.]+(?=[,\n])/g),
    tries: 16,
    hidden: UNUSED,
    mostly: true,
  },
  {
    name: "a row of the data taken out",
    tamper: (files, random) =>
      changeText(
        files,
        oneOf(pathsLike(files, /^source\/data\/[^/]+\/(?:glides|tow)\.csv$/), random),
        random,
        (text) => stretches(text, /(?<=\n)\d+,.*\r?\n/g),
        () => "",
      ),
    tries: 6,
    hidden: null,
  },
  {
    name: "a remark in the data",
    tamper: (files, random) =>
      changeText(
        files,
        oneOf(pathsLike(files, /^source\/data\/[^/]+\/(?:conditions|instruments)\.csv$/), random),
        random,
        (text) =>
          stretches(text, /\b(?:taped|read|spacing|water line|thermometer|reservoir|flat calm)\b/g),
        () => "guessed",
      ),
    tries: 4,
    hidden: NOTE,
  },
  {
    name: "a digit in a code cell",
    tamper: inCells("code", /\d/g),
    tries: 8,
    hidden: null,
  },
  {
    name: "a digit in a notebook's output",
    tamper: inCells("outputs", /\d/g),
    tries: 8,
    hidden: null,
  },
  {
    name: "a digit in an answer's JSON",
    tamper: digit(/^answers\/.*\.json$/, /(?<=: )-?\d[\d.e-]*/g),
    tries: 14,
    hidden: null,
  },
  {
    name: "a verdict in an answer's JSON",
    tamper: (files, random) =>
      changeText(
        files,
        oneOf(pathsLike(files, /^answers\/.*\.json$/), random),
        random,
        (text) => stretches(text, /"(cannot-tell-yet|candidate-better|baseline-better|alder)"/g),
        (old) => old === "candidate-better" ? "cannot-tell-yet" : "candidate-better",
      ),
    tries: 6,
    hidden: null,
  },
  {
    name: "a digit in a table's file",
    tamper: digit(/^tables\/.*\.csv$/, /\d+/g),
    tries: 8,
    hidden: null,
  },
  {
    name: "a digit in a table of a page",
    tamper: (files, random) =>
      changeDigit(
        files,
        oneOf(pathsLike(files, PAGE), random),
        random,
        words(/<td[ >].*?<\/td>/g),
      ),
    tries: 8,
    hidden: null,
  },
  {
    name: "a path in a figure's file",
    tamper: digit(/^figures\/.*\.svg$/, / d="([^"]*)"/g),
    tries: 8,
    hidden: null,
  },
  {
    name: "a path in a figure of a page",
    tamper: digit(PAGE, /<path[^>]* d="([^"]*)"/g),
    tries: 8,
    hidden: null,
  },
  {
    name: "a byte of a picture",
    tamper: (files, random) => {
      const file = oneOf(pathsLike(files, /\.png$/), random)!;
      const bytes = files.get(file)!.slice();
      const at = random.integer(bytes.length);
      bytes[at] = bytes[at]! ^ (1 << random.integer(8));
      return { files: new Map([[file, bytes]]), words: `${file}: byte ${at}` };
    },
    tries: 6,
    hidden: null,
  },
  {
    name: "two figures' files swapped",
    tamper: (files, random) =>
      swap(files, random.integer(2) === 0 ? /\.svg$/ : /^figures.*\.png$/, random),
    tries: 6,
    hidden: null,
  },
  { name: "two figures of a page swapped", tamper: swappedDrawings, tries: 6, hidden: null },
  {
    name: "a caption",
    tamper: (files, random) =>
      changeText(
        files,
        oneOf(pathsLike(files, PAGE), random),
        random,
        (text) => stretches(text, /\b[a-z]{4,}\b/g, words(/<figcaption.*<\/figcaption>/g)(text)),
        () => "never",
      ),
    tries: 8,
    hidden: null,
  },
  {
    name: "a checksum in a page's stamp",
    tamper: digit(PAGE, /<span class="sum">([^<]*)<\/span>/g),
    tries: 6,
    hidden: null,
  },
  {
    name: "a version in a page's stamp",
    tamper: digit(PAGE, /<dt>Software<\/dt><dd>([^<]*)<\/dd>/g),
    tries: 4,
    hidden: null,
  },
  {
    name: "a version or a notebook's checksum in the site's record",
    tamper: digit(/^site\.json$/, /"(?!sha256|commit)[@\w][\w@/.-]*": "([\da-f.]+)"/g),
    tries: 6,
    hidden: null,
  },
  {
    name: "what a page tells programs",
    tamper: (files, random) =>
      changeText(
        files,
        oneOf(pathsLike(files, PAGE), random),
        random,
        (text) => stretches(text, /"(?:name|abstract)":"([^"]+)"/g),
        () => "another",
      ),
    tries: 4,
    hidden: null,
  },
  {
    name: "a script put into a page",
    tamper: (files, random) =>
      changeText(
        files,
        oneOf(pathsLike(files, PAGE), random),
        random,
        (text) => stretches(text, /<\/article>/g),
        (old) => `<script>document.title = "x"</script>${old}`,
      ),
    tries: 4,
    hidden: null,
  },
  {
    name: "a file taken away",
    tamper: (files, random) => {
      const file = oneOf(pathsLike(files, /^(?:figures|tables|answers|data)\//), random)!;
      return { files: new Map([[file, null]]), words: `${file} taken away` };
    },
    tries: 4,
    hidden: null,
  },
  {
    name: "a file put in",
    tamper: (_, random) => {
      const file = `figures/proof-${random.integer(100)}.png`;
      return { files: new Map([[file, encoder.encode("proof")]]), words: `${file} put in` };
    },
    tries: 4,
    hidden: null,
  },
  {
    name: "data in a ZIP other than those beside it",
    tamper: (files, random) => swap(files, /^data\/.*\.zip$/, random),
    tries: 4,
    hidden: null,
  },
  {
    name: "how to cite",
    tamper: (files, random) =>
      changeText(
        files,
        "CITATION.cff",
        random,
        (text) => stretches(text, /name: "([^"]+)"/g),
        () => "somebody else",
      ),
    tries: 2,
    hidden: null,
  },
  {
    name: "a digit in the library",
    tamper: digit(
      /^source\/lib\/(?:model|fit|infer|decide|base)\/.*\.ts$/,
      /(?<=[=(,*/+-] )\d[\d.]*/g,
    ),
    tries: 4,
    hidden: null,
  },
  {
    name: "the lock of the packages",
    tamper: digit(/^source\/deno\.lock$/, /sha512-[^"]*/g),
    tries: 2,
    hidden: null,
  },
  {
    name: "a sentence without a number, in a notebook and its page alike",
    tamper: freeNote,
    tries: 6,
    hidden: "Nothing computes a free sentence. A fingerprint that was kept elsewhere finds it.",
  },
  {
    name: "the commit or the system in the site's record",
    tamper: digit(/^site\.json$/, /"(?:commit|platform)": "([^"]*)"/g),
    tries: 2,
    hidden: "A run can't know from which commit a folder was made; compare with the repository.",
  },
];
