/**
 * Notebooks: their form, and how they are read and written.
 *
 * @module
 */
export * from "./notebook-form.ts";
export { formatNotebook } from "./format-notebook.ts";
export { parseNotebook } from "./parse-notebook.ts";
