import { describe, expect, it } from "vitest";
import { fitDecayTrace } from "lakeproof/fit/decay-trace.ts";
import { towDrag } from "lakeproof/fit/tow-curve.ts";
import { fitTraces, type TraceData } from "lakeproof/fit/trace-fit.ts";
import { phiCurve, traceMotion, type TraceRun } from "lakeproof/fit/trace-motion.ts";
import { traceNoise } from "lakeproof/fit/trace-noise.ts";
import { decay } from "lakeproof/model/decay.ts";
import { seededRandom } from "lakeproof/numeric/random.ts";
import golden from "../golden/trace-fit.json" with { type: "json" };

const phi = (v: number) => 1 + 0.25 * Math.exp(-(((v - 2.6) / 0.9) ** 2));
const DATA: TraceData = {
  runs: golden.runs,
  craft: { lift: golden.lift, phi, expected: golden.expected },
};
const { referenceSpeed } = golden;
const parameters = golden.parameters as unknown as readonly [number, number, number];

/** Columns and residuals of the golden runs at the golden fit. */
const at = golden.runs.map((run, i) => {
  const motion = traceMotion(run, phiCurve(phi, { from: 1, to: 10 }), {
    parameters,
    referenceSpeed,
    liftShare: run.weight / golden.lift,
    ...golden.own[i]!,
  })!;
  const residuals = Float64Array.from(run.speeds, (one, k) => one - motion.speed[k]!);
  const { byLaunch, byOffset, byFirst, byThird } = motion;
  return {
    times: run.times,
    // The golden fit has no steepening.
    columns: [
      byLaunch,
      byOffset,
      byFirst,
      byThird,
      new Float64Array(residuals.length),
      residuals,
    ] as const,
  };
});

describe("the law of three invented traces, against scipy with dense matrices", () => {
  // Runs say v0 = 4.4 m/s; the fit has its own, so constants are compared in SI.
  const fit = fitTraces(DATA, { known: { noise: golden.noise, runScale: 1 } });
  if (!fit.ok) throw new Error(fit.reason);
  const si = (v0: number) => [v0 ** -2, 1, v0 ** 2] as const;
  const [ours, theirs] = [si(fit.referenceSpeed), si(referenceSpeed)];

  it("has the same constants, launch speeds and forces of the runs", () => {
    // Steps of 0.2 s leave 1e-6 m/s, which is 2e-5 of the noise; the worst constant is known to a tenth.
    parameters.forEach((one, j) => {
      const u = Math.sqrt(golden.covariance[j]![j]!) * theirs[j]!;
      expect(Math.abs(fit.parameters[j]! * ours[j]! - one * theirs[j]!) / u).toBeLessThan(1e-3);
    });
    fit.runs.forEach(({ launchSpeed, offset }, i) => {
      expect(Math.abs(launchSpeed - golden.own[i]!.launchSpeed)).toBeLessThan(1e-5);
      expect(Math.abs(offset - golden.own[i]!.offset)).toBeLessThan(1e-3);
    });
  });

  it("has the same covariance", () => {
    golden.covariance.forEach((row, i) =>
      row.forEach((one, j) => {
        const scale = Math.sqrt(golden.covariance[i]![i]! * golden.covariance[j]![j]!) *
          theirs[i]! *
          theirs[j]!;
        const gap = fit.covariance[i]![j]! * ours[i]! * ours[j]! - one * theirs[i]! * theirs[j]!;
        expect(Math.abs(gap) / scale).toBeLessThan(2e-4);
      })
    );
  });

  it("has the same law where it is open how the height was spent", () => {
    const { uncertainty, steepening, parameters, covariance } = golden.steepened;
    const open = fitTraces({ ...DATA, steepeningUncertainty: uncertainty }, {
      known: { noise: golden.noise, runScale: 1 },
    });
    if (!open.ok) throw new Error(open.reason);
    expect(Math.abs(open.steepening - steepening)).toBeLessThan(1e-3 * uncertainty);
    parameters.forEach((one, j) => {
      const u = Math.sqrt(covariance[j]![j]!) * theirs[j]!;
      expect(Math.abs(open.parameters[j]! * ours[j]! - one * theirs[j]!) / u).toBeLessThan(1e-3);
      const ratio = Math.sqrt(open.covariance[j]![j]!) * ours[j]! / u;
      expect(Math.abs(ratio - 1)).toBeLessThan(2e-4);
    });
  });

  it("finds the noise of the restricted likelihood", () => {
    const { memory, standardDeviation } = traceNoise(at);
    // The search stops within a hundredth of the memory.
    expect(Math.abs(memory / golden.restricted.memory - 1)).toBeLessThan(0.01);
    expect(Math.abs(standardDeviation / golden.restricted.standardDeviation - 1)).toBeLessThan(
      0.005,
    );
  });
});

