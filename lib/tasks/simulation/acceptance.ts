/**
 * What the simulation study must show before anyone may lean on the verdict.
 *
 * @module
 */
import type { CellResult } from "./run-cell.ts";

/** One thing that must hold. */
export interface AcceptanceCheck {
  readonly what: string;
  /** Share, 0 to 1. */
  readonly value: number;
  readonly low: number;
  readonly high: number;
  readonly holds: boolean;
}

/** Runs a side at which coverage is asked for. */
export const ASKED_RUNS = [4, 7, 12, 20] as const;

/** Coverage of 93 to 97 % with room for one Monte Carlo error of 2,000 sessions on either side. */
const COVERAGE = { low: 0.925, high: 0.975 };

/** Single worlds lie above the mix; even blocks, early stops and pumped runs add their own caution. */
const SINGLE_COVERAGE_HIGH = 0.985;

/** Unequal numbers in blocks take the wider of two intervals, since one of them covers 84 % where scatters differ twofold. */
const UNEQUAL_BLOCKS_HIGH = 0.995;

/** Claims of a difference between a foil and itself. */
const MOST_FALSE_CLAIMS = 0.05;

/** Without the launch taken into account, an interval of raw distances covers less than this. */
const NAIVE_COVERAGE = 0.7;

/** Whether all runs lie in one block and stall, as many of each design, with nothing else amiss. */
const plain = (cell: CellResult) =>
  [cell.blocks, cell.ends, cell.candidateRuns, cell.pumped, cell.shared]
    .every((part) => part === undefined);

const share = (cells: readonly CellResult[], count: (cell: CellResult) => number) =>
  cells.reduce((total, cell) => total + count(cell) / cell.sessions, 0) / cells.length;

/**
 * The checks on a set of cells.
 *
 * An interval that carries a prior covers its rate on average over that prior, not in each world; so coverage is asked of
 * the world whose shape errors are drawn from the prior, and of the equal mix of the three worlds that are not of the
 * prior's form. False claims are asked of that mix. The comparison of raw distances must fail the same question: a test
 * that passes both ways tests nothing.
 *
 * @param cells results, any set
 * @param slack added on both sides for fewer sessions than 2,000 a cell, as a share
 * @returns one check a question that the cells can answer
 */
export function acceptanceChecks(cells: readonly CellResult[], slack = 0): AcceptanceCheck[] {
  const checks: AcceptanceCheck[] = [];
  const check = (what: string, value: number, low: number, high: number) =>
    checks.push({ what, value, low, high, holds: value >= low && value <= high });
  for (const runs of ASKED_RUNS) {
    const at = cells.filter((cell) => cell.runs === runs && cell.depthKnown && plain(cell));
    const prior = at.filter((cell) => cell.world === "prior");
    const mix = at.filter((cell) => cell.world !== "prior");
    if (prior.length === 0 || mix.length === 0) continue;
    const [low, high] = [COVERAGE.low - slack, COVERAGE.high + slack];
    const pair = (kind: readonly CellResult[]) => kind.filter((cell) => cell.foils === "pair");
    const alike = (kind: readonly CellResult[]) => kind.filter((cell) => cell.foils === "null");
    const covered = (cell: CellResult) => cell.covered;
    const words = `${runs} runs a side`;
    check(
      `${words}: coverage, prior's own errors, two foils`,
      share(pair(prior), covered),
      low,
      high,
    );
    check(
      `${words}: coverage, prior's own errors, one foil`,
      share(alike(prior), covered),
      low,
      high,
    );
    check(`${words}: coverage, mix of worlds, two foils`, share(pair(mix), covered), low, high);
    check(`${words}: coverage, mix of worlds, one foil`, share(alike(mix), covered), low, high);
    check(
      `${words}: false claims, mix of worlds`,
      share(alike(mix), (cell) => cell.wrongClaims),
      0,
      MOST_FALSE_CLAIMS + slack,
    );
    check(
      `${words}: raw distances fail to cover, mix of worlds, two foils`,
      share(pair(mix), (cell) => cell.naiveCovered),
      0,
      NAIVE_COVERAGE,
    );
    check(`${words}: tagged failures`, share(at, (cell) => cell.failures), 0, 0.01 + slack);
  }
  for (const cell of cells.filter((one) => one.depthKnown && !plain(one))) {
    if (cell.blocks === "apart") {
      const most = COVERAGE.low;
      check(`${cell.name}: fails, and so is refused`, cell.covered / cell.sessions, 0, most);
      continue;
    }
    const wider = cell.blocks !== undefined && cell.candidateRuns !== undefined;
    const most = wider ? UNEQUAL_BLOCKS_HIGH : SINGLE_COVERAGE_HIGH;
    const [low, high] = [COVERAGE.low - slack, most + slack];
    check(`${cell.name}: coverage`, cell.covered / cell.sessions, low, high);
  }
  return checks;
}
