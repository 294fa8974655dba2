/**
 * Speed traces of a session: which file is which run's, and its samples in SI.
 *
 * @module
 */
import { didYouMean } from "../base/did-you-mean.ts";
import { type Finding, finding } from "../base/finding.ts";
import { excerpt } from "../base/printable.ts";
import type { Glide, Trace } from "../base/session.ts";
import { TRACES } from "../base/tables.ts";
import type { ReadTable } from "./read-table.ts";

/** Samples from which a decay can be told from its noise at all. */
export const LEAST_SAMPLES = 5;

/**
 * Whether a path is a trace's.
 *
 * @param path inside a session folder
 * @returns true for a CSV file in the folder of traces
 */
export function isTrace(path: string): boolean {
  return path.startsWith(`${TRACES}/`) && /^[^/]+\.csv$/i.test(path.slice(TRACES.length + 1));
}

/** A trace, or `null` where the file has none that can be used; and what was found. */
export interface ReadTrace {
  readonly trace: Trace | null;
  readonly findings: readonly Finding[];
}

/**
 * One file as the trace of a run.
 *
 * @param file path inside the session folder
 * @param table its rows
 * @param glides runs of the session; the file's name without `.csv` is the run's
 * @returns the trace with rising times, or `null` with the reason among the findings
 */
export function readTrace(file: string, table: ReadTable, glides: readonly Glide[]): ReadTrace {
  const findings: Finding[] = [...alike(table.findings)];
  const stem = file.slice(TRACES.length + 1, -".csv".length).normalize("NFC");
  const runs = glides.map((one) => one.run);
  const run = runs.find((one) => one === stem) ??
    runs.find((one) => one.toLowerCase() === stem.trim().toLowerCase());
  const refuse = (code: string, what: string, wanted: string | null, row: number | null = null) => {
    findings.push(finding({
      severity: "error",
      code,
      file,
      row,
      column: row === null ? null : "time",
      what,
      wanted,
    }));
    return { trace: null, findings };
  };
  if (run === undefined) {
    const meant = didYouMean(stem, runs);
    return refuse(
      "trace-without-run",
      `There is no run "${excerpt(stem)}" in glides.csv, so this trace is nobody's.`,
      meant === null
        ? "The file under the name of its run in glides.csv, as traces/7.csv."
        : `Did you mean ${excerpt(meant)}?`,
    );
  }
  if (table.findings.some((one) => one.severity === "error")) return { trace: null, findings };
  const samples = table.rows.flatMap(({ row, values: { time, speed } }) =>
    typeof time === "number" && typeof speed === "number" ? [{ row, time, speed }] : []
  );
  const empty = table.rows.length - samples.length;
  if (empty > 0) {
    findings.push(finding({
      severity: "note",
      code: "empty-samples",
      file,
      count: empty,
      what: `${empty === 1 ? "One sample has" : `${empty} samples have`} no time or no speed.`,
    }));
  }
  const back = samples.findIndex((one, i) => i > 0 && !(one.time > samples[i - 1]!.time));
  if (back > 0) {
    return refuse(
      "time-not-rising",
      `Time goes from ${samples[back - 1]!.time} s to ${samples[back]!.time} s: ` +
        "it must rise from row to row. The trace was not used.",
      "Samples in the order of time, each once.",
      samples[back]!.row,
    );
  }
  if (samples.length < LEAST_SAMPLES) {
    return refuse(
      "short-trace",
      `A trace of ${samples.length} samples tells no drag; ${LEAST_SAMPLES} is the least.`,
      "The speed from launch to end, at least once a second.",
    );
  }
  return {
    trace: {
      run,
      file,
      times: samples.map((one) => one.time),
      speeds: samples.map((one) => one.speed),
    },
    findings,
  };
}

/** Faults of many rows that are one and the same, told once with the first row: a trace has hundreds. */
function alike(findings: readonly Finding[]): Finding[] {
  const first = new Map<string, Finding>();
  for (const one of findings) {
    const key = `${one.severity} ${one.code} ${one.column}`;
    const before = first.get(key);
    first.set(key, before === undefined ? one : { ...before, count: before.count + one.count });
  }
  return [...first.values()];
}
