/**
 * Tables of a takeoff: results, water beside air, drag by parts, what matters most, changes, inputs.
 *
 * @module
 */
import type { Quantity } from "../base/quantity.ts";
import type { TableCell, TableRecord } from "../base/records.ts";
import { formatInterval, formatPercent, formatQuantity, unitText } from "../base/rounding.ts";
import type { TakeoffEvidence } from "../decide/estimate-takeoff.ts";
import { designCell, EMPTY_CELL, formattedCell, numberCell, textCell } from "./table-cells.ts";
import { left, right } from "./table-columns.ts";

/** Value and interval in one cell. */
export function quantityCell(q: Quantity | null, scale = 1): TableCell {
  if (q === null) return EMPTY_CELL;
  const by = (one: number | null) => one === null ? null : one * scale;
  const own: Quantity = {
    ...q,
    value: q.value * scale,
    standardUncertainty: by(q.standardUncertainty),
    low: by(q.low),
    high: by(q.high),
    unit: "1",
  };
  const value = formatQuantity(own, { unit: false });
  const interval = own.low === null && own.high === null
    ? ""
    : ` (${formatInterval(own, { unit: false })})`;
  return formattedCell(value + interval, own.value);
}

/**
 * What each design needs to fly in water: one row a design.
 *
 * @param evidence whole
 * @returns wing loading, speeds, tow force at takeoff, least drag and power
 */
export function takeoffResultsTable({ designs }: TakeoffEvidence): TableRecord {
  return {
    name: "takeoff-results",
    caption: "From which speed each design carries the load, and what it takes. Predicted.",
    columns: [
      left("design"),
      right("wing loading", "N/m²"),
      right("stall", "m/s"),
      right("takeoff", "m/s"),
      right("tow force there", "N"),
      right("least drag at", "m/s"),
      right("least drag", "N"),
      right("least power at", "m/s"),
      right("least power", "W"),
    ],
    rows: designs.map(({ answer: one, prepared: { place } }) => [
      designCell(one.design, place),
      quantityCell(one.wingLoading),
      quantityCell(one.stallSpeed),
      quantityCell(one.takeoffSpeed),
      quantityCell(one.towForceAtTakeoff),
      quantityCell(one.leastDragSpeed),
      quantityCell(one.leastDrag),
      quantityCell(one.leastPowerSpeed),
      quantityCell(one.leastPower),
    ]),
  };
}

/**
 * The same wing with the same load in water and in air: two rows a design.
 *
 * @param evidence whole
 * @returns speeds, Reynolds number, lift-to-drag, power per kilogram
 */
export function waterBesideAirTable({ designs }: TakeoffEvidence): TableRecord {
  return {
    name: "takeoff-water-air",
    caption:
      "The same wing with the same load in water and in air. In air it is the bare wing: no surface, struts or rider in the wind.",
    columns: [
      left("design"),
      left("in"),
      right("stall", "m/s"),
      right("takeoff", "m/s"),
      right("least drag at", "m/s"),
      right("least power at", "m/s"),
      right("Reynolds number at takeoff", "10⁵"),
      right("best lift-to-drag"),
      right("power per kilogram", "W/kg"),
    ],
    rows: designs.flatMap(({ answer: one, prepared: { place } }) => {
      const row = (
        medium: string,
        of: typeof one | NonNullable<typeof one.inAir>,
      ): readonly TableCell[] => [
        designCell(one.design, place),
        textCell(medium),
        quantityCell(of.stallSpeed),
        quantityCell(of.takeoffSpeed),
        quantityCell(of.leastDragSpeed),
        quantityCell(of.leastPowerSpeed),
        quantityCell(of.reynoldsNumber, 1e-5),
        quantityCell(of.bestLiftToDrag),
        quantityCell(of.powerPerKilogram),
      ];
      return [
        row("water", one),
        ...(one.inAir === null
          ? []
          : [row(`air, ${one.inAir.altitude.toFixed(0)} m up`, one.inAir)]),
      ];
    }),
  };
}

/**
 * Drag by its parts at takeoff, at the least-drag speed and half as fast again: one row a design and speed.
 *
 * @param evidence whole
 * @returns parts in N
 */
