/**
 * `deno run -A lib/tasks/simulate.ts [--sessions N] [--write]`: how often the verdict on two foils is right, in worlds
 * whose truth is known. Prints every cell; exits 1 when it falls short. `--write` puts the table into shared/coverage.csv.
 */
import { acceptanceChecks, ASKED_RUNS } from "./simulation/acceptance.ts";
import { cellsFor, DEPTH_UNKNOWN, IN_BLOCKS, OTHER_ENDS, TROUBLED } from "./simulation/cells.ts";
import { WORLDS } from "./simulation/foil-world.ts";
import { type CellResult, runCell } from "./simulation/run-cell.ts";

const USAGE = "Usage: deno run -A lib/tasks/simulate.ts [--sessions N] [--write]";

/** The command line, or `null` where it makes no sense. */
function readArguments(words: readonly string[]): { sessions: number; write: boolean } | null {
  let sessions = 2000, write = false;
  for (let i = 0; i < words.length; i++) {
    if (words[i] === "--write") write = true;
    else if (words[i] === "--sessions") sessions = Number(words[++i]);
    else return null;
  }
  return Number.isInteger(sessions) && sessions > 0 ? { sessions, write } : null;
}

const percent = (part: number, whole: number) => (100 * part / whole).toFixed(1);

/** One line of the printed table. */
function line(cell: CellResult): string {
  const { sessions } = cell;
  return [
    cell.name.padEnd(46),
    percent(cell.covered, sessions).padStart(7),
    (100 * cell.halfWidth).toFixed(1).padStart(7),
    (100 * cell.bias).toFixed(2).padStart(7),
    percent(cell.claims, sessions).padStart(7),
    percent(cell.wrongClaims, sessions).padStart(7),
    String(cell.failures).padStart(7),
    percent(cell.naiveCovered, sessions).padStart(9),
    percent(cell.naiveWrongClaims, sessions).padStart(7),
  ].join(" ");
}

/** The table as a file for notebooks. */
function table(cells: readonly CellResult[]): string {
  const head =
    "world,foils,runs_a_side,candidate_runs,depth_known,blocks,ends,pumped,shared_errors,sessions,coverage,half_width,bias,claims," +
    "wrong_claims,failures,raw_coverage,raw_wrong_claims";
  const rows = cells.map((cell) =>
    [
      cell.world,
      cell.foils,
      cell.runs,
      cell.candidateRuns ?? cell.runs,
      cell.depthKnown,
      cell.blocks ?? "",
      cell.ends ?? "",
      cell.pumped ?? false,
      cell.shared ?? false,
      cell.sessions,
      ...[
        cell.covered / cell.sessions,
        cell.halfWidth,
        cell.bias,
        cell.claims / cell.sessions,
        cell.wrongClaims / cell.sessions,
        cell.failures / cell.sessions,
        cell.naiveCovered / cell.sessions,
        cell.naiveWrongClaims / cell.sessions,
      ].map((value) => value.toFixed(4)),
    ].join(",")
  );
  return [head, ...rows, ""].join("\n");
}

const asked = readArguments(Deno.args);
if (asked === null) {
  console.error(USAGE);
  Deno.exit(2);
}
console.log(`Worlds (${asked.sessions} sessions a cell; "pair" two foils, "null" one foil twice):`);
for (const [name, words] of Object.entries(WORLDS)) console.log(`  ${name}: ${words}`);
console.log(
  "\ncell                                             cover % half % bias %  claims%  wrong%    fail raw cover% wrong%",
);
const started = performance.now();
const kinds = [
  ...cellsFor([2, 3, ...ASKED_RUNS]),
  ...DEPTH_UNKNOWN,
  ...IN_BLOCKS,
  ...OTHER_ENDS,
  ...TROUBLED,
];
const cells = kinds.map((kind) => {
  const cell = runCell(kind, asked.sessions);
  console.log(line(cell));
  return cell;
});
const seconds = (performance.now() - started) / 1000;
console.log(
  `\n${Math.round(cells.length * asked.sessions / seconds)} sessions a second over ${
    seconds.toFixed(0)
  } s\n`,
);
// Fewer sessions than 2,000 a cell: three binomial standard errors more on either side.
const slack = asked.sessions >= 2000 ? 0 : 3 * Math.sqrt(0.95 * 0.05 / asked.sessions);
const checks = acceptanceChecks(cells, slack);
for (const one of checks) {
  const range = one.low > 0
    ? `${(100 * one.low).toFixed(1)} to ${(100 * one.high).toFixed(1)}`
    : `at most ${(100 * one.high).toFixed(1)}`;
  console.log(
    `${one.holds ? "holds" : "FAILS"}  ${one.what}: ${(100 * one.value).toFixed(1)} % (${range})`,
  );
}
const failed = checks.filter((one) => !one.holds).length;
if (asked.write) {
  await Deno.writeTextFile(new URL("../../shared/coverage.csv", import.meta.url), table(cells));
}
console.log(`\n${checks.length - failed} passed, ${failed} failed`);
Deno.exit(failed === 0 ? 0 : 1);
