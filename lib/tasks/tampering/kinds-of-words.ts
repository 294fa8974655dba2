/**
 * Tampering with what is said: words and numbers of pages, data, cells, answers and tables.
 *
 * @module
 */
import { changeDigit, changeText, oneOf, pathsLike, stretches } from "./change.ts";
import {
  DATA,
  digit,
  inCells,
  NOTEBOOK,
  PAGE,
  PARAGRAPHS,
  type TamperKind,
  words,
} from "./ways.ts";

const UNUSED = "It stands in a column that no result, table or figure of the page uses.";
const NOTE = "No number rests on it, so a run has nothing to compare it with.";

/** In the order in which the suite tries them. */
export const KINDS_OF_WORDS: readonly TamperKind[] = [
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
];
