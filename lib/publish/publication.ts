/**
 * What a site says of itself to catalogues and to those who cite it: title, authors, licence, address.
 *
 * It stands in `notebooks/publication.json`; a project without that file is published all the same, by authors unnamed.
 *
 * @module
 */
import { join } from "node:path";
import { DataError } from "../base/errors.ts";
import { sha256 } from "./checksum.ts";

/** Name of the file, in `notebooks/`. */
export const PUBLICATION_FILE = "publication.json";

/** What the file says. */
export interface Publication {
  readonly title: string;
  /** One or two sentences. */
  readonly description: string;
  /** Names of people or groups, in order; at least one. */
  readonly authors: readonly string[];
  /** Name of a licence in the SPDX list, such as `CC-BY-4.0`; `null` when none is given. */
  readonly licence: string | null;
  /** Where the site will stand, ended by a slash; `null` when that is not known. */
  readonly address: string | null;
}

/** A site that says nothing of itself. */
export const UNNAMED: Publication = {
  title: "Which of my wings is better?",
  description: "Evidence from the water for people who build their own hydrofoil wings.",
  authors: ["The authors of this site"],
  licence: null,
  address: null,
};

const KEYS = Object.keys(UNNAMED);

function faultOf(value: unknown): string | null {
  if (typeof value !== "object" || value === null || Array.isArray(value)) return "it is no object";
  const unknown = Object.keys(value).find((key) => !KEYS.includes(key));
  if (unknown !== undefined) return `"${unknown}" is none of ${KEYS.join(", ")}`;
  const { authors, address, ...texts } = value as Record<string, unknown>;
  const wrong = Object.entries(texts).find(([key, text]) =>
    typeof text !== "string" && !(key === "licence" && text === null)
  );
  if (wrong !== undefined) return `"${wrong[0]}" is no text`;
  const named = Array.isArray(authors) && authors.length > 0 &&
    authors.every((one) => typeof one === "string" && one.trim() !== "");
  if (authors !== undefined && !named) return `"authors" is no list of names`;
  const reachable = typeof address === "string" && /^https?:\/\/[^\s"<>]+\/$/.test(address);
  if (address !== undefined && address !== null && !reachable) {
    return `"address" must begin with https:// and end with a slash`;
  }
  return null;
}

/**
 * Reads what a project says of its publication.
 *
 * @param root the project's folder
 * @returns what the file says, defaults for the rest
 * @throws DataError when the file is there and can't be used
 */
export function readPublication(root: string): Publication {
  const path = join(root, "notebooks", PUBLICATION_FILE);
  let text: string;
  try {
    text = Deno.readTextFileSync(path);
  } catch (error) {
    if (error instanceof Deno.errors.NotFound) return UNNAMED;
    throw error;
  }
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    throw new DataError(`Cannot read notebooks/${PUBLICATION_FILE}: it is no JSON.`);
  }
  const fault = faultOf(value);
  if (fault !== null) throw new DataError(`Cannot use notebooks/${PUBLICATION_FILE}: ${fault}.`);
  return { ...UNNAMED, ...value as Partial<Publication> };
}

/**
 * A checksum of all that it says, for caches.
 *
 * @param publication as read
 * @returns SHA-256 in hexadecimal
 */
export function publicationSha256(publication: Publication): string {
  return sha256(JSON.stringify(publication));
}
