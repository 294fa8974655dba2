/**
 * Which files the results of a program rest on: every reader of this room notes what it read.
 *
 * @module
 */
const read = new Set<string>();

/**
 * Notes that a file was read. Give its absolute path.
 *
 * @param path absolute, as the file was opened
 */
export function noteRead(path: string): void {
  read.add(path);
}

/**
 * Absolute paths of all data and reference files read so far, in the order read.
 *
 * @returns each path once
 */
export function filesRead(): readonly string[] {
  return [...read];
}
