import { Resvg } from "@resvg/resvg-js";
import { describe, expect, it } from "vitest";
import { compareTows } from "lakeproof/decide/compare-tows.ts";
import { seededRandom } from "lakeproof/numeric/random.ts";
import { agreementRows, figureAgreement } from "lakeproof/show/figure-agreement.ts";
import { drawnTraces, figureTraces } from "lakeproof/show/figure-traces.ts";
import { marks, scaleOf } from "../support/drawn.ts";
import { expectGolden } from "../support/golden.ts";
import { exampleTow } from "../support/towed-world.ts";
import { glideTraces, type TracePlan } from "../support/traced-world.ts";

const PAPER = "var(--paper, #ffffff)";
const ALDER = "var(--design-1, #162684)";

const { crafts, session } = exampleTow("two tows");
const PLAN: TracePlan = {
  runs: 4,
  rate: 10,
  noise: 0.06,
  correlation: 0.5,
  process: 0.02,
  shared: true,
  launch: [1.25, 1.45],
  seconds: 4,
};
const random = seededRandom("figures");
const [one, two] = crafts.map((craft, i) => glideTraces(craft, PLAN, random, 1 + 100 * i));
const evidence = compareTows({
  ...session,
  // Alder's line pulls as on a wave's slope, birch's does not.
  tow: session.tow.map((row) =>
    row.design === "alder" ? { ...row, lineTension: row.lineTension! * 0.8 } : row
  ),
  glides: [...one!.glides, ...two!.glides],
  traces: [...one!.traces, ...two!.traces],
});
const bare = compareTows({ ...session, tow: [] });

describe("speeds of glides against time", () => {
  const { wide, narrow } = figureTraces(evidence);

  it("draws every sample where it was read", () => {
    for (const svg of [wide, narrow]) {
      const [x, y] = [scaleOf(svg, "x"), scaleOf(svg, "y")];
      const drawn = marks(svg, { fill: ALDER, stroke: PAPER }).map(([a, b]) => [x(a), y(b)]);
      const want = drawnTraces(evidence)[0]!.traces.flatMap((trace) => trace.samples);
      expect(drawn).toHaveLength(want.length);
      want.forEach(([time, read], i) => {
        // Coordinates are kept to a hundredth of a unit: 0.0002 s and 0.0002 m/s.
        expect(Math.abs(drawn[i]![0]! - time)).toBeLessThan(1e-3);
        expect(Math.abs(drawn[i]![1]! - read)).toBeLessThan(1e-3);
      });
    }
  });

  it("fits them as closely as their noise allows", () => {
    for (const { traces } of drawnTraces(evidence)) {
      const gaps = traces.flatMap((trace) =>
        trace.samples.map(([, read, fitted]) => read - fitted)
      );
      const rms = Math.sqrt(gaps.reduce((sum, gap) => sum + gap * gap, 0) / gaps.length);
      // 160 correlated samples of 0.06 m/s.
      expect(Math.abs(rms / 0.06 - 1)).toBeLessThan(0.25);
    }
  });

  it("says so where there are none", () => {
    expect(figureTraces(bare).caption).toContain("nothing is drawn");
  });
});

describe("tow and glides side by side", () => {
  const { wide, caption, table } = figureAgreement(evidence);

  it("draws every quantity over what the tow says, glides hollow, and together only where all agree", () => {
    const rows = agreementRows(evidence);
    const alder = rows.filter((row) => row.design === "alder");
    expect(alder.some((row) => row.word.startsWith("differ"))).toBe(true);
    expect(alder.every((row) => row.sides.length === 2)).toBe(true);
    expect(rows.some((row) => row.sides.length === 3)).toBe(true);
    const x = scaleOf(wide, "x", "log");
    const hollow = marks(wide, { fill: PAPER, stroke: ALDER }).map(([a]) => x(a));
    alder.forEach((row, i) => {
      expect(row.sides[0]!.value).toBe(1);
      // A hundredth of a unit on a logarithmic axis.
      expect(Math.abs(hollow[i]! / row.sides[1]!.value - 1)).toBeLessThan(2e-3);
    });
  });

  it("says what is drawn, in words and numbers", () => {
    expect(caption).toContain("hollow ones the glides");
    expect(table!.rows).toHaveLength(evidence.answer.agreement.length);
    expect(figureAgreement(bare).caption).toContain("nothing is drawn");
  });
});

describe.each([["traces", figureTraces], ["agreement", figureAgreement]] as const)(
  "figure %s",
  (name, draw) => {
    const figure = draw(evidence);

    it.each(["wide", "narrow"] as const)("is as kept, %s", (size) => {
      expectGolden(`tow-${name}-${size}`, figure[size]);
    });

    it("can be drawn without a page, also with nothing in it", () => {
      for (const svg of [figure.wide, figure.narrow, draw(bare).wide, draw(bare).narrow]) {
        expect(new Resvg(svg.replace(/var\(--[\w-]+, (#\w+)\)/g, "$1")).render().width)
          .toBeGreaterThan(300);
      }
    });
  },
);
