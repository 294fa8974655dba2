/**
 * What is worth knowing about the raw windows of a logger.
 *
 * @module
 */
import { type Finding, finding } from "../base/finding.ts";
import type { TowWindow } from "../base/tow-answer.ts";
import { LONG_ENOUGH } from "../check/tow-steadiness.ts";
import type { ReducedWindow } from "./tow-windows.ts";

/** Points named one by one. */
const MOST_NAMED = 6;

type Whole = ReducedWindow & { readonly window: TowWindow };

/**
 * Findings about windows; those with a reason against them are told with the readings left out.
 *
 * @param windows of one session
 * @returns findings
 */
export function windowFindings(windows: readonly ReducedWindow[]): Finding[] {
  const found: Finding[] = [];
  const tell = <T extends ReducedWindow>(
    severity: "warning" | "note",
    code: string,
    about: readonly T[],
    words: { readonly what: (names: string) => string; readonly wanted: string; column?: string },
    name: (one: T) => string = (one) => one.point,
  ) => {
    if (about.length === 0) return;
    const named = about.slice(0, MOST_NAMED).map(name).join(", ");
    const more = about.length > MOST_NAMED ? ` and ${about.length - MOST_NAMED} more` : "";
    found.push(finding({
      severity,
      code,
      file: "tow.csv",
      row: about[0]!.row,
      column: words.column ?? "time",
      count: about.length,
      what: words.what(named + more),
      wanted: words.wanted,
    }));
  };
  const seconds = (value: number) => value.toFixed(1);
  const whole = windows.filter((one): one is Whole => one.window !== null);
  tell(
    "warning",
    "time-not-rising",
    windows.filter((one) => /time does not rise/.test(one.reason ?? "")),
    {
      what: (names) => `The clock does not run forward from sample to sample in ${names}.`,
      wanted: "The samples of a point in the order of time, each once.",
    },
  );
  tell("warning", "window-gap", whole.filter((one) => one.gap), {
    what: (names) =>
      `Samples are missing in between in ${names}: the longest part without a gap is used.`,
    wanted: "Windows without a gap.",
  });
  tell("note", "samples-passed-over", whole.filter((one) => one.without > 0), {
    what: (names) =>
      `Samples without speed or tension, or left out on purpose, were passed over in ${names}.`,
    wanted: "Speed and line tension in each sample.",
  }, (one) => `${one.point} (${one.without})`);
  tell(
    "note",
    "window-cut",
    whole.filter(({ gap, window }) =>
      !gap && window.used < window.samples - 1 && window.duration < 0.97 * window.given
    ),
    {
      what: (names) => `Windows were cut to their steady part: ${names}.`,
      wanted: "Windows that begin when the speed has settled.",
    },
    ({ point, window }) => `${point} (${seconds(window.duration)} of ${seconds(window.given)} s)`,
  );
  tell("warning", "short-window", whole.filter(({ window }) => window.duration < LONG_ENOUGH), {
    what: (names) =>
      `Windows shorter than ${LONG_ENOUGH} s: ${names}. Their means count, with what so short a time leaves open.`,
    wanted: `${LONG_ENOUGH} s and more at a steady speed.`,
  }, ({ point, window }) => `${point} (${seconds(window.duration)} s)`);
  return found;
}
