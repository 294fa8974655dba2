/**
 * The tables of a session folder, column by column: the one place that says what may stand where.
 *
 * Reading, checking, the descriptor, the empty tables of a new session and its glossary all follow from this.
 *
 * @module
 */
import type { TableContract } from "./tables/column.ts";
import { CALIBRATIONS } from "./tables/calibrations.ts";
import { CONDITIONS } from "./tables/conditions.ts";
import { DESIGNS } from "./tables/designs.ts";
import { GLIDES } from "./tables/glides.ts";
import { INSTRUMENTS } from "./tables/instruments.ts";
import { TOW } from "./tables/tow.ts";

export type { Column, ColumnKind, Dimension, TableContract } from "./tables/column.ts";
export { CONDITION_QUANTITIES } from "./tables/conditions.ts";
export { TRACE_SPEED, traceContract, TRACES } from "./tables/traces.ts";
export { CALIBRATIONS, CONDITIONS, DESIGNS, GLIDES, INSTRUMENTS, TOW };

/** Every table, in the order in which a reader wants them. */
export const TABLES: readonly TableContract[] = [
  DESIGNS,
  GLIDES,
  TOW,
  CALIBRATIONS,
  CONDITIONS,
  INSTRUMENTS,
];
