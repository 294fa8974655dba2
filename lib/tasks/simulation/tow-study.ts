/**
 * The study on tows: every cell, every slip, and the two tables that notebooks show.
 *
 * @module
 */
import { type BandTally, TOW_QUANTITIES, type TowCellResult } from "./run-tow-cell.ts";
import { runSlip, type SlipResult, UNIT_SLIPS } from "./tow-slips.ts";
import type { Tally } from "./tow-tally.ts";
import { runTowCells } from "./run-tow-cells.ts";
import { ASKED_SWEEPS, TOW_KINDS, TOW_RANGES, TOW_WORLDS, type TowKind } from "./tow-kind.ts";
import { WORD_TRIGGERS } from "./word-triggers.ts";

/** Everything that was counted. */
export interface TowStudy {
  readonly cells: readonly TowCellResult[];
  readonly slips: readonly SlipResult[];
}

/** Slips are the same in every session of a cell but for chance, so fewer sessions do. */
const SLIP_SHARE = 0.1;

const percent = (part: number, whole: number) =>
  whole === 0 ? "-" : (100 * part / whole).toFixed(1);

const HEAD =
  "cell                           drag   best  speed      a      K  bound  side  power ratio  ratio" +
  "  | null ratio, band | wrong side | without shared: drag, L/D, speed";

function line(cell: TowCellResult): string {
  const { quantities: q, bands } = cell;
  const held = ({ held, cases }: Tally) => percent(held, cases).padStart(6);
  const bare = ({ heldWithoutShared, cases }: Tally) => percent(heldWithoutShared, cases);
  const wrong = ({ wrongClaims, cases }: Tally | BandTally) => percent(wrongClaims, cases);
  return [
    cell.name.padEnd(30),
    ...TOW_QUANTITIES.map((name) => held(q[name])),
    "|",
    wrong(q["ratio of one"]),
    wrong(bands.one),
    "|",
    wrong(q["ratio of two"]),
    wrong(bands.two),
    "|",
    bare(q.drag),
    bare(q["best lift-to-drag"]),
    bare(q["speed of best"]),
  ].join(" ");
}

/**
 * Runs the study and prints a line a cell.
 *
 * @param sessions a cell
 * @returns counts
 */
export async function runTowStudy(sessions: number): Promise<TowStudy> {
  console.log(`\nTows (${sessions} sessions a cell; speeds x sweeps):`);
  for (const [name, words] of Object.entries({ ...TOW_WORLDS, ...TOW_RANGES })) {
    console.log(`  ${name}: ${words}`);
  }
  console.log(`\n${HEAD}`);
  const cells = await runTowCells(TOW_KINDS, sessions, (cell) => console.log(line(cell)));
  const some = Math.max(20, Math.round(SLIP_SHARE * sessions));
  const slips = ASKED_SWEEPS.flatMap(([speeds, sweeps]) => {
    const kind: TowKind = {
      world: "usual",
      speeds,
      sweeps,
      speedScatter: 0,
      depthKnown: true,
      range: "across",
    };
    return UNIT_SLIPS.map((slip) => runSlip(kind, slip, some));
  });
  console.log("\nA unit that slipped: answers refused, and the unit named");
  for (const { slip, speeds, sweeps, designs, refused, named } of slips) {
    console.log(
      `  ${`${speeds} x ${sweeps}`.padEnd(7)} ${slip.words.padEnd(42)} ${
        percent(refused, designs)
      } % ${percent(named, designs)} %`,
    );
  }
  return { cells, slips };
}

const share = (part: number, whole: number) => whole === 0 ? "" : (part / whole).toFixed(4);

/**
 * Coverage and claims as a file for notebooks.
 *
 * @param study counts
 * @returns CSV, one row a cell and quantity
 */
export function towCoverageTable({ cells }: TowStudy): string {
  const head =
    "world,speeds,sweeps,readings,speed_scatter,depth_known,range,quantity,cases,coverage," +
    "coverage_without_shared,half_width,claims,wrong_claims";
  const rows = cells.flatMap((cell) => {
    const { world, speeds, sweeps, speedScatter, depthKnown, range } = cell;
    const start = [world, speeds, sweeps, speeds * sweeps, speedScatter, depthKnown, range];
    const twoSided = ["drag", "best lift-to-drag", "speed of best"];
    return [
      ...TOW_QUANTITIES.filter((name) => cell.quantities[name].cases > 0).map((name) => {
        const one = cell.quantities[name];
        const ratio = name.startsWith("ratio");
        return [
          ...start,
          name,
          one.cases,
          share(one.held, one.cases),
          twoSided.includes(name) ? share(one.heldWithoutShared, one.cases) : "",
          one.halfWidth === 0 ? "" : one.halfWidth.toFixed(4),
          ratio ? share(one.claims, one.cases) : "",
          ratio ? share(one.wrongClaims, one.cases) : "",
        ];
      }),
      ...(["one", "two"] as const).map((name) => {
        const band = cell.bands[name];
        return [
          ...start,
          `band of ${name}`,
          band.cases,
          "",
          "",
          "",
          share(band.claims, band.cases),
          share(band.wrongClaims, band.cases),
        ];
      }),
    ];
  });
  return [head, ...rows.map((row) => row.join(",")), ""].join("\n");
}

/**
 * Words said without a cause, and slips found, as a file for notebooks.
 *
 * @param study counts
 * @returns CSV, one row a cell and word
 */
export function towFindingsTable({ cells, slips }: TowStudy): string {
  const head = "code,trigger,sessions,world,readings,designs,said,unit_named";
  const clean = cells.filter((one) =>
    one.depthKnown && one.speedScatter === 0 && one.range === "across"
  );
  const codes = Object.keys(WORD_TRIGGERS);
  const rows = [
    ...codes.flatMap((code) =>
      clean.map((cell) => [
        code,
        WORD_TRIGGERS[code],
        "clean",
        cell.world,
        cell.speeds * cell.sweeps,
        cell.designs,
        share(cell.words.get(code) ?? 0, cell.designs),
        "",
      ])
    ),
    ...slips.map(({ slip, world, speeds, sweeps, designs, refused, named }) => [
      "unit-slip",
      slip.words,
      "slipped",
      world,
      speeds * sweeps,
      designs,
      share(refused, designs),
      share(named, designs),
    ]),
  ];
  return [head, ...rows.map((row) => row.join(",")), ""].join("\n");
}
