import { type Column, number, type TableContract } from "./column.ts";

/** Folder of a session's speed traces. */
export const TRACES = "traces";

/**
 * `traces/RUN.csv`: speed against time of one glide.
 *
 * @param file path inside the session folder
 * @returns its contract; one file a run, under the run's name in glides.csv
 */
export function traceContract(file: string): TableContract {
  return {
    file,
    key: null,
    means: "Speed of one glide against time, from the launch to its end: one row a sample.",
    columns: [
      number("time", "time", "s", "Time, rising from row to row.", true),
      number("speed", "speed", "m/s", "Speed through the water.", true),
    ],
  };
}

/** Speeds of a trace, as instruments.csv names them. */
export const TRACE_SPEED: Column = number(
  "trace_speed",
  "speed",
  "m/s",
  "Speeds in traces/RUN.csv.",
);
