/**
 * Finds the modules that a TypeScript source imports, without running or parsing it in full.
 *
 * Works on the form that the formatter writes. `import type` is told apart, since it leaves nothing at run time.
 *
 * @module
 */

/** One import of a source file. */
export interface FoundImport {
  readonly specifier: string;
  readonly typeOnly: boolean;
  readonly dynamic: boolean;
}

const STATIC = /^[ \t]*(?:import|export)\s+(type\s+)?(?:[^"';]*?\sfrom\s+)?["']([^"']+)["']/gm;
const DYNAMIC = /\bimport\(\s*["'`]([^"'`]+)["'`]/g;

/**
 * Every import of a source text.
 *
 * @param source TypeScript text
 * @returns static ones first, then dynamic ones, in the order written
 */
export function importsOf(source: string): FoundImport[] {
  const code = source.replace(/\/\*[\s\S]*?\*\//g, "").replace(/^\s*\/\/.*$/gm, "");
  const found: FoundImport[] = [];
  for (const match of code.matchAll(STATIC)) {
    if (match[2] !== undefined) {
      found.push({ specifier: match[2], typeOnly: match[1] !== undefined, dynamic: false });
    }
  }
  for (const match of code.matchAll(DYNAMIC)) {
    if (match[1] !== undefined) found.push({ specifier: match[1], typeOnly: false, dynamic: true });
  }
  return found;
}
