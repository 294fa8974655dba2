/**
 * Keeps a session folder's descriptor true to its tables.
 *
 * @module
 */
import { rename, writeFile } from "node:fs/promises";
import { basename, join } from "node:path";
import { type Descriptor, parseDescriptor } from "./descriptor-schema.ts";
import { makeDescriptor } from "./make-descriptor.ts";
import { sessionFiles } from "./open-session.ts";
import { DESCRIPTOR, statedUnits } from "./read-descriptor.ts";

/**
 * The descriptor of a folder made anew from its tables; title, units and every property that is not ours stay.
 *
 * @param name of the folder
 * @param files bytes by name
 */
function renewedDescriptor(name: string, files: ReadonlyMap<string, Uint8Array>): string {
  const bytes = files.get(DESCRIPTOR);
  const parsed = bytes === undefined ? null : parseDescriptor(new TextDecoder().decode(bytes));
  const old: Descriptor | null = parsed !== null && parsed.ok ? parsed.descriptor : null;
  const made = JSON.parse(makeDescriptor(files, {
    name,
    units: (file) => statedUnits(old, file),
    ...(old?.title === undefined ? {} : { title: old.title }),
    ...(old?.invented === undefined ? {} : { invented: old.invented }),
  })) as Record<string, unknown>;
  return JSON.stringify({ ...old, ...made }, null, 2) + "\n";
}

/**
 * Writes the descriptor of a session folder anew; whole or not at all.
 *
 * @param folder absolute path
 */
export async function describeFolder(folder: string): Promise<void> {
  const text = renewedDescriptor(basename(folder), await sessionFiles(folder));
  const path = join(folder, DESCRIPTOR);
  await writeFile(`${path}.new`, text);
  await rename(`${path}.new`, path);
}
