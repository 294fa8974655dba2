/**
 * Tampering with what is drawn and what is kept: figures, captions, stamps, whole files, the library.
 *
 * @module
 */
import { changeText, oneOf, pathsLike, stretches } from "./change.ts";
import {
  digit,
  encoder,
  freeNote,
  PAGE,
  swap,
  swappedDrawings,
  type TamperKind,
  words,
} from "./ways.ts";

/** In the order in which the suite tries them. */
export const KINDS_OF_FILES: readonly TamperKind[] = [
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
