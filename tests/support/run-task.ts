/** Runs a task of a project to its end, with an environment of one's own. */
import { PROJECT } from "./small-project.ts";

/** How a task ended. */
export interface TaskEnd {
  readonly code: number;
  readonly output: string;
}

/**
 * Runs `lib/tasks/NAME.ts` of this project.
 *
 * @param name of the task
 * @param args its arguments
 * @param how folder to start in (this project's), more environment, and a command to put before Deno
 */
export async function runTask(
  name: string,
  args: readonly string[],
  how: {
    readonly cwd?: string;
    readonly env?: Readonly<Record<string, string>>;
    readonly before?: readonly string[];
  } = {},
): Promise<TaskEnd> {
  const words = [...how.before ?? [], Deno.execPath()];
  const output = await new Deno.Command(words[0]!, {
    args: [...words.slice(1), "run", "-A", `${how.cwd ?? PROJECT}/lib/tasks/${name}.ts`, ...args],
    cwd: how.cwd ?? PROJECT,
    env: { NO_COLOR: "1", ...how.env },
    stdin: "null",
    stdout: "piped",
    stderr: "piped",
  }).output();
  const decoder = new TextDecoder();
  return {
    code: output.code,
    output: decoder.decode(output.stdout) + decoder.decode(output.stderr),
  };
}
