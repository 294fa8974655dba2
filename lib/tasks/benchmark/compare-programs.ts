/**
 * Times the same work in two programs: answers first, then cold, warm and whole process, in alternating runs.
 *
 * @module
 */

/** One side: a command that takes a folder and a number of rounds and prints `{ times, ... }`. */
export interface Side {
  readonly command: string;
  readonly args: readonly string[];
}

/** What a side prints. */
export interface Printed {
  /** ms, one a round; the first is cold. */
  readonly times: readonly number[];
  /** Where the time goes, in words. */
  readonly parts?: string;
  readonly [key: string]: unknown;
}

/** A comparison. */
export interface Contest {
  readonly title: string;
  readonly ours: Side;
  readonly theirs: Side;
  readonly folder: string;
  /** Rounds in one process. */
  readonly rounds: number;
  /** Says how close the answers are; throws where they differ by more than they may. */
  readonly compare: (ours: Printed, theirs: Printed) => string;
  /** Ratios to stay under. */
  readonly goals: { readonly warm: number; readonly cold: number; readonly process: number };
}

/** Alternating runs. */
const RUNS = 5;

const median = (values: readonly number[]) =>
  [...values].sort((one, other) => one - other)[values.length >> 1]!;

async function runSide(side: Side, folder: string, rounds: number) {
  const start = performance.now();
  const done = await new Deno.Command(side.command, {
    args: [...side.args, folder, String(rounds)],
    stdin: "null",
    stdout: "piped",
    stderr: "piped",
  }).output();
  const wall = performance.now() - start;
  const decoder = new TextDecoder();
  if (!done.success) {
    throw new Error(`${side.command} ${side.args.join(" ")}: ${decoder.decode(done.stderr)}`);
  }
  return { wall, printed: JSON.parse(decoder.decode(done.stdout)) as Printed };
}

/**
 * Runs a comparison and prints it.
 *
 * @param contest both sides, and how their answers compare
 */
export async function compareProgramsOn(contest: Contest): Promise<void> {
  const { title, ours, theirs, folder, rounds, goals } = contest;
  const kinds = ["warm", "cold", "process"] as const;
  const times = { ours: rows(), theirs: rows() };
  const ratios = rows();
  console.log(`\n${title}`);
  for (let run = 0; run < RUNS; run++) {
    const found = { ours: [0, 0, 0], theirs: [0, 0, 0] };
    const printed: Printed[] = [];
    for (const [name, side] of [["ours", ours], ["theirs", theirs]] as const) {
      const long = await runSide(side, folder, rounds);
      const short = await runSide(side, folder, 1);
      printed.push(long.printed);
      found[name] = [median(long.printed.times.slice(1)), short.printed.times[0]!, short.wall];
    }
    if (run === 0) {
      console.log(`  answers: ${contest.compare(printed[0]!, printed[1]!)}`);
      if (printed[0]!.parts !== undefined) console.log(`  ours: ${printed[0]!.parts}`);
    }
    kinds.forEach((kind, i) => {
      times.ours[kind].push(found.ours[i]!);
      times.theirs[kind].push(found.theirs[i]!);
      ratios[kind].push(found.ours[i]! / found.theirs[i]!);
    });
  }
  for (const kind of kinds) {
    const ratio = median(ratios[kind]);
    console.log(
      `  ${kind.padEnd(8)} ours ${median(times.ours[kind]).toFixed(1).padStart(8)} ms, theirs ${
        median(times.theirs[kind]).toFixed(1).padStart(8)
      } ms, ratio ${ratio.toFixed(2)} (${Math.min(...ratios[kind]).toFixed(2)} to ${
        Math.max(...ratios[kind]).toFixed(2)
      }), goal ${goals[kind]}: ${ratio <= goals[kind] ? "met" : "missed"}`,
    );
  }
}

const rows = () => ({ warm: [] as number[], cold: [] as number[], process: [] as number[] });
