import { choice, type TableContract, text } from "./column.ts";

/** `calibrations.csv`: instruments against known values. */
export const CALIBRATIONS: TableContract = {
  file: "calibrations.csv",
  key: null,
  means: "Instruments against known values; a zero check is a row with nothing applied.",
  columns: [
    text("instrument", "Name of the instrument.", true),
    choice("when", ["before", "after"], "Before or after the session, or that sweep."),
    text("sweep", "Sweep of tow.csv that a zero was read at; empty means the whole session."),
    { name: "applied", kind: "number", required: false, means: "Known value applied." },
    text("applied_unit", "Unit of the applied value."),
    { name: "reading", kind: "number", required: true, means: "What the instrument read." },
    text("reading_unit", "Unit of the reading."),
  ],
};
