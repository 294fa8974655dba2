/**
 * Benchmarks A and B: resampled polars and decay fits against the same work in numpy and scipy.
 *
 * @module
 */
import type { BootstrapLaw } from "../../fit/bootstrap-law.ts";
import { compareProgramsOn, type Printed, type Side } from "./compare-programs.ts";
import { decayTraces } from "./decay-traces.ts";
import { polarPoints, RESAMPLES, sharedPlaces } from "./polar-points.ts";
import { pythonPeer } from "./python-peer.ts";

const path = (name: string) => new URL(name, import.meta.url).pathname;
const ours = (name: string): Side => ({
  command: Deno.execPath(),
  args: ["run", "-A", path(name)],
});

/** Largest relative difference of two answers on shared places, and of their own draws over a standard error. */
function comparePolars(one: Printed, other: Printed): string {
  const keys = ["parameters", "standardErrors", "low", "high"] as const;
  const gap = (key: "shared" | "own", scale: (name: typeof keys[number], j: number) => number) => {
    const [mine, their] = [one[key] as BootstrapLaw, other[key] as BootstrapLaw];
    return Math.max(
      ...keys.flatMap((name) =>
        [0, 1, 2].map((j) => Math.abs(mine[name][j]! - their[name][j]!) / scale(name, j))
      ),
    );
  };
  const shared = one["shared"] as BootstrapLaw;
  const digits = gap("shared", (name, j) => Math.abs(shared[name][j]!));
  const draws = gap("own", (_, j) => shared.standardErrors[j]!);
  // Normal equations of condition 1e5 leave 1e-11; two sets of 10,000 draws differ by 0.03 standard errors at the quantiles.
  if (!(digits < 1e-10 && draws < 0.15)) {
    throw new Error(
      `resampled polars differ: ${digits} on shared places, ${draws} standard errors`,
    );
  }
  return `equal to ${digits.toExponential(0)} on the same places, to ${
    draws.toFixed(3)
  } standard errors on draws of their own`;
}

interface Fit {
  readonly parameters: readonly number[];
  readonly standardErrors: readonly number[];
}

/** Largest difference of two sets of fits in standard errors. */
function compareDecays(one: Printed, other: Printed): string {
  const [mine, their] = [one["fits"] as Fit[], other["fits"] as Fit[]];
  let gap = 0, errors = 0;
  mine.forEach(({ parameters, standardErrors }, i) =>
    parameters.forEach((value, j) => {
      gap = Math.max(gap, Math.abs(value - their[i]!.parameters[j]!) / standardErrors[j]!);
      errors = Math.max(errors, Math.abs(their[i]!.standardErrors[j]! / standardErrors[j]! - 1));
    })
  );
  // Their minimum by differences of 1e-3 to one side lies 0.003 standard errors off; their standard errors by differences to
  // both sides are good to 6e-4. Ours agree with sensitivities integrated to 1e-11 to 5e-6.
  if (!(gap < 0.005 && errors < 1e-3)) {
    throw new Error(`decay fits differ: ${gap} standard errors, ${errors} of the standard error`);
  }
  return `equal to ${gap.toFixed(4)} standard errors, standard errors to ${
    (100 * errors).toFixed(3)
  } %`;
}

/** Runs both where Python is at hand; else says so. */
export async function againstNumpy(): Promise<void> {
  const folder = await Deno.makeTempDir({ prefix: "lakeproof-bench-" });
  try {
    const peer = await pythonPeer(folder);
    if (!peer.ok) {
      console.log(`\nNot compared with numpy and scipy: ${peer.reason}`);
      return;
    }
    await Deno.writeTextFile(
      `${folder}/points.json`,
      JSON.stringify({ ...polarPoints(), resamples: RESAMPLES }),
    );
    await Deno.writeFile(`${folder}/places.bin`, new Uint8Array(sharedPlaces().buffer));
    await Deno.writeTextFile(`${folder}/traces.json`, JSON.stringify(decayTraces()));
    const theirs = (name: string): Side => ({ command: peer.command, args: [path(name)] });
    await compareProgramsOn({
      title:
        `10,000 refits of a law of three terms to 60 resampled points, against ${peer.versions} (moments and one matrix product)`,
      ours: ours("polar-bootstrap.ts"),
      theirs: theirs("polar_bootstrap.py"),
      folder,
      rounds: 15,
      compare: comparePolars,
      goals: { warm: 0.2, cold: 0.5, process: 0.5 },
    });
    await compareProgramsOn({
      title:
        `200 fits of dv/dt = -(A v^2 + B + C/v^2) to 201 samples, against ${peer.versions} (least_squares over odeint)`,
      ours: ours("decay-fits.ts"),
      theirs: theirs("decay_fits.py"),
      folder,
      rounds: 6,
      compare: compareDecays,
      goals: { warm: 0.02, cold: 0.06, process: 0.15 },
    });
  } finally {
    await Deno.remove(folder, { recursive: true });
  }
}
