/** `task verify [FOLDER]`: runs a published folder again, without a network, and says same or names what differs. */
import { Command } from "commander";
import { UsageError } from "../base/errors.ts";
import { terminalProgress } from "../publish/progress.ts";
import { readPublished } from "../publish/verify/published-folder.ts";
import { verifySite } from "../publish/verify/verify-site.ts";
import { openWorkshop } from "../publish/verify/workshop.ts";
import { findRoot } from "../read/find-root.ts";
import { EXIT, runTask } from "./exit-codes.ts";
import { verificationText } from "./verification-text.ts";

const command = new Command("verify")
  .description(
    "Runs a published folder again in clean kernels without a network, and compares everything in it.",
  )
  .argument(
    "[folder]",
    "a folder that a report made, a copy of one, its site.zip, or one page in it",
    "out",
  )
  .option(
    "--fingerprint <checksum>",
    "the fingerprint of this folder as it was kept elsewhere, or its first eight digits or more",
  )
  .option("--all", "tell every result, and every difference instead of the first few of each kind")
  .exitOverride();

await runTask(async () => {
  await command.parseAsync(Deno.args, { from: "user" });
  const path = command.processedArgs[0] as string;
  const project = findRoot(Deno.cwd());
  if (project === null) {
    throw new UsageError(
      "Cannot find the project that checks: no deno.json here or above. Change to its folder, or to the source/ " +
        "folder of what you want to check.",
    );
  }
  const flags = command.opts<{ readonly all?: true; readonly fingerprint?: string }>();
  const fingerprint = flags.fingerprint?.toLowerCase() ?? null;
  if (fingerprint !== null && !/^[0-9a-f]{8,64}$/.test(fingerprint)) {
    throw new UsageError(
      "A fingerprint has 8 to 64 digits from 0 to 9 and a to f, as a check prints it.",
    );
  }
  const start = performance.now();
  const published = readPublished(path);
  const workshop = openWorkshop(project, published.folder);
  const stop = new AbortController();
  const encoder = new TextEncoder();
  const progress = terminalProgress(
    (text) => Deno.stderr.writeSync(encoder.encode(text)),
    Deno.stderr.isTerminal(),
  );
  try {
    const check = await verifySite({
      published,
      workshop,
      project,
      fingerprint,
      signal: stop.signal,
      progress,
    });
    console.log(verificationText(check, flags.all === true));
    console.log(`${((performance.now() - start) / 1000).toFixed(1)} s`);
    return check.findings.length === 0 ? EXIT.done : EXIT.fault;
  } finally {
    workshop.close();
  }
});
