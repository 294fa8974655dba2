/**
 * `deno run -A lib/tasks/tamper.ts [FOLDER] [--share S] [--write]`: tampers with a published folder in 200 seeded ways, half
 * of them with every checksum made anew, and has `verify` look at each. Prints every try; exits 1 when one is missed that
 * must be found. `--write` puts the table into shared/tampering.csv.
 */
import { readPublished } from "../publish/verify/published-folder.ts";
import { openWorkshop } from "../publish/verify/workshop.ts";
import { findRoot } from "../read/find-root.ts";
import { TAMPERINGS } from "./tampering/kinds.ts";
import { runSuite, type TryResult } from "./tampering/run-suite.ts";
import { stringify } from "csv-stringify/sync";

const USAGE = "Usage: deno run -A lib/tasks/tamper.ts [FOLDER] [--share S] [--write]";

/** The command line, or `null` where it makes no sense. */
function readArguments(words: readonly string[]) {
  let folder = "out", share = 1, write = false;
  for (let i = 0; i < words.length; i++) {
    if (words[i] === "--write") write = true;
    else if (words[i] === "--share") share = Number(words[++i]);
    else if (words[i]!.startsWith("--")) return null;
    else folder = words[i]!;
  }
  return share > 0 && share <= 1 ? { folder, share, write } : null;
}

/** A try that was missed though it must be found. */
const fails = ({ kind, checksums, outcome }: TryResult) =>
  outcome === "missed" && (kind.hidden === null || checksums === "left");

/** The table of all kinds, as a file for notebooks. */
function table(results: readonly TryResult[]): string {
  const rows = TAMPERINGS.map((kind) => {
    const of = results.filter((one) => one.kind === kind);
    const count = (checksums: TryResult["checksums"], ...outcomes: TryResult["outcome"][]) =>
      of.filter((one) => one.checksums === checksums && outcomes.includes(one.outcome)).length;
    return {
      tampering: kind.name,
      tries_left: of.filter((one) => one.checksums === "left").length,
      found_left: count("left", "named", "found", "noted"),
      tries_anew: of.filter((one) => one.checksums === "made anew").length,
      named_anew: count("made anew", "named"),
      found_anew: count("made anew", "found"),
      noted_anew: count("made anew", "noted"),
      missed_anew: count("made anew", "missed"),
      why_missed: kind.hidden ?? "",
    };
  });
  return stringify(rows, { header: true });
}

const asked = readArguments(Deno.args);
const project = findRoot(Deno.cwd());
if (asked === null || project === null) {
  console.error(USAGE);
  Deno.exit(2);
}
const published = readPublished(asked.folder);
const workshop = openWorkshop(project, published.folder);
const started = performance.now();
let results: TryResult[];
try {
  results = await runSuite({
    files: published.files,
    workshop,
    project,
    share: asked.share,
    onTry: (one) => {
      const how = fails(one) ? "MISSED" : one.outcome;
      console.log(`${how.padEnd(7)} checksums ${one.checksums}: ${one.kind.name}: ${one.words}`);
      console.log(`        ${one.told.split("\n")[0]!.slice(0, 200)}`);
    },
  });
} finally {
  workshop.close();
}
const thin = TAMPERINGS.filter((kind) => {
  const anew = results.filter((one) => one.kind === kind && one.checksums === "made anew");
  const missed = anew.filter((one) => one.outcome === "missed").length;
  return kind.mostly === true && missed > anew.length / 2;
});
for (const { name } of thin) console.log(`FAILS: most tries of "${name}" were missed`);
const failed = results.filter(fails).length + thin.length;
const seconds = (performance.now() - started) / 1000;
console.log(`\n${table(results)}\n${results.length} tries in ${seconds.toFixed(0)} s`);
if (asked.write) Deno.writeTextFileSync(`${project}/shared/tampering.csv`, table(results));
console.log(`${results.length - failed} passed, ${failed} failed`);
Deno.exit(failed === 0 ? 0 : 1);
