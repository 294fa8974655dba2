/**
 * The ways in which the suite tampers with a published folder, and whether running it again can bring each to light.
 *
 * @module
 */
import { KINDS_OF_FILES } from "./kinds-of-files.ts";
import { KINDS_OF_WORDS } from "./kinds-of-words.ts";
import type { TamperKind } from "./ways.ts";

/** Every way, 200 tries in all. */
export const TAMPERINGS: readonly TamperKind[] = [...KINDS_OF_WORDS, ...KINDS_OF_FILES];
