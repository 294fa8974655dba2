/** Opens every page of `out/` in a headless Chromium: a missing browser or site is a failure here, and not a skip. */
import { runSteps } from "./run-command.ts";

Deno.env.set("LAKEPROOF_BROWSER", "required");
await runSteps([
  { name: "browser", args: ["run", "-A", "npm:vitest@5.1.1", "run", "tests/browser"] },
]);
