import { describe, expect, it } from "vitest";
import { oddRuns } from "lakeproof/decide/odd-runs.ts";
import { runGlideRatio } from "lakeproof/decide/run-glide-ratio.ts";
import { fitGlideSeries } from "lakeproof/fit/glide-series.ts";
import { ALDER, ALDER_RUNS, TARGET } from "../golden/glide-example.ts";

const GRAVITY = 9.80665;
const run = ALDER_RUNS[0]!;

describe("one run's glide ratio", () => {
  it("is distance over drop and lost speed's height", () => {
    const { energyHeight, glideRatio } = runGlideRatio(run, GRAVITY);
    // 0.222 m and 1.0551 (4.28^2 - 2.89^2)/(2 g), by hand.
    expect(energyHeight).toBeCloseTo(0.222 + 1.055098791 * (4.28 ** 2 - 2.89 ** 2) / 19.6133, 9);
    expect(glideRatio!.value).toBeCloseTo(9.48 / energyHeight, 12);
    expect(glideRatio!.low!).toBeLessThan(glideRatio!.value);
  });

  it("knows only a lower end where the height spent may be nothing", () => {
    const short = { ...run, endSpeed: run.launchSpeed - 0.05, drop: 0.01 };
    const { glideRatio } = runGlideRatio(short, GRAVITY);
    expect(glideRatio!.kind).toBe("atLeast");
    expect(glideRatio!.high).toBeNull();
  });

  it("is not given where no energy was spent", () => {
    const pumped = { ...run, endSpeed: 5, drop: 0 };
    expect(runGlideRatio(pumped, GRAVITY).glideRatio).toBeNull();
  });
});

describe("odd runs", () => {
  const flags = (runs: typeof ALDER_RUNS) => {
    const series = fitGlideSeries(runs, ALDER, TARGET);
    return oddRuns(runs, series.ok ? series : null, GRAVITY);
  };

  it("are none in an ordinary session", () => {
    expect(flags(ALDER_RUNS).every((flag) => flag === null)).toBe(true);
  });

  it("are those that sped up or stand out, and no others", () => {
    const pumped = ALDER_RUNS.map((one, i) => i === 2 ? { ...one, endSpeed: 4.6 } : one);
    expect(flags(pumped).flatMap((flag, i) => flag === null ? [] : [i])).toEqual([2]);
    const far = ALDER_RUNS.map((one, i) => i === 5 ? { ...one, distance: 19 } : one);
    expect(flags(far).flatMap((flag, i) => flag === null ? [] : [i])).toEqual([5]);
  });

  it("are never found by a small energy alone", () => {
    const short = { ...run, launchSpeed: 3.1, endSpeed: 2.9, drop: 0.05, distance: 1.4 };
    expect(flags([...ALDER_RUNS, short]).at(-1)).toBeNull();
  });
});
