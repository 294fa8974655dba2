/**
 * Runs a child command with the running Deno binary or a tool from node_modules, and hands on its exit code.
 *
 * @module
 */

/** A step of a task: what it is called on the terminal, and its command line. */
export interface Step {
  readonly name: string;
  readonly args: readonly string[];
}

/**
 * Runs one Deno command with the terminal's own input and output. Returns its exit code.
 *
 * @param args of `deno`
 * @returns 0 when it went well
 */
export async function runDeno(args: readonly string[]): Promise<number> {
  const child = new Deno.Command(Deno.execPath(), {
    args: [...args],
    stdin: "null",
    stdout: "inherit",
    stderr: "inherit",
  });
  return (await child.spawn().status).code;
}

/**
 * Runs steps in order; stops at the first that fails, says which, and exits with its code.
 *
 * @param steps with a name to print and the arguments of `deno`
 * @returns never: the process ends
 */
export async function runSteps(steps: readonly Step[]): Promise<never> {
  for (const step of steps) {
    console.error(`> ${step.name}`);
    const code = await runDeno(step.args);
    if (code !== 0) {
      console.error(`${step.name} failed (exit code ${code})`);
      Deno.exit(code);
    }
  }
  Deno.exit(0);
}
