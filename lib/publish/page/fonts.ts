/**
 * The fonts of a page: which are needed for its characters, as CSS with the bytes inside, and as files for drawings.
 *
 * Only what the page uses goes in. Static cuts and not the variable file, since a browser writes variable fonts into a
 * PDF as outlines. The math font stands second in the text stack and lends the few signs that the text font lacks.
 *
 * @module
 */
import { Buffer } from "node:buffer";
import { createRequire } from "node:module";
import { join } from "node:path";
import subsetFont from "subset-font";

const require = createRequire(import.meta.url);

/** Ranges of the text font's files, in order of the packages' own style sheets. */
const SCRIPTS: readonly { readonly name: string; readonly has: RegExp }[] = [
  { name: "latin-ext", has: /[\u0100-\u0130\u0132-\u0151\u0154-\u02ba\u1e00-\u1eff\u2c60-\u2c7f]/ },
  { name: "vietnamese", has: /[\u0102\u0103\u0110\u0111\u01a0\u01a1\u01af\u01b0\u1ea0-\u1ef9]/ },
  { name: "greek", has: /[\u0370-\u03ff]/ },
  { name: "greek-ext", has: /[\u1f00-\u1fff]/ },
  { name: "cyrillic", has: /[\u0400-\u045f\u0490\u0491\u04b0\u04b1\u2116]/ },
  { name: "cyrillic-ext", has: /[\u0460-\u048f\u0492-\u04af\u04b2-\u052f]/ },
];

/** Signs that the text font lacks and the math font has. */
const LENT = "→←≈≤≥≠√∞∂∑∫∝≪≫⋅∆";

/** What formulas are made of: Latin, Greek and digits upright and in math italics, operators, brackets. */
function mathCharacters(): string {
  const range = (from: number, to: number) =>
    Array.from({ length: to - from + 1 }, (_, i) => String.fromCodePoint(from + i)).join("");
  return range(0x20, 0x7e) + range(0x391, 0x3c9) + range(0x1d434, 0x1d467) +
    range(0x1d6e2, 0x1d71b) +
    "\u00a0¬±·×÷¯˜¨ˆˇ˙ıȷℎϑϕϖϱϵ⇒⇔↑↓−∓∗∘∛∇∏∬∮≡∼≃≅∈∉⊂∪∩∀∃∅′″‴…⋯⋮⋱‖⟨⟩⌈⌉⌊⌋⏞⏟" +
    "\u2061\u2062\u2063\u2064\u0302\u0303\u0304\u0305\u0307\u0308\u20d7" + LENT;
}

/** One face: where its bytes are and how CSS names it. */
interface Face {
  readonly family: string;
  readonly style: "normal" | "italic";
  /** The same descriptor for all faces of a family and style, else the match goes wrong without a word. */
  readonly weight: string;
  readonly file: string;
}

function faceFile(packageName: string, file: string): string {
  return require.resolve(`${packageName}/files/${file}`);
}

function sourceSans(script: string, cut: "400-normal" | "600-normal" | "400-italic"): Face {
  return {
    family: "Source Sans 3",
    style: cut === "400-italic" ? "italic" : "normal",
    weight: cut === "600-normal" ? "501 900" : "200 500",
    file: faceFile("@fontsource/source-sans-3", `source-sans-3-${script}-${cut}.woff2`),
  };
}

const codeFace = (): Face => ({
  family: "Source Code Pro",
  style: "normal",
  weight: "200 900",
  file: faceFile("@fontsource/source-code-pro", "source-code-pro-latin-400-normal.woff2"),
});

const mathFile = () =>
  faceFile("@fontsource/noto-sans-math", "noto-sans-math-latin-400-normal.woff2");

const mathSubsets = new Map<string, Promise<Uint8Array>>();

/** The math font with these characters only, made once a process. */
function mathFont(characters: string): Promise<Uint8Array> {
  const made = mathSubsets.get(characters) ??
    Deno.readFile(mathFile()).then((bytes) =>
      subsetFont(Buffer.from(bytes), characters, { targetFormat: "woff2" })
    );
  mathSubsets.set(characters, made);
  return made;
}

function rule(family: string, style: string, weight: string, bytes: Uint8Array): string {
  return `@font-face{font-family:"${family}";font-style:${style};font-weight:${weight};` +
    `font-display:block;src:url(data:font/woff2;base64,${
      Buffer.from(bytes).toString("base64")
    }) format("woff2")}`;
}

/**
 * The `@font-face` rules for a page.
 *
 * @param html the page's body: its characters and elements decide what is needed
 * @returns CSS with every font inside as base64
 */
export async function fontCss(html: string): Promise<string> {
  const faces: Face[] = [
    sourceSans("latin", "400-normal"),
    sourceSans("latin", "600-normal"),
    sourceSans("latin", "400-italic"),
  ];
  const text = html.replace(/<math[\s\S]*?<\/math>/g, "");
  for (const script of SCRIPTS) {
    if (!script.has.test(text)) continue;
    for (const cut of ["400-normal", "600-normal", "400-italic"] as const) {
      faces.push(sourceSans(script.name, cut));
    }
  }
  if (/<(code|pre|kbd|samp)\b/.test(html)) faces.push(codeFace());
  const rules: string[] = [];
  for (const face of faces) {
    const bytes = await Deno.readFile(face.file);
    rules.push(rule(face.family, face.style, face.weight, bytes));
  }
  const formulas = html.includes("<math");
  if (formulas || new RegExp(`[${LENT}]`, "u").test(html)) {
    const bytes = await mathFont(formulas ? mathCharacters() : LENT);
    rules.push(rule("Lakeproof Math", "normal", "200 900", bytes));
  }
  return rules.join("\n");
}

let drawingFonts: Promise<readonly Uint8Array[]> | null = null;

/** The fonts of drawings as plain font files, converted once a process: the renderer does not read web fonts. */
function drawingFontBytes(): Promise<readonly Uint8Array[]> {
  const everything = Array.from(
    { length: 0x3000 - 0x20 },
    (_, i) => String.fromCodePoint(0x20 + i),
  );
  // Signs only: the renderer sets a whole text in the font that lends it one sign, if that font has all its letters.
  const signs = [...mathCharacters()].filter((character) => character > "\u2000");
  const plain = async (file: string, characters: readonly string[]) =>
    await subsetFont(Buffer.from(await Deno.readFile(file)), characters.join(""), {
      targetFormat: "sfnt",
    });
  drawingFonts ??= Promise.all([
    plain(sourceSans("latin", "400-normal").file, everything),
    plain(sourceSans("latin", "600-normal").file, everything),
    plain(sourceSans("latin-ext", "400-normal").file, everything),
    plain(sourceSans("greek", "400-normal").file, everything),
    plain(mathFile(), signs),
  ]);
  return drawingFonts;
}

/**
 * Calls a function with the paths of font files for drawings; the files are gone afterwards.
 *
 * @param use gets the paths
 * @returns what `use` returns
 */
export async function withFontFiles<T>(use: (paths: string[]) => T | Promise<T>): Promise<T> {
  const folder = await Deno.makeTempDir({ prefix: "lakeproof-fonts-" });
  try {
    const paths: string[] = [];
    for (const [n, bytes] of (await drawingFontBytes()).entries()) {
      const path = join(folder, `${n}.ttf`);
      await Deno.writeFile(path, bytes);
      paths.push(path);
    }
    return await use(paths);
  } finally {
    await Deno.remove(folder, { recursive: true });
  }
}
