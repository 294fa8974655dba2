import { describe, expect, it } from "vitest";
import type { Design } from "lakeproof/base/session.ts";
import { prepareDesignTraces } from "lakeproof/decide/trace-errors.ts";
import { traceFindings } from "lakeproof/decide/trace-findings.ts";
import { prepareTraces } from "lakeproof/decide/trace-runs.ts";
import { towedBestSpeed, towedRange } from "lakeproof/fit/tow-curve.ts";
import type { TowEstimate } from "lakeproof/fit/tow-series.ts";
import { logBestLiftToDrag, logBestSpeed, logDrag } from "lakeproof/fit/tow-estimates.ts";
import { singleVariance } from "lakeproof/fit/tow-variance.ts";
import { fitTraces } from "lakeproof/fit/trace-fit.ts";
import { fitTraceSeries, traceEstimate } from "lakeproof/fit/trace-series.ts";
import { studentTQuantile } from "lakeproof/numeric/distributions.ts";
import { seededRandom } from "lakeproof/numeric/random.ts";
import { glideTraces } from "../support/traced-world.ts";
import { drawCraft, exampleTow, type TrueCraft } from "../support/towed-world.ts";

/** Sessions a cell, and what three binomial standard errors take from a coverage of 95 %. */
const SESSIONS = 200, SLACK = 3 * Math.sqrt(0.95 * 0.05 / SESSIONS);

function covers(estimate: TowEstimate, truth: number): boolean {
  const { log, variance, degreesOfFreedom } = singleVariance(estimate);
  const reach = studentTQuantile(0.975, degreesOfFreedom ?? Infinity) * Math.sqrt(variance);
  return Math.abs(log - Math.log(truth)) <= reach;
}

const { session: example } = exampleTow("two tows");

/** One session of glides of one craft, ready to be fitted. */
function glided(
  name: string,
  plan: { readonly runs: number; readonly rate: number; readonly correlation: number },
) {
  const random = seededRandom(name);
  const craft: TrueCraft = drawCraft("alder", random);
  const flown = glideTraces(craft, {
    ...plan,
    noise: 0.03 + 0.05 * random.uniform(),
    process: 0.01 + 0.03 * random.uniform(),
    shared: true,
    launch: [1.15, 1.5],
    seconds: 5,
  }, random);
  const design: Design = {
    ...example.designs[0]!,
    span: craft.span,
    area: craft.area,
    wetVolume: craft.wetVolume * (1 + 0.1 * random.normal()),
  };
  const prepared = prepareTraces({ ...example, designs: [design], tow: [], ...flown });
  const used = prepared.traces.filter((one) => one.reason === null);
  return { craft, design, prepared, used };
}

function runCell(runs: number, rate: number, correlation: number) {
  const count = { laws: 0, none: 0, drag: 0, best: 0, speed: 0, bests: 0, plain: 0, words: 0 };
  for (let i = 0; i < SESSIONS; i++) {
    const { craft, design, prepared, used } = glided(`traces ${runs} ${rate} ${correlation} ${i}`, {
      runs,
      rate,
      correlation,
    });
    const ready = used.length === 0
      ? null
      : prepareDesignTraces(prepared, design, used, craft.mass);
    const series = ready?.ok ? fitTraceSeries(ready.data, ready.errors) : null;
    if (!ready?.ok || !series?.ok) {
      count.none++;
      continue;
    }
    const range = towedRange(series.fit);
    const at = Math.min(Math.max(craft.best.speed, range.from), range.to);
    const drag = traceEstimate(series, (fit) => logDrag(fit, at));
    if (drag === null) {
      count.none++;
      continue;
    }
    count.laws++;
    if (covers(drag, craft.drag(at))) count.drag++;
    count.words += traceFindings("alder", used, series.fit, ready.data).length;
    // Samples taken as independent, runs as alike: what a curve fit from a shelf would do.
    const alike = ready.data.runs.map((run) => ({ ...run, offsetUncertainty: 0 }));
    const white = fitTraces({ ...ready.data, runs: alike }, { white: true });
    if (white.ok) {
      const plain = traceEstimate({ fit: white, shifts: [] }, (fit) => logDrag(fit, at));
      if (plain !== null && covers(plain, craft.drag(at))) count.plain++;
    }
    const least = towedBestSpeed(series.fit);
    if (least === null || least.speed < range.from || least.speed > range.to) continue;
    const best = traceEstimate(series, logBestLiftToDrag);
    const speed = traceEstimate(series, logBestSpeed);
    if (best === null || speed === null) continue;
    count.bests++;
    if (covers(best, craft.best.liftToDrag)) count.best++;
    if (covers(speed, craft.best.speed)) count.speed++;
  }
  return count;
}

/** Runs, samples a second, correlation of neighbouring samples. */
const CELLS = [[8, 1, 0], [8, 2, 0.9], [6, 10, 0], [6, 10, 0.5], [4, 10, 0.8], [
  6,
  20,
  0.9,
]] as const;

describe.each(CELLS)("%i glides at %f samples a second, correlated by %f", (...cell) => {
  const count = runCell(...cell);
  if (Deno.env.get("SHOW_COUNTS") !== undefined) console.log(cell, JSON.stringify(count));

  it("carry a law nearly always", () => {
    expect(count.none).toBeLessThanOrEqual(0.05 * SESSIONS);
  });

  it("cover drag, best lift-to-drag and its speed", () => {
    expect(count.drag / count.laws).toBeGreaterThan(0.95 - SLACK);
    expect(count.best / count.bests).toBeGreaterThan(0.95 - SLACK);
    expect(count.speed / count.bests).toBeGreaterThan(0.95 - SLACK);
  });

  it("cover visibly less where samples count as independent and runs as alike", () => {
    expect(count.plain / count.laws).toBeLessThan(0.85);
  });

  it("bring a false word on a trace in no more than one of twenty sessions", () => {
    expect(count.words / count.laws).toBeLessThan(0.05 + 3 * Math.sqrt(0.05 * 0.95 / SESSIONS));
  });
}, 900_000);
