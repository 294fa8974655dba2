/** `task report`: runs the notebooks in the real Deno kernel and writes the site to `out/`. */
import { join } from "node:path";
import { Command, CommanderError } from "commander";
import { DataError, UsageError } from "../base/errors.ts";
import { excerpt } from "../base/printable.ts";
import { sha256 } from "../publish/checksum.ts";
import { CHECKSUMS } from "../publish/site.ts";
import { siteMakers } from "../publish/site-makers.ts";
import { explainReport, publishSite } from "../publish/publish-site.ts";
import { terminalProgress } from "../publish/progress.ts";
import { openProject, StoppedError } from "../publish/open-project.ts";
import type { Changes } from "../publish/since/changes.ts";
import { changesText } from "../publish/since/changes-text.ts";
import { sincePath, writeSince } from "../publish/since/since-file.ts";
import { stateSince } from "../publish/since/site-state.ts";
import { EXIT } from "./exit-codes.ts";

interface Flags {
  readonly fresh?: true;
  readonly why?: true;
  readonly twice?: true;
  readonly refill?: true;
  readonly since?: string;
}

const command = new Command("report")
  .description("Runs the notebooks and writes the site to out/. What is still true is reused.")
  .argument("[notebook...]", "only these; the others stay as they were published last")
  .option("--fresh", "run them even when nothing changed")
  .option("--why", "run nothing: say which notebooks would run, and what moved")
  .option("--twice", "run each in two clean kernels; stop at the first cell whose bytes differ")
  .option("--refill", "put fresh numbers into the prose in place of stale ones")
  .option(
    "--since <commit-or-folder>",
    "say what moved since then: a commit, or a published folder or its site.zip; kept in notebooks/since.json",
  )
  .exitOverride();

/** Width of the terminal; 80 where it does not say. */
function terminalColumns(): number {
  try {
    return Deno.consoleSize().columns || 80;
  } catch {
    return 80;
  }
}

function why(root: string, names: readonly string[]): void {
  for (const one of explainReport({ root, names, makers: siteMakers(root) })) {
    const reason = one.why.length === 0 ? "nothing changed, reused" : one.why.join("\n    ");
    console.log(`${one.file}: ${reason}`);
  }
}

async function report(names: readonly string[], flags: Flags): Promise<void> {
  const start = performance.now();
  const project = await openProject((line) => console.error(line));
  const { root } = project;
  if (flags.why) return why(root, names);
  const encoder = new TextEncoder();
  const progress = terminalProgress(
    (text) => Deno.stderr.writeSync(encoder.encode(text)),
    Deno.stderr.isTerminal(),
    terminalColumns(),
  );
  const keep = flags.since === undefined ? null : await keepSince(root, flags.since);
  const done = await publishing(() =>
    publishSite({
      root,
      names,
      fresh: flags.fresh === true,
      twice: flags.twice === true,
      refill: flags.refill === true,
      signal: project.signal,
      progress,
      makers: siteMakers(root),
    }), keep);
  const seconds = ((performance.now() - start) / 1000).toFixed(1);
  const pages = done.pages === 1 ? "1 page" : `${done.pages} pages`;
  const ran = done.ran === 0 ? "no notebook had to run" : `${done.ran} run anew`;
  for (const file of done.written) console.log(`Outputs written into notebooks/${file}`);
  console.log(`${pages}, ${ran}, ${seconds} s. Open out/index.html`);
  const fingerprint = sha256(Deno.readFileSync(join(root, "out", CHECKSUMS)));
  console.log(`Fingerprint: ${fingerprint} (kept elsewhere, it shows any later change)`);
  if (keep === null) return;
  const changes: Changes = JSON.parse(Deno.readTextFileSync(join(root, "out", "changes.json")));
  for (const line of changesText(changes).split("\n")) console.log(excerpt(line, 300));
  console.log("The same as a page: out/changes.html");
}

/** Keeps the state to compare with, and gives what takes it back. */
async function keepSince(root: string, asked: string): Promise<() => void> {
  const path = sincePath(root);
  let before: string | null = null;
  try {
    before = Deno.readTextFileSync(path);
  } catch (error) {
    if (!(error instanceof Deno.errors.NotFound)) throw error;
  }
  writeSince(root, await stateSince(root, asked));
  return () => before === null ? Deno.removeSync(path) : Deno.writeTextFileSync(path, before);
}

/** A report that fails leaves the notebooks' folder as it was. */
async function publishing<T>(publish: () => Promise<T>, takeBack: (() => void) | null): Promise<T> {
  try {
    return await publish();
  } catch (error) {
    takeBack?.();
    throw error;
  }
}

/** Exit code of a program that was asked to stop, by custom of shells. */
const STOPPED = 130;

/** A message of several lines, without anything from data that could act on the terminal. */
function tell(message: string): void {
  for (const line of message.split("\n")) console.error(excerpt(line, 2000));
}

function tellError(error: unknown): number {
  if (error instanceof CommanderError) return error.exitCode === 0 ? EXIT.done : EXIT.usage;
  if (error instanceof UsageError) {
    tell(error.message);
    return EXIT.usage;
  }
  if (!(error instanceof DataError || error instanceof StoppedError)) {
    console.error(error);
    return EXIT.fault;
  }
  tell(error.message);
  if (error instanceof DataError && error.findings.length > 1) {
    for (const { file, what } of error.findings) tell(`    ${file ?? ""}: ${what}`);
  }
  console.error("Nothing was published: out/ and the notebooks are as they were.");
  return error instanceof StoppedError ? STOPPED : EXIT.fault;
}

try {
  await command.parseAsync(Deno.args, { from: "user" });
  await report(command.args, command.opts<Flags>());
  Deno.exit(EXIT.done);
} catch (error) {
  Deno.exit(tellError(error));
}
