/**
 * A folder's descriptor, with what is wrong with it, and the units that it states.
 *
 * @module
 */
import { CONTRACT } from "../base/answers.ts";
import { type Finding, finding } from "../base/finding.ts";
import { excerpt } from "../base/printable.ts";
import { type Descriptor, parseDescriptor } from "./descriptor-schema.ts";

/** Name of the descriptor in a session folder. */
export const DESCRIPTOR = "datapackage.json";

const note = (code: string, file: string | null, what: string, wanted: string | null = null) =>
  finding({ severity: "note", code, file, what, wanted });

const fault = (code: string, file: string | null, what: string, wanted: string | null = null) =>
  finding({ severity: "error", code, file, what, wanted });

/**
 * The folder's descriptor, if it has one that holds; what is wrong with it goes to `findings`.
 *
 * @param files bytes of the folder by name
 * @param findings takes what is wrong with it
 * @returns `null` when there is none that can be used
 */
export function readDescriptor(
  files: ReadonlyMap<string, Uint8Array>,
  findings: Finding[],
): Descriptor | null {
  const bytes = files.get(DESCRIPTOR);
  if (bytes === undefined) {
    findings.push(note(
      "no-descriptor",
      DESCRIPTOR,
      "There is no datapackage.json, which tells other programs what the columns mean. The answers do not need it.",
    ));
    return null;
  }
  const parsed = parseDescriptor(new TextDecoder().decode(bytes));
  if (!parsed.ok) {
    findings.push(fault(
      "bad-descriptor",
      DESCRIPTOR,
      `This description of the tables can't be used: ${
        excerpt(parsed.reason, 300)
      }. Units that it names were not used.`,
      "The file as it was written, or no such file: then name units in the headers.",
    ));
    return null;
  }
  const { descriptor } = parsed;
  if ((descriptor.contract ?? CONTRACT) > CONTRACT) {
    findings.push(fault(
      "newer-contract",
      DESCRIPTOR,
      `The folder follows version ${descriptor.contract} of the session tables; this program knows version ${CONTRACT}.`,
      "A newer version of this program.",
    ));
  }
  const bare = descriptor.resources.filter((one) => one.schema === undefined);
  if (bare.length > 0) {
    findings.push(note(
      "no-schema",
      DESCRIPTOR,
      `This description of the tables names no columns for ${
        excerpt(bare.map((one) => one.path ?? one.name).join(", "))
      }; those tables are read by their headers alone.`,
    ));
  }
  return descriptor;
}

/**
 * Whether the descriptor's columns for a table are those that stand there; true where it names none.
 *
 * @param descriptor of the folder; `null` for none
 * @param file name of the table
 * @param headings names in the table's header, in order; none for a table without a header
 * @returns false when the descriptor speaks of another table than the one that is there
 */
export function describes(
  descriptor: Descriptor | null,
  file: string,
  headings: readonly string[],
): boolean {
  const found = resourceOf(descriptor, file);
  if (descriptor === null || headings.length === 0) return true;
  if (found === undefined) return false;
  const names = found.schema?.fields.map((one) => one.name) ?? headings;
  return names.length === headings.length && names.every((name, i) => name === headings[i]);
}

function resourceOf(descriptor: Descriptor | null, file: string) {
  return descriptor?.resources.find((one) => one.path?.replace(/^\.\//, "") === file);
}

/**
 * Units that the descriptor states for one table, by column name.
 *
 * @param descriptor of the folder; `null` for none
 * @param file name of the table
 * @returns unit names as written; columns without one are left out
 */
export function statedUnits(descriptor: Descriptor | null, file: string): Record<string, string> {
  const found = resourceOf(descriptor, file);
  const units: Record<string, string> = {};
  for (const field of found?.schema?.fields ?? []) {
    const name = field.name.replace(/\s*[[(].*$/, "").trim().toLowerCase().replace(/[\s-]+/g, "_");
    if (field.unit !== undefined) units[name] = field.unit;
  }
  return units;
}
