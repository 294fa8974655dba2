import { expect } from "vitest";

const folder = new URL("../golden/", import.meta.url);

/** An SVG with one element a line and coordinates to a tenth, so that engines that differ in a last digit agree. */
function normalised(svg: string): string {
  return svg.replace(/></g, ">\n<").replace(
    /-?\d+\.\d+/g,
    (n) => String(Number((+n).toFixed(1)) + 0),
  ) +
    "\n";
}

/**
 * Compares a drawing with the one kept in `tests/golden/`. Run the test with GOLDEN=write to keep a new one, and look at
 * it before you commit it.
 */
export function expectGolden(name: string, svg: string): void {
  const path = new URL(`${name}.svg`, folder);
  const text = normalised(svg);
  if (Deno.env.get("GOLDEN") === "write") Deno.writeTextFileSync(path, text);
  expect(text).toBe(Deno.readTextFileSync(path));
}
