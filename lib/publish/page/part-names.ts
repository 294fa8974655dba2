/**
 * Names that must not repeat: ids within a page, files beside it.
 *
 * @module
 */

/**
 * A name that is safe as a file name, an id and a part of an address: lower case letters, digits and single hyphens.
 *
 * @param text any text, for instance a figure's name or a heading
 * @param fallback what to use when nothing is left
 * @returns for instance "cedar-against-alder"
 * @example
 * ```ts
 * import { plainName } from "lakeproof/publish/page/part-names.ts";
 * if (plainName("../Cedar & <alder>", "part") !== "cedar-alder") throw new Error("not plain");
 * ```
 */
export function plainName(text: string, fallback: string): string {
  const plain = text
    .normalize("NFKD")
    .replace(/\p{M}/gu, "")
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, "-")
    .slice(0, 64)
    .replace(/^-+|-+$/g, "");
  return plain === "" ? fallback : plain;
}

/** Hands out each name once: "glides", then "glides-2". */
export class UniqueNames {
  readonly #used = new Set<string>();

  /** @param reserved names that are never handed out as they are */
  constructor(reserved: readonly string[] = []) {
    for (const name of reserved) this.#used.add(name);
  }

  /**
   * @param wanted a plain name
   * @returns the name itself, or with the first free number behind it
   */
  take(wanted: string): string {
    let name = wanted;
    for (let n = 2; this.#used.has(name); n++) name = `${wanted}-${n}`;
    this.#used.add(name);
    return name;
  }
}
