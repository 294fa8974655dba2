/**
 * `deno run -A lib/tasks/simulate.ts [glide] [tow] [--sessions N] [--write]`: how often the answers are right in worlds whose
 * truth is known, on glides and on tows. Prints every cell; exits 1 when it falls short. `--write` puts the tables into
 * shared/.
 */
import { type AcceptanceCheck, acceptanceChecks } from "./simulation/acceptance.ts";
import { glideCoverageTable, runGlideStudy } from "./simulation/glide-study.ts";
import { towAcceptance } from "./simulation/tow-acceptance.ts";
import { runTowStudy, towCoverageTable, towFindingsTable } from "./simulation/tow-study.ts";

const USAGE = "Usage: deno run -A lib/tasks/simulate.ts [glide] [tow] [--sessions N] [--write]";

/** Sessions a cell in a study that is to be leaned on. */
const WHOLE = 2000;

/** Sessions a cell where none are asked for: a tow takes many times as long as a glide. */
const USUAL = { glide: WHOLE, tow: 300 } as const;

interface Asked {
  readonly glide: boolean;
  readonly tow: boolean;
  /** `null`: as many as usual. */
  readonly sessions: number | null;
  readonly write: boolean;
}

/** The command line, or `null` where it makes no sense. */
function readArguments(words: readonly string[]): Asked | null {
  let sessions: number | null = null, write = false;
  const studies = new Set<string>();
  for (let i = 0; i < words.length; i++) {
    const word = words[i]!;
    if (word === "--write") write = true;
    else if (word === "--sessions") sessions = Number(words[++i]);
    else if (word === "glide" || word === "tow") studies.add(word);
    else return null;
  }
  if (sessions !== null && !(Number.isInteger(sessions) && sessions > 0)) return null;
  const all = studies.size === 0;
  return { glide: all || studies.has("glide"), tow: all || studies.has("tow"), sessions, write };
}

function report(checks: readonly AcceptanceCheck[]): void {
  console.log("");
  for (const one of checks) {
    const range = one.low > 0
      ? `${(100 * one.low).toFixed(1)} to ${(100 * one.high).toFixed(1)}`
      : `at most ${(100 * one.high).toFixed(1)}`;
    console.log(
      `${one.holds ? "holds" : "FAILS"}  ${one.what}: ${(100 * one.value).toFixed(1)} % (${range})`,
    );
  }
}

const write = (name: string, text: string) =>
  Deno.writeTextFile(new URL(`../../shared/${name}`, import.meta.url), text);

const asked = readArguments(Deno.args);
if (asked === null) {
  console.error(USAGE);
  Deno.exit(2);
}
const started = performance.now();
const checks: AcceptanceCheck[] = [];
if (asked.glide) {
  const sessions = asked.sessions ?? USUAL.glide;
  const cells = runGlideStudy(sessions);
  // Fewer sessions than 2,000 a cell: three binomial standard errors more on either side.
  const slack = sessions >= WHOLE ? 0 : 3 * Math.sqrt(0.95 * 0.05 / sessions);
  const found = acceptanceChecks(cells, slack);
  report(found);
  checks.push(...found);
  if (asked.write) await write("coverage.csv", glideCoverageTable(cells));
}
if (asked.tow) {
  const sessions = asked.sessions ?? USUAL.tow;
  const study = await runTowStudy(sessions);
  const found = towAcceptance(study.cells, sessions >= WHOLE ? 0 : 3);
  report(found);
  checks.push(...found);
  if (asked.write) {
    await write("tow-coverage.csv", towCoverageTable(study));
    await write("tow-findings.csv", towFindingsTable(study));
  }
}
const failed = checks.filter((one) => !one.holds).length;
console.log(`\nafter ${((performance.now() - started) / 1000).toFixed(0)} s`);
console.log(`${checks.length - failed} passed, ${failed} failed`);
Deno.exit(failed === 0 ? 0 : 1);
