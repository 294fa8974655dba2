import { describe, expect, it } from "vitest";
import type { Instrument, Session } from "lakeproof/base/session.ts";
import { compareTows } from "lakeproof/decide/compare-tows.ts";
import { seededRandom } from "lakeproof/numeric/random.ts";
import { towText } from "lakeproof/show/tow-text.ts";
import { exampleTow } from "../support/towed-world.ts";
import { glideTraces } from "../support/traced-world.ts";

const { crafts, session } = exampleTow("two tows");

/** The example's tows with plain glides of both designs, no traces. */
function glided(name = "plain glides"): Session {
  const random = seededRandom(name);
  const glides = crafts.flatMap((craft, i) =>
    glideTraces(
      craft,
      {
        runs: 8,
        rate: 10,
        noise: 0,
        correlation: 0,
        process: 0.02,
        shared: true,
        launch: [1.25, 1.45],
        seconds: 6,
      },
      random,
      1 + 100 * i,
    ).glides
  );
  return { ...session, glides };
}

const both = glided();
const evidence = compareTows(both);
const { answer } = evidence;

describe("plain glides beside a tow", () => {
  it("tell the drag of each design at one speed that was towed and glided through", () => {
    expect(answer.agreement.map((one) => [one.design, one.kind, one.quantity])).toEqual([
      ["alder", "glides", "drag"],
      ["birch", "glides", "drag"],
    ]);
    answer.agreement.forEach((one, i) => {
      const law = answer.designs[i]!.law!;
      expect(one.speed).toBeGreaterThanOrEqual(law.from);
      expect(one.speed).toBeLessThanOrEqual(law.to);
      expect(one.traces.low!).toBeLessThan(crafts[i]!.drag(one.speed!));
      expect(one.traces.high!).toBeGreaterThan(crafts[i]!.drag(one.speed!));
      expect([one.session, one.glideSession]).toEqual([session.name, session.name]);
    });
  });

  it("are combined with it where they agree, and all three are shown", () => {
    for (const one of answer.agreement) {
      expect(Math.abs(one.en)).toBeLessThan(1);
      const [low, high] = [one.tow.value, one.traces.value].sort((a, b) => a - b);
      expect(one.combined!.value).toBeGreaterThanOrEqual(low!);
      expect(one.combined!.value).toBeLessThanOrEqual(high!);
    }
    const text = towText(evidence, true);
    expect(text).toContain("plain glides");
    expect(
      answer.findings.filter((one) => one.code === "tow-and-glide-agree").map((one) => one.what),
    )
      .toEqual([expect.stringContaining("by plain glides"), expect.stringContaining("birch")]);
  });

  it("leave the tow's own numbers as they are", () => {
    const alone = compareTows({ ...session, glides: [] }).answer;
    expect(alone.agreement).toEqual([]);
    expect(answer.designs).toEqual(alone.designs);
    expect(answer.comparisons).toEqual(alone.comparisons);
  });

  it("are not combined where the tow drags less than its uncertainties allow", () => {
    const tow = both.tow.map((one) => ({ ...one, lineTension: one.lineTension! * 0.8 }));
    const { agreement, findings } = compareTows({ ...both, tow }).answer;
    expect(agreement.every((one) => one.en < -1 && one.combined === null)).toBe(true);
    expect(findings.find((one) => one.code === "tow-and-glide-differ")!.wanted)
      .toContain("launch speeds read after the splash");
  });

  it("of another session stand beside it too, and not those of another wing", () => {
    const elsewhere = { ...both, tow: [], name: "jetty" };
    const tows = { ...session, glides: [], name: "boat" };
    const { agreement } = compareTows([tows, elsewhere]).answer;
    expect(agreement.map((one) => [one.session, one.glideSession])).toEqual([
      ["boat", "jetty"],
      ["boat", "jetty"],
    ]);
    const wider = elsewhere.designs.map((one) => ({ ...one, span: one.span * 1.1 }));
    expect(compareTows([tows, { ...elsewhere, designs: wider }]).answer.agreement).toEqual([]);
  });

  it("cancel the error of a speed log only where both are named the same", () => {
    const named = (quantity: string, instrument: string): Instrument => ({
      row: 2,
      own: {},
      quantity,
      instrument,
      uncertainty: 0.02,
      relative: true,
      statedAs: "standard",
      kind: "common",
      how: null,
    });
    const en = (last: string) =>
      compareTows({
        ...both,
        instruments: [
          named("speed", "paddle log"),
          named("launch_speed", last),
          named("end_speed", last),
        ],
      }).answer.agreement.map((one) => one.en);
    expect(en("paddle log")).not.toEqual(en("posts"));
  });

  it("of one run, or none at the speeds towed, tell nothing", () => {
    const one = both.glides.filter((row) => row.design === "alder").slice(0, 1);
    expect(compareTows({ ...session, glides: one }).answer.agreement).toEqual([]);
    const slow = both.glides.map((row) => ({
      ...row,
      launchSpeed: 0.4 * row.launchSpeed!,
      endSpeed: 0.4 * row.endSpeed!,
    }));
    expect(compareTows({ ...session, glides: slow }).answer.agreement).toEqual([]);
  });
});
