import { describe, expect, it } from "vitest";
import { MEDIA } from "lakeproof/base/records.ts";
import { displayBundle } from "lakeproof/show/display-bundle.ts";
import { WIDE } from "lakeproof/show/drawing-size.ts";
import { liveDrawing } from "lakeproof/show/live-drawing.ts";
import { liveTakeoff } from "lakeproof/show/live-record.ts";
import { liveStates } from "lakeproof/show/live-state.ts";
import { liveControls, liveCrafts, type LiveTask } from "lakeproof/show/live-task.ts";
import { liveSentence, liveSummary } from "lakeproof/show/live-words.ts";
import { niceAxis } from "lakeproof/show/nice-axis.ts";
import { LIVE_TASK } from "../pages/live-notebook.ts";
import { parsed } from "../support/drawn.ts";
import { expectGolden } from "../support/golden.ts";

const record = liveTakeoff(LIVE_TASK);

describe("a live figure as published", () => {
  it("looks as it did when it was last looked at", () => {
    expectGolden("live-wide", record.figure.wide);
    expectGolden("live-narrow", record.figure.narrow);
    const one = liveTakeoff({ designs: LIVE_TASK.designs.slice(0, 1) });
    expectGolden("live-one-wide", one.figure.wide);
  });

  it("draws each curve where the library has it, to a hundredth of a unit", () => {
    const [alder] = liveStates(LIVE_TASK);
    if (!alder!.result.ok) throw new Error("alder flies");
    const { curve } = alder!.result;
    const solid = [...parsed(record.figure.wide).querySelectorAll("path")].find((one) =>
      one.getAttribute("stroke-width") === "2.25" && one.getAttribute("stroke-dasharray") === null
    )!;
    const points = solid.getAttribute("d")!.slice(1).split("L").map((one) =>
      one.split(",").map(Number)
    );
    expect(points).toHaveLength(curve.length);
    // Two points give the scale; every other must lie on it.
    const [first, last] = [points[0]!, points.at(-1)!];
    const slope = (last[0]! - first[0]!) / (curve.at(-1)!.speed - curve[0]!.speed);
    points.forEach(([x], i) => {
      // 0.02: both ends and the point itself are rounded to 0.01.
      expect(Math.abs(first[0]! + slope * (curve[i]!.speed - curve[0]!.speed) - x!)).toBeLessThan(
        0.02,
      );
    });
  });

  it("shows its drawing and its words where no script runs", () => {
    const bundle = displayBundle(record);
    expect(Object.keys(bundle)).toEqual([MEDIA.live, "image/svg+xml", "text/plain"]);
    expect(bundle["image/svg+xml"]).toBe(record.figure.wide);
    expect(bundle["text/plain"]).toContain("Alder takes off at");
  });

  it("keeps a hostile name as text, in well-formed XML", () => {
    const design = `<script>alert(1)</script>"'&`;
    const task: LiveTask = {
      designs: [{ ...LIVE_TASK.designs[0]!, design }, LIVE_TASK.designs[1]!],
    };
    const { figure, controls } = liveTakeoff(task);
    for (
      const svg of [
        figure.wide,
        figure.narrow,
        liveSummary({ task, controls, values: {}, states: liveStates(task) }),
      ]
    ) {
      expect(svg).not.toContain("<script");
    }
    expect(parsed(figure.wide).tagName).toBe("svg");
  });

  it("needs a design", () => {
    expect(() => liveTakeoff({ designs: [] })).toThrow("there must be a design");
  });
});

