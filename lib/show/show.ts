/**
 * Shows a record in a notebook cell; outside a notebook prints its plain text.
 *
 * The one file that touches the kernel's display, and only when it is called: the same modules run at the command line
 * and in tests.
 *
 * @module
 */
import { displayBundle, type Showable } from "./display-bundle.ts";

/** The part of the kernel that shows things. */
interface KernelDisplay {
  display(bundle: unknown, options: { raw: true }): Promise<void>;
}

function kernelDisplay(): KernelDisplay | null {
  try {
    // Outside the kernel this getter throws or is undefined, by version.
    const { Deno } = globalThis as { Deno?: { jupyter?: KernelDisplay } };
    return Deno?.jupyter ?? null;
  } catch {
    return null;
  }
}

/** ms */
const PAUSE = 10;

/**
 * Shows one record; await it, and end the cell without a value.
 *
 * @param record an answer, a figure, a table, findings, or a fit report as text
 */
export async function show(record: Showable): Promise<void> {
  const bundle = displayBundle(record);
  const kernel = kernelDisplay();
  if (kernel === null) {
    console.log(bundle["text/plain"].trimEnd());
    return;
  }
  await kernel.display(bundle, { raw: true });
  // The kernel may send a display after its `idle`, where other clients stop listening: on a busy machine 103 of 2,000
  // came late without a pause, 4 of 7,000 with one of 0 to 3 ms, none of 2,500 with this one.
  await new Promise((resolve) => setTimeout(resolve, PAUSE));
}
