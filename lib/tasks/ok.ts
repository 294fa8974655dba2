/** `task ok`: the quick gate for each commit: format, lint, types, unit and doc tests. */
import { runSteps } from "./run-command.ts";

await runSteps([
  { name: "format", args: ["fmt", "--check", "--quiet"] },
  { name: "lint", args: ["lint", "--quiet"] },
  { name: "types", args: ["check", "--quiet", "lib", "tests"] },
  {
    name: "unit tests",
    args: [
      ...["run", "-A", "npm:vitest@5.1.1", "run"],
      ...["--exclude", "tests/slow/**", "--exclude", "tests/browser/**"],
    ],
  },
  { name: "doc tests", args: ["test", "--quiet", "-A", "--doc", "lib"] },
]);
