/**
 * `task bench`: the measured comparisons, as ratios within one run, then the whole simulation study.
 *
 * Times depend on the machine, so nothing here is asserted; the answers are compared before anything is timed.
 */
import { compareGlides } from "../decide/compare-glides.ts";
import { openSession } from "../read/open-session.ts";
import { againstNumpy } from "./benchmark/against-numpy.ts";
import { runDeno } from "./run-command.ts";

const DEMO = "quillwater-evening";
const ROUNDS = 7;

/** Median, least and largest of some times in milliseconds, as text. */
function spread(times: readonly number[]): string {
  const sorted = [...times].sort((one, two) => one - two);
  const at = (share: number) => sorted[Math.round(share * (sorted.length - 1))]!.toFixed(1);
  return `${at(0.5)} ms (${at(0)} to ${at(1)})`;
}

/** Runs a Deno command without showing what it prints; milliseconds of wall time, and the output. */
async function timed(args: readonly string[]): Promise<{ milliseconds: number; output: string }> {
  const start = performance.now();
  const done = await new Deno.Command(Deno.execPath(), {
    args: [...args],
    stdin: "null",
    stdout: "piped",
    stderr: "piped",
  }).output();
  const milliseconds = performance.now() - start;
  if (!done.success) {
    throw new Error(
      `Cannot time as the command failed: deno ${args.join(" ")}\n${
        new TextDecoder().decode(done.stderr)
      }`,
    );
  }
  return { milliseconds, output: new TextDecoder().decode(done.stdout) };
}

/** Times commands in alternating rounds, so that noise of the machine meets all alike. */
async function compareCommands(
  title: string,
  commands: Readonly<Record<string, readonly string[]>>,
): Promise<void> {
  const names = Object.keys(commands);
  const times = new Map<string, number[]>(names.map((name) => [name, []]));
  const first = new Map<string, string>();
  for (let round = 0; round < ROUNDS; round++) {
    for (const name of names) {
      const { milliseconds, output } = await timed(commands[name]!);
      if (round === 0) first.set(name, output);
      else if (output !== first.get(name)) {
        throw new Error(`${name}: two runs printed different things`);
      }
      times.get(name)!.push(milliseconds);
    }
  }
  console.log(`\n${title}`);
  const base = times.get(names[0]!)!;
  for (const name of names) {
    const ratios = times.get(name)!.map((time, round) => time / base[round]!).sort((one, two) =>
      one - two
    );
    console.log(
      `  ${name.padEnd(44)} ${spread(times.get(name)!).padStart(32)}   ratio ${
        ratios[ROUNDS >> 1]!.toFixed(2)
      }`,
    );
  }
}

await compareCommands("Whole processes, warm cache", {
  "an empty program": ["eval", ""],
  "answer glide, three designs": ["run", "-A", "lib/tasks/answer.ts", "glide", DEMO],
  "answer glide --json": ["run", "-A", "lib/tasks/answer.ts", "glide", DEMO, "--json"],
  "validate": ["run", "-A", "lib/tasks/validate.ts", DEMO],
});

const session = await openSession(DEMO);
const times: number[] = [];
const answers = new Set<string>();
for (let round = 0; round < 60; round++) {
  const start = performance.now();
  const evidence = compareGlides([session]);
  times.push(performance.now() - start);
  answers.add(JSON.stringify(evidence.answer));
}
if (answers.size !== 1) throw new Error("the same session gave different answers");
console.log("\nThe comparison itself, in one process");
console.log(`  cold ${times[0]!.toFixed(1)} ms, warm ${spread(times.slice(20))}`);

await againstNumpy();

console.log("\nThe simulation studies");
Deno.exit(await runDeno(["run", "-A", "lib/tasks/simulate.ts", "--sessions", "2000"]));
