/**
 * Tells how far a report is: one line that is written over on a terminal, one plain line a notebook elsewhere.
 *
 * @module
 */

/** What a report tells while it works. */
export interface Progress {
  /** A notebook's turn: which of how many, and why it runs. */
  begin(file: string, place: number, count: number, why: string): void;
  /** A code cell of it begins. */
  cell(place: number, count: number): void;
  /** Its turn is over. */
  end(what: string): void;
  /** A line of its own. */
  say(line: string): void;
}

/** No word at all. */
export const SILENT: Progress = { begin() {}, cell() {}, end() {}, say() {} };

/** A file name's column, so that lines stand under each other. */
const WIDTH = 36;

/**
 * Progress on the terminal's error stream, so that standard output stays free.
 *
 * @param write takes text as it is
 * @param terminal whether lines can be written over
 * @param columns width of the terminal
 * @returns what a report tells its steps to
 */
export function terminalProgress(
  write: (text: string) => void,
  terminal: boolean,
  columns = 80,
): Progress {
  let file = "";
  let head = "";
  let line = "";
  let reason = "";
  const over = (text: string) => {
    if (terminal) write(`\r\x1b[K${text.slice(0, columns - 1)}`);
  };
  return {
    begin(name, place, count, why) {
      file = name;
      head = `[${place}/${count}] ${name}`;
      line = `[${place}/${count}] ${name.padEnd(WIDTH)}`;
      reason = why;
      over(`${head}: starting`);
    },
    cell(place, count) {
      over(`${head}: cell ${place} of ${count}`);
    },
    end(what) {
      const whole = `${line} ${what}${reason === "" ? "" : ` (${reason})`}`;
      write(terminal ? `\r\x1b[K${whole}\n` : `${whole}\n`);
      file =
        head =
        line =
        reason =
          "";
    },
    say(text) {
      write(terminal && file !== "" ? `\r\x1b[K${text}\n` : `${text}\n`);
    },
  };
}
