/**
 * The study on glides: every cell, and the table that notebooks show.
 *
 * @module
 */
import { ASKED_RUNS } from "./acceptance.ts";
import { cellsFor, DEPTH_UNKNOWN, IN_BLOCKS, OTHER_ENDS, TROUBLED } from "./cells.ts";
import { WORLDS } from "./foil-world.ts";
import { type CellResult, runCell } from "./run-cell.ts";

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

/**
 * Coverage and claims as a file for notebooks.
 *
 * @param cells counts
 * @returns CSV, one row a cell
 */
export function glideCoverageTable(cells: readonly CellResult[]): string {
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

/**
 * Runs the study and prints a line a cell.
 *
 * @param sessions a cell
 * @returns counts
 */
export function runGlideStudy(sessions: number): readonly CellResult[] {
  console.log(`Worlds (${sessions} sessions a cell; "pair" two foils, "null" one foil twice):`);
  for (const [name, words] of Object.entries(WORLDS)) console.log(`  ${name}: ${words}`);
  console.log(
    "\ncell                                             cover % half % bias %  claims%  wrong%    fail raw cover% wrong%",
  );
  const kinds = [
    ...cellsFor([2, 3, ...ASKED_RUNS]),
    ...DEPTH_UNKNOWN,
    ...IN_BLOCKS,
    ...OTHER_ENDS,
    ...TROUBLED,
  ];
  return kinds.map((kind) => {
    const cell = runCell(kind, sessions);
    console.log(line(cell));
    return cell;
  });
}
