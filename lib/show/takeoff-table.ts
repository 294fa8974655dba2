/**
 * Tables of a takeoff: what each design needs, water beside air, drag by parts.
 *
 * @module
 */
import type { Quantity } from "../base/quantity.ts";
import type { TableCell, TableRecord } from "../base/records.ts";
import { printable } from "../base/printable.ts";
import type { DesignTakeoff } from "../base/takeoff-answer.ts";
import { formatInterval, formatQuantity } from "../base/rounding.ts";
import type { TakeoffEvidence } from "../decide/estimate-takeoff.ts";
import { designCell, EMPTY_CELL, formattedCell, numberCell, textCell } from "./table-cells.ts";
import { left, right } from "./table-columns.ts";

/**
 * Value and interval in one cell.
 *
 * @param q in SI; `null` gives an empty cell
 * @param scale factor from SI to the column's unit
 * @returns text in the column's unit with the value to sort by
 */
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

/** Rows of the summary: label, and the quantity of a design. */
const ROWS: readonly (readonly [string, (one: DesignTakeoff) => TableCell])[] = [
  ["wing loading (N/m²)", (one) => quantityCell(one.wingLoading)],
  ["stall speed (m/s)", (one) => quantityCell(one.stallSpeed)],
  ["takeoff speed (m/s)", (one) => quantityCell(one.takeoffSpeed)],
  ["tow force at takeoff (N)", (one) => quantityCell(one.towForceAtTakeoff)],
  ["Reynolds number at takeoff (thousands)", (one) => quantityCell(one.reynoldsNumber, 1e-3)],
  ["least drag (N)", (one) => quantityCell(one.leastDrag)],
  ["least-drag speed (m/s)", (one) => quantityCell(one.leastDragSpeed)],
  ["least power (W)", (one) => quantityCell(one.leastPower)],
  ["least-power speed (m/s)", (one) => quantityCell(one.leastPowerSpeed)],
  ["least power per kilogram (W/kg)", (one) => quantityCell(one.powerPerKilogram)],
  ["best lift-to-drag, whole craft", (one) => quantityCell(one.bestLiftToDrag)],
  ["best lift-to-drag, wing alone", (one) => quantityCell(one.bestWingLiftToDrag)],
  ["in air: stall speed (m/s)", (one) => quantityCell(one.inAir?.stallSpeed ?? null)],
  ["in air: takeoff speed (m/s)", (one) => quantityCell(one.inAir?.takeoffSpeed ?? null)],
  [
    "in air: Reynolds number at takeoff (thousands)",
    (one) => quantityCell(one.inAir?.reynoldsNumber ?? null, 1e-3),
  ],
  ["in air: least-drag speed (m/s)", (one) => quantityCell(one.inAir?.leastDragSpeed ?? null)],
  [
    "in air: best lift-to-drag, wing alone",
    (one) => quantityCell(one.inAir?.bestLiftToDrag ?? null),
  ],
  ["in air: least-power speed (m/s)", (one) => quantityCell(one.inAir?.leastPowerSpeed ?? null)],
  [
    "in air: least power per kilogram (W/kg)",
    (one) => quantityCell(one.inAir?.powerPerKilogram ?? null),
  ],
  [
    "in air: carried at the speed of water (g)",
    (one) => numberCell(one.liftEqualMass === null ? null : one.liftEqualMass * 1000, 0),
  ],
];

/**
 * What each design needs to fly, in water and in air: one row a quantity, one column a design.
 *
 * @param evidence whole
 * @returns values with their 95 % intervals
 */
export function takeoffTable({ designs }: TakeoffEvidence): TableRecord {
  return {
    name: "takeoff",
    caption:
      "From which speed each design carries the load, and what it takes; below, the same wing with the same load in air. Predicted.",
    columns: [left("quantity"), ...designs.map(({ answer }) => right(printable(answer.design)))],
    rows: ROWS.map(([label, cell]) => [
      textCell(label),
      ...designs.map(({ answer }) => cell(answer)),
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
      right("Reynolds number at takeoff", "thousands"),
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
        quantityCell(of.reynoldsNumber, 1e-3),
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

const PARTS = [
  ["wingFriction", "wing friction and form"],
  ["viscousLift", "section drag that grows with lift"],
  ["inducedAndWave", "induced drag and waves"],
  ["struts", "struts"],
  ["spray", "spray"],
  ["junction", "junctions"],
  ["extra", "else under water"],
  ["air", "rider in air"],
  ["total", "whole craft"],
  ["tension", "pull in the line"],
] as const;

/**
 * Drag by its parts at takeoff, at the least-drag speed and half as fast again: one row a part.
 *
 * @param evidence whole
 * @param design its name
 * @returns parts in N, lift coefficient, incidence
 */
export function takeoffPartsTable({ designs }: TakeoffEvidence, design: string): TableRecord {
  const at = designs.find((one) => one.answer.design === design)?.answer.partsAt ?? [];
  const heads = ["takeoff", "least drag", "half as fast again"];
  return {
    name: "takeoff-parts",
    caption: `Predicted drag of ${printable(design)} by its parts.`,
    columns: [
      left("part"),
      ...at.map(({ speed }, i) => right(`${heads[i] ?? "at"}, ${speed.toFixed(2)}\u00a0m/s`, "N")),
    ],
    rows: PARTS.filter(([part]) => at.some((one) => one[part] !== 0)).map(([part, label]) => [
      textCell(label),
      ...at.map((one) => numberCell(one[part], 1)),
    ]).concat([
      [textCell("lift coefficient"), ...at.map((one) => numberCell(one.liftCoefficient, 2))],
      [
        textCell("incidence from zero lift (degrees)"),
        ...at.map((one) => numberCell(one.incidence * 180 / Math.PI, 1)),
      ],
    ]),
  };
}