const LAW = { a: 1.6, d: -5, e: 700 };

/** A run of the closed-form decay, sampled where the time of each speed is known exactly. */
function closedForm(launchSpeed: number, sinkThrust: number, noise: () => number): TraceRun {
  const speeds = Array.from({ length: 40 }, (_, i) => launchSpeed * (1 - 0.3 * i / 39));
  return {
    times: speeds.map((endSpeed) =>
      decay(LAW, { launchSpeed, endSpeed, effectiveMass: 87, sinkThrust }).duration
    ),
    speeds: speeds.map((one) => one + noise()),
    effectiveMass: 87,
    weight: 820,
    sinkThrust,
    offsetUncertainty: 0,
  };
}

describe("a motion followed through its samples", () => {
  it("is that of the closed form, by unequal steps and with a sink", () => {
    const run = closedForm(5.2, 18, () => 0);
    const motion = traceMotion(run, phiCurve(() => 1, { from: 2, to: 8 }), {
      parameters: [LAW.a, LAW.d, LAW.e],
      referenceSpeed: 1,
      liftShare: 1,
      launchSpeed: 5.2,
      offset: 0,
    })!;
    motion.speed.forEach((one, i) => expect(Math.abs(one - run.speeds[i]!)).toBeLessThan(1e-6));
  });

  it("has sensitivities that differences confirm", () => {
    const run = golden.runs[1]!;
    const table = phiCurve(phi, { from: 1, to: 10 });
    const setting = {
      parameters,
      referenceSpeed,
      liftShare: run.weight / golden.lift,
      launchSpeed: 5.1,
      offset: 0.4,
    };
    const here = traceMotion(run, table, setting)!;
    const [p1, p2, p3] = parameters;
    const l = setting.liftShare, h = 1e-4;
    const cases = [
      [here.byLaunch, { launchSpeed: 5.1 + h }, { launchSpeed: 5.1 - h }, 1],
      [here.byOffset, { offset: 0.4 + h }, { offset: 0.4 - h }, 1],
      [here.byOffset, { parameters: [p1, p2 + h, p3] }, { parameters: [p1, p2 - h, p3] }, l],
      [here.byFirst, { parameters: [p1 + h, p2, p3] }, { parameters: [p1 - h, p2, p3] }, 1],
      [here.bySteepening, { steepening: h }, { steepening: -h }, 1],
      [here.byThird, { parameters: [p1, p2, p3 + h] }, { parameters: [p1, p2, p3 - h] }, 1],
    ] as const;
    for (const [column, up, down, factor] of cases) {
      const [plus, minus] = [up, down].map((one) =>
        traceMotion(run, table, { ...setting, ...one })!
      );
      column.forEach((one, i) => {
        const difference = (plus!.speed[i]! - minus!.speed[i]!) / (2 * h);
        // phi is tabulated with slopes good to 1e-4; the largest sensitivity is 1.
        expect(Math.abs(one * factor - difference)).toBeLessThan(1e-4);
      });
    }
  });
});

