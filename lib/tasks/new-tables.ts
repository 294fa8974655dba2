/**
 * The tables of a new session: every column, and one row that shows how it is filled in and never counts.
 *
 * @module
 */
import { EXAMPLE_ROW } from "../read/example-row.ts";
import { type TableContract, TABLES } from "../base/tables.ts";
import { type Cell, writeTable } from "../read/write-table.ts";

/** Cells of the example rows by table and column; all invented, and marked so that reading passes them over. */
const EXAMPLES: Readonly<Record<string, Readonly<Record<string, Cell>>>> = {
  "designs.csv": {
    design: "alder",
    span: 1.15,
    area: 0.16,
    wet_volume: 4.2,
    thickness_ratio: 0.13,
    section: "cambered",
    largest_lift_coefficient: 1.2,
    strut_count: 1,
    strut_chord: 115,
    strut_thickness: 14,
    strut_length: 0.75,
    board_draught: 0.08,
    note: `${EXAMPLE_ROW}: write your own wing over it`,
  },
  "glides.csv": {
    run: "1",
    date: "2031-06-14",
    block: "mira saturday",
    design: "alder",
    launch_speed: 4.6,
    end_speed: 2.8,
    drop: 0.25,
    distance: 13.7,
    duration: 3.7,
    carried_mass: 84,
    depth: 0.35,
    ended: "stalled",
    leave_out: EXAMPLE_ROW,
    note: "write your own runs over this one",
  },
  "tow.csv": {
    point: "1",
    date: "2031-06-14",
    block: "mira saturday",
    sweep: "1",
    design: "alder",
    set_speed: 4,
    direction: "up",
    speed: 4.03,
    speed_over: "water",
    speed_change: 0.01,
    line_tension: 62,
    line_angle: 5,
    depth: 0.35,
    pitch: 1.5,
    carried_mass: 84,
    window: 10,
    leave_out: EXAMPLE_ROW,
    note: "write your own readings over this one",
  },
  "calibrations.csv": {
    instrument: `spring balance (${EXAMPLE_ROW})`,
    when: "before",
    applied: 5,
    applied_unit: "kg",
    reading: 5.1,
    reading_unit: "kg",
  },
  "conditions.csv": {
    quantity: "water_temperature",
    value: 17.5,
    unit: "degC",
    uncertainty: 0.5,
    stated_as: "limits",
    note: `${EXAMPLE_ROW}: write your own over it`,
  },
  "instruments.csv": {
    quantity: "distance",
    instrument: "tape along the jetty",
    uncertainty: 0.5,
    unit: "m",
    stated_as: "limits",
    kind: "independent",
    how: `${EXAMPLE_ROW}: read to the nearest half metre from the shore`,
  },
};

function tableText(contract: TableContract): string {
  const example = EXAMPLES[contract.file] ?? {};
  const names = contract.columns.map((column) => column.name);
  return writeTable(names, [names.map((name) => example[name] ?? null)]);
}

/**
 * Text of every table of a new session by file name.
 *
 * @returns CSV text, header and example row
 */
export function newTables(): Map<string, string> {
  return new Map(TABLES.map((contract) => [contract.file, tableText(contract)]));
}