describe("controls", () => {
  const controls = liveControls(LIVE_TASK);

  it("start as published, on a whole step, inside their ends", () => {
    for (const { from, to, start, step, decimals, label } of controls) {
      expect(from, label).toBeLessThanOrEqual(start);
      expect(to, label).toBeGreaterThan(start);
      for (const end of [from, to]) {
        const steps = (end - start) / step;
        // 1e-6: both are decimals in binary.
        expect(Math.abs(steps - Math.round(steps)), label).toBeLessThan(1e-6);
        expect(Number(end.toFixed(decimals)), label).toBe(end);
      }
    }
    expect(controls.map((one) => one.start)).toEqual([88, 18, 0, 0.4, 0.15, 0.1625]);
  });

  it("hold the model at both ends: a speed lifts each design, or words say why not", () => {
    for (const { name, from, to } of controls) {
      for (const end of [from, to]) {
        for (const state of liveStates(LIVE_TASK, { [name]: end })) {
          expect(state.result, `${name} ${end}`).toMatchObject({ ok: true });
        }
      }
    }
  });

  it("change nothing while they stand as published", () => {
    expect(liveCrafts(LIVE_TASK, {})).toEqual(LIVE_TASK.designs.map((one) => one.craft));
  });

  it("move what they name, in the library's units; the volume goes with the square of the area", () => {
    const moved = liveCrafts(LIVE_TASK, { salinity: 35, temperature: 20, "area-1": 0.13 });
    expect(moved[0]!.area).toBe(0.15);
    for (const craft of moved) {
      expect(craft.salinity).toBe(0.035);
      expect(craft.temperature).toBeCloseTo(293.15, 12);
    }
    const { craft } = LIVE_TASK.designs[1]!;
    expect(moved[1]!.area).toBe(0.13);
    expect(moved[1]!.wingVolume / craft.wingVolume).toBeCloseTo((0.13 / 0.1625) ** 2, 12);
  });
});

describe("words", () => {
  it("say in one line that nothing lifts a design", () => {
    const floating: LiveTask = {
      designs: LIVE_TASK.designs.map((one) => ({ ...one, craft: { ...one.craft, mass: 1 } })),
    };
    const states = liveStates(floating);
    expect(liveSentence(states[0]!)).toBe(
      "Alder: nothing lifts it here, as the water alone carries the whole load, so it floats.",
    );
    const svg = liveDrawing({ id: "none", states, before: liveStates(LIVE_TASK) }, WIDE);
    expect(svg.match(/nothing lifts it</g)).toHaveLength(2);
  });

  it("say why where a number leaves what the model knows", () => {
    const [state] = liveStates(LIVE_TASK, { runningDepth: 0.001 });
    expect(liveSentence(state!)).toMatch(
      /^Alder: nothing lifts it here, as the depth must be at least/,
    );
  });

  it("say that a load would need more speed than anything tows", () => {
    const [state] = liveStates({
      designs: [{
        ...LIVE_TASK.designs[0]!,
        craft: { ...LIVE_TASK.designs[0]!.craft, area: 0.02 },
      }],
    });
    expect(liveSentence(state!)).toMatch(
      /^Alder: nothing lifts it here, as it would take off only at 10\.3\u00a0m\/s, faster than anything tows\.$/,
    );
  });

  it("warn where the reader moves a wing out of what the model knows", () => {
    const values = { runningDepth: 0.12 };
    const states = liveStates(LIVE_TASK, values);
    const html = liveSummary({
      task: LIVE_TASK,
      controls: liveControls(LIVE_TASK),
      values,
      states,
    });
    expect(html).toContain("Alder runs 0.8 chords below the surface");
    expect(html).toContain("only if it does not draw air");
    expect(liveStates(LIVE_TASK).map((one) => one.warnings)).toEqual([[], []]);
  });

  it("name what was moved, beside what was published", () => {
    const values = { mass: 100 };
    const controls = liveControls(LIVE_TASK);
    const html = liveSummary({
      task: LIVE_TASK,
      controls,
      values,
      states: liveStates(LIVE_TASK, values),
    });
    expect(html).toContain("Moved: Load, all that flies 100\u00a0kg instead of 88\u00a0kg.");
    expect(html).toContain("first order");
    const still = liveSummary({
      task: LIVE_TASK,
      controls,
      values: {},
      states: liveStates(LIVE_TASK),
    });
    expect(still).toContain("It flies, says the published answer.");
  });
});

describe("a nice axis", () => {
  it("has steps of 1, 2 or 5, and holds its range", () => {
    for (const [from, to] of [[0, 1], [3.1, 7.6], [0, 5049], [0, 0.037], [2, 2.0001]] as const) {
      for (const most of [4, 6, 9]) {
        const axis = niceAxis(from, to, most);
        expect(axis.ticks.length).toBeLessThanOrEqual(most + 1);
        expect(axis.ticks.length).toBeGreaterThanOrEqual(2);
        expect(axis.from).toBeLessThanOrEqual(from + 1e-9);
        expect(axis.to).toBeGreaterThanOrEqual(to - 1e-9);
        const step = axis.ticks[1]! - axis.ticks[0]!;
        expect(["1", "2", "5"]).toContain(step.toExponential(0)[0]);
      }
    }
    expect(() => niceAxis(1, 1, 5)).toThrow("must go upwards");
  });
});