export function takeoffPartsTable({ designs }: TakeoffEvidence): TableRecord {
  const parts = [
    ["wingFriction", "wing friction and form"],
    ["viscousLift", "section, with lift"],
    ["inducedAndWave", "induced and waves"],
    ["struts", "struts"],
    ["spray", "spray"],
    ["junction", "junctions"],
    ["extra", "else under water"],
    ["air", "rider in air"],
    ["total", "whole"],
  ] as const;
  return {
    name: "takeoff-parts",
    caption:
      "Predicted drag by its parts: at takeoff, at the least-drag speed, and half as fast again.",
    columns: [
      left("design"),
      right("speed", "m/s"),
      right("depth", "m"),
      ...parts.map(([, label]) => right(label, "N")),
    ],
    rows: designs.flatMap(({ answer: { design, partsAt }, prepared: { place } }) =>
      partsAt.map((at) => [
        designCell(design, place),
        numberCell(at.speed, 2),
        numberCell(at.depth, 2),
        ...parts.map(([part]) => numberCell(at[part], 1)),
      ])
    ),
  };
}

const RESULTS: Readonly<Record<string, string>> = {
  takeoffSpeed: "takeoff speed",
  towForceAtTakeoff: "tow force at takeoff",
  leastDrag: "least drag",
  leastPower: "least power",
};

/** Inputs with less than this share of every result stay out of the table. */
const LEAST_SHARE = 0.01;

/**
 * What matters most: shares of each result's doubt by input, one row an input.
 *
 * @param evidence whole
 * @param design its name
 * @returns shares of the variance of four results, largest first by takeoff speed and least drag together
 */
export function whatMattersTable({ designs }: TakeoffEvidence, design: string): TableRecord {
  const own = designs.find((one) => one.answer.design === design)?.answer.whatMattersMost ?? [];
  const names = [...new Set(own.flatMap((one) => one.inputs.map((each) => each.input)))];
  const shareOf = (at: number, name: string) =>
    own[at]?.inputs.find((one) => one.input === name)?.share ?? 0;
  const all = (name: string) => own.map((_, at) => shareOf(at, name));
  const kept = names.filter((name) => Math.max(...all(name)) >= LEAST_SHARE)
    .sort((a, b) =>
      all(b).reduce((sum, one) => sum + one, 0) - all(a).reduce((sum, one) => sum + one, 0)
    );
  return {
    name: "takeoff-what-matters",
    caption:
      `Where the doubt about ${design} comes from: share of each result's variance, first order. Inputs under 1\u00a0% everywhere are left out.`,
    columns: [left("input"), ...own.map((one) => right(RESULTS[one.quantity] ?? one.quantity))],
    rows: kept.map((name) => [
      textCell(name),
      ...all(name).map((share) => formattedCell(formatPercent(share, 0), share)),
    ]),
  };
}

/** Per cent with its sign; what rounds to nothing has none. */
function signed(share: number): string {
  const text = formatPercent(Math.abs(share), 1);
  return Math.abs(share) < 5e-4 ? text : `${share < 0 ? "−" : "+"}${text}`;
}

/**
 * What a changed craft would cost or save: one row a change.
 *
 * @param evidence whole
 * @param design its name
 * @returns relative changes of four results
 */
export function takeoffChangesTable({ designs }: TakeoffEvidence, design: string): TableRecord {
  const own = designs.find((one) => one.answer.design === design)?.answer.changes ?? [];
  const cell = (share: number | null) =>
    share === null ? EMPTY_CELL : formattedCell(signed(share), share);
  return {
    name: "takeoff-changes",
    caption: `What a changed ${design} would need, by the model alone.`,
    columns: [
      left("change"),
      right("takeoff speed"),
      right("tow force at takeoff"),
      right("least drag"),
      right("least power"),
    ],
    rows: own.map((one) => [
      textCell(one.change),
      cell(one.takeoffSpeed),
      cell(one.towForceAtTakeoff),
      cell(one.leastDrag),
      cell(one.leastPower),
    ]),
  };
}

/**
 * The inputs of one design: value, how well it is known, and whether anyone stated it.
 *
 * @param evidence whole
 * @param design its name
 * @returns one row an input
 */
export function takeoffInputsTable({ answer }: TakeoffEvidence, design: string): TableRecord {
  const own = answer.inputs.filter((one) => one.design === design);
  return {
    name: "takeoff-inputs",
    caption:
      `What the numbers of ${design} rest on. Standard uncertainty: two readings of three lie within it. Where nobody stated it, it is a judgement.`,
    columns: [
      left("input"),
      right("value"),
      left("unit"),
      right("standard uncertainty"),
      left("from"),
    ],
    rows: own.map((one) => [
      textCell(one.input),
      formattedCell(String(Number(one.value.toPrecision(4))), one.value),
      textCell(one.unit === "1" ? "" : unitText(one.unit)),
      formattedCell(
        one.kind === "share"
          ? formatPercent(one.standardUncertainty, one.standardUncertainty < 0.01 ? 2 : 0)
          : `${Number(one.standardUncertainty.toPrecision(2))}`,
        one.standardUncertainty,
      ),
      textCell(one.stated ? "the session" : "usual"),
    ]),
  };
}
