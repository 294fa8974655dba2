/** `task test`: every test, the slow ones too. Words after it narrow to files whose path holds them. */
import { runSteps } from "./run-command.ts";

await runSteps([
  { name: "tests", args: ["run", "-A", "npm:vitest@5.1.1", "run", ...Deno.args] },
  { name: "doc tests", args: ["test", "--quiet", "-A", "--doc", "lib"] },
]);