describe("a law from traces", () => {
  it("comes out where nothing scatters", () => {
    const fit = fitTraces({
      runs: [closedForm(5.6, 18, () => 0), closedForm(4.6, 22, () => 0)],
      craft: { lift: 820, phi: () => 1, expected: null },
    });
    if (!fit.ok) throw new Error(fit.reason);
    // Steps leave 1e-6 m/s; the drag follows to about as many parts.
    for (const v of [3.5, 4.2, 5]) {
      const drag = LAW.a * v * v + LAW.d + LAW.e / v / v;
      expect(Math.abs(towDrag(fit, v) / drag - 1)).toBeLessThan(1e-4);
    }
  });

  it("does not depend on when the clock began, nor on the order of the runs", () => {
    const shifted = {
      ...DATA,
      runs: [...DATA.runs].reverse().map((one) => ({
        ...one,
        times: one.times.map((time) => time + 1000),
      })),
    };
    const [one, other] = [fitTraces(DATA), fitTraces(shifted)];
    if (!one.ok || !other.ok) throw new Error("no fit");
    one.parameters.forEach((value, j) => {
      const gap = Math.abs(other.parameters[j]! - value);
      // Settled to 1e-7 of a standard uncertainty; times near 1000 s keep 13 digits.
      expect(gap / Math.sqrt(one.covariance[j]![j]!)).toBeLessThan(1e-4);
    });
  });

  it("is refused, never made up, where there is no glide in the samples", () => {
    const run = closedForm(5, 0, () => 0);
    const craft = { lift: 820, phi: () => 1, expected: null };
    for (
      const speeds of [run.speeds.map(() => 4), run.speeds.map(() => 0), run.speeds.map(() => NaN)]
    ) {
      const fit = fitTraces({ runs: [{ ...run, speeds }], craft });
      if (fit.ok) expect(fit.parameters.every(Number.isFinite)).toBe(true);
      else expect(fit.reason).not.toBe("");
    }
    expect(fitTraces({ runs: [], craft }).ok).toBe(false);
  });
});

describe("noise that remembers itself", () => {
  const correlated = (memory: number) => {
    const random = seededRandom(`memory ${memory}`);
    return [5.4, 5, 4.8, 5.2, 5.1, 4.9].map((launchSpeed) => {
      const run = closedForm(launchSpeed, 18, () => 0);
      let noise = random.normal();
      const speeds = run.speeds.map((one, i) => {
        const kept = i === 0 || memory === 0
          ? 0
          : Math.exp((run.times[i - 1]! - run.times[i]!) / memory);
        noise = kept * noise + Math.sqrt(1 - kept ** 2) * random.normal();
        return one + 0.05 * noise;
      });
      return { ...run, speeds, offsetUncertainty: 1.5 };
    });
  };
  const craft = { ...DATA.craft, phi: () => 1 };

  it("widens the doubt beyond what independent samples would have", () => {
    const runs = correlated(0.12);
    const [whole, white] = [
      fitTraces({ runs, craft }),
      fitTraces({ runs, craft }, { white: true }),
    ];
    if (!whole.ok || !white.ok) throw new Error("no fit");
    // Six runs of 2 s hold about a hundred memories: known to a third or so.
    expect(whole.noise.memory).toBeGreaterThan(0.06);
    expect(whole.noise.memory).toBeLessThan(0.24);
    const u = (fit: typeof whole) => Math.sqrt(fit.noiseCovariance[0][0]);
    expect(u(whole) / u(white)).toBeGreaterThan(1.5);
  });

  it("is found to have none where samples are independent", () => {
    const fit = fitTraces({ runs: correlated(0), craft });
    if (!fit.ok) throw new Error(fit.reason);
    // Samples stand about 0.06 s apart: a memory of a third of that correlates neighbours by 5 %.
    expect(fit.noise.memory).toBeLessThan(0.04);
    expect(Math.abs(fit.noise.standardDeviation / 0.05 - 1)).toBeLessThan(0.2);
  });
});

describe("one trace alone", () => {
  it("keeps its law in another unit of time's zero, and says when it is too short", () => {
    const run = closedForm(6, 0, () => 0);
    const fit = fitDecayTrace(run.times, run.speeds, { effectiveMass: 87 }, { independent: true });
    if (!fit.ok) throw new Error(fit.reason);
    expect(Math.abs(fit.a / LAW.a - 1)).toBeLessThan(1e-3);
    expect(fit.fitted).toHaveLength(run.times.length);
    expect(fitDecayTrace(run.times.slice(0, 5), run.speeds.slice(0, 5), { effectiveMass: 87 }).ok)
      .toBe(false);
  });
});
