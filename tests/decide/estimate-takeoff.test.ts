import { describe, expect, it } from "vitest";
import { DataError, UsageError } from "lakeproof/base/errors.ts";
import { estimateTakeoff } from "lakeproof/decide/estimate-takeoff.ts";
import {
  ALDER_ROW as ALDER,
  BIRCH_ROW as BIRCH,
  DESIGNS_HEAD as HEAD,
  LAKE_CONDITIONS as CONDITIONS,
  takeoffSession as session,
} from "../support/invented-takeoff.ts";

const few = { draws: 100 };
const codes = (of: { readonly answer: { readonly findings: readonly { code: string }[] } }) =>
  of.answer.findings.map((one) => one.code);

describe("takeoff of a session's designs", () => {
  const evidence = estimateTakeoff(session(), { draws: 400 });
  const [alder] = evidence.answer.designs;

  it("tells every number with an interval that holds it", () => {
    const told = [
      alder!.wingLoading,
      alder!.stallSpeed,
      alder!.takeoffSpeed,
      alder!.leastDragSpeed,
      alder!.leastPowerSpeed,
      alder!.towForceAtTakeoff,
      alder!.reynoldsNumber,
      alder!.inAir!.takeoffSpeed,
      alder!.inAir!.powerPerKilogram,
    ];
    for (const one of told) {
      expect(one!.low!).toBeLessThan(one!.value);
      expect(one!.high!).toBeGreaterThan(one!.value);
      expect(one!.standardUncertainty!).toBeGreaterThan(0);
    }
    expect(codes(evidence)).toEqual([]);
    expect(alder!.outcome).toBe("takes-off");
    expect(alder!.wingLoading!.value).toBeCloseTo(84 * evidence.answer.setting!.gravity / 0.15, 9);
  });
  it("takes off faster than it stalls, and deeper", () => {
    expect(alder!.takeoffSpeed!.value).toBeGreaterThan(alder!.stallSpeed!.value);
    expect(alder!.takeoffDepth).toBeCloseTo(0.67, 12);
    expect(alder!.runningDepth).toBe(0.4);
  });
  it("gives the same digits again", () => {
    expect(estimateTakeoff(session(), { draws: 400 })).toEqual(evidence);
  });
  it("shares out the doubt to 1, the largest lift coefficient first at takeoff", () => {
    for (const { inputs } of alder!.whatMattersMost) {
      expect(inputs.reduce((sum, one) => sum + one.share, 0)).toBeCloseTo(1, 12);
    }
    expect(alder!.whatMattersMost[0]!.inputs[0]!.input).toBe("largest lift coefficient");
  });
  it("takes a measured drag area of the rider, with its own doubt", () => {
    const measured = estimateTakeoff(
      session(HEAD + ALDER, CONDITIONS + "air_drag_area,0.4,m2,0.04,standard\n"),
      few,
    );
    const own = measured.answer.inputs.find((one) => one.input === "rider in the air")!;
    expect(own).toMatchObject({ value: 0.4, stated: true });
    expect(own.standardUncertainty).toBeCloseTo(0.1, 12);
    expect(measured.answer.designs[0]!.leastDrag!.value).toBeLessThan(alder!.leastDrag!.value);
  });
  it("adds parts up to the whole", () => {
    expect(alder!.partsAt.length).toBe(3);
    for (const one of alder!.partsAt) {
      const sum = one.wingFriction + one.viscousLift + one.inducedAndWave + one.struts + one.spray +
        one.junction + one.extra + one.air;
      expect(sum / one.total).toBeCloseTo(1, 12);
      expect(one.power).toBeCloseTo(one.total * one.speed, 9);
    }
  });
  it("takes the asker's load, depth, height and pull", () => {
    const { answer } = estimateTakeoff(session(), {
      ...few,
      mass: 100,
      depth: 0.3,
      altitude: 2000,
      pull: 75,
    });
    const [own] = answer.designs;
    expect(answer.setting!.mass).toBe(100);
    expect(own!.runningDepth).toBe(0.3);
    // The same wing as before: a wet volume is that of the session's own depth, and only the strut comes out of the water.
    const strut = 0.685 * 0.115 * 0.0145 * 0.1 * answer.setting!.density * answer.setting!.gravity;
    expect(alder!.buoyancy! - own!.buoyancy!).toBeCloseTo(strut, 9);
    expect(own!.inAir!.altitude).toBe(2000);
    expect(own!.speedsHeld!.length).toBe(1);
    expect(own!.outcome).toBe("beyond-tow");
    expect(own!.takeoffSpeed!.value).toBeGreaterThan(alder!.takeoffSpeed!.value);
  });
});

describe("one design beside another", () => {
  const both = estimateTakeoff(session(HEAD + ALDER + BIRCH), few);
  const [pair] = both.answer.comparisons;
  const [alder, birch] = both.answer.designs;

  it("has the ratio of the two values, known better than either", () => {
    expect(pair).toMatchObject({ baseline: "alder", candidate: "birch" });
    expect(pair!.takeoffSpeedRatio!.value)
      .toBeCloseTo(birch!.takeoffSpeed!.value / alder!.takeoffSpeed!.value, 12);
    const width = (low: number, high: number) => Math.log(high / low);
    const { low, high } = pair!.leastDragRatio!;
    expect(width(low!, high!)).toBeLessThan(
      0.5 * width(alder!.leastDrag!.low!, alder!.leastDrag!.high!),
    );
  });
  it("keeps only what each wing has of its own", () => {
    // Twin wings: own parts of area, span, volume and half of the largest lift coefficient, each twice.
    const twins = estimateTakeoff(session(HEAD + ALDER + ALDER.replace("alder", "twin")), few);
    const [one] = twins.answer.comparisons;
    expect(one!.takeoffSpeedRatio!.value).toBeCloseTo(1, 12);
    const { changes, prepared } = twins.designs[0]!;
    const own = (key: string) =>
      changes!.takeoffSpeed[prepared.doubts.findIndex((each) => each.key === key)]!;
    const parts = [own("area"), own("span"), own("wingVolume")].map((each) => 2 * each * each);
    const lift = own("largestLiftCoefficient");
    expect(one!.takeoffSpeedRatio!.standardUncertainty!)
      .toBeCloseTo(Math.sqrt(parts.reduce((sum, each) => sum + each, lift * lift)), 9);
  });
  it("is not told of a design that does not fly", () => {
    const floating = estimateTakeoff(session(HEAD + ALDER + BIRCH.replace("2.3", "120")), few);
    expect(floating.answer.comparisons).toEqual([]);
  });
});

describe("where the model stops", () => {
  const told = (designs: string, conditions = CONDITIONS, options = {}) =>
    codes(estimateTakeoff(session(HEAD + designs, conditions), { ...few, ...options }));
  const SLENDER = ALDER.replace("0.95,0.150,2.4", "1.5,0.075,1.5");
  const WIDE = "wide,3.8,0.55,7.4,0.12,cambered,1.0,2,100,12,0.55,0.08\n";

  it("a thin slow wing is told to lie below the Reynolds numbers of its friction line", () => {
    expect(told(SLENDER, CONDITIONS, { mass: 50 })).toContain("low-reynolds");
    expect(told(ALDER)).not.toContain("low-reynolds");
  });
  it("a wing nearer to the surface than two chords is warned of, nearer than one it may draw air", () => {
    expect(told(ALDER, CONDITIONS, { depth: 0.25 })).toContain("near-the-surface");
    const { answer } = estimateTakeoff(session(), { ...few, depth: 0.14 });
    const [own] = answer.findings.filter((one) => one.code === "near-the-surface");
    expect(own!.what).toContain("if it does not draw air");
  });
  it("a wide wing that piles up waves is told to be beyond small waves", () => {
    expect(told(WIDE, CONDITIONS, { depth: 0.15 })).toContain("steep-waves");
    expect(told(ALDER)).not.toContain("steep-waves");
  });
  it("water is told to boil only where a wing is fast enough for it", () => {
    const small = ALDER.replace("0.95,0.150", "0.35,0.012");
    expect(told(small, CONDITIONS, { mass: 150 })).toContain("cavitation");
    expect(told(ALDER)).not.toContain("cavitation");
  });
  it("struts too short for the running depth win over it", () => {
    const { answer } = estimateTakeoff(session(), { ...few, depth: 0.9 });
    expect(codes({ answer })).toContain("deeper-than-strut");
    expect(answer.designs[0]!.runningDepth).toBeCloseTo(0.67, 12);
  });
  it("a wet volume smaller than the struts' is replaced by the planform's, and said", () => {
    expect(told(ALDER.replace("2.4", "0.3"))).toContain("volume-below-struts");
  });
});

describe("what is missing or can't be", () => {
  it("a missing wet volume, strut, section or lift coefficient is filled, and said", () => {
    const bare = estimateTakeoff(session("design,span,area\nalder,0.95,0.15\n"), few);
    expect(codes(bare)).toEqual([
      "usual-taken",
      "lift-assumed",
      "takeoff-depth-assumed",
      "volume-estimated",
    ]);
    expect(bare.answer.designs[0]!.takeoffSpeed).not.toBeNull();
    for (const one of bare.answer.findings) expect(one.what).toMatch(/^[A-Z].*[.]$/);
  });
  it("a design with one missing number does not keep the others from an answer", () => {
    const two = session(HEAD + ALDER + ALDER.replace("alder", "birch").replace("2.4", ""));
    const { answer } = estimateTakeoff(two, few);
    expect(answer.designs.map((one) => one.outcome)).toEqual(["takes-off", "takes-off"]);
    expect(answer.findings.map((one) => [one.code, one.row])).toEqual([["volume-estimated", 3]]);
  });
  it("an area of zero is a fault of its row, and the rest is answered", () => {
    const two = session(HEAD + ALDER + ALDER.replace("alder", "birch").replace("0.150", "0"));
    const { answer } = estimateTakeoff(two, few);
    expect(answer.designs.map((one) => one.design)).toContain("alder");
    const told = [...two.findings, ...answer.findings].filter((one) => one.severity === "error");
    expect(told.length).toBeGreaterThan(0);
    expect(told[0]!.row).toBe(3);
  });
  it("a load that nothing can lift is told, not computed away", () => {
    const small = session(HEAD + ALDER.replace("0.95,0.150", "0.35,0.006"));
    const { answer } = estimateTakeoff(small, { ...few, mass: 150 });
    expect(answer.designs[0]!.outcome).toBe("beyond-range");
    expect(answer.findings.some((one) => one.code === "load-too-large")).toBe(true);
  });
  it("a craft that floats is told to float", () => {
    const { answer } = estimateTakeoff(session(HEAD + ALDER.replace("2.4", "120")), few);
    expect(answer.designs[0]).toMatchObject({ outcome: "floats", takeoffSpeed: null });
    expect(answer.findings.some((one) => one.code === "floats" && one.severity === "error")).toBe(
      true,
    );
  });
  it("a line that presses more than the wing lifts leaves no speed", () => {
    const { answer } = estimateTakeoff(session(), { ...few, lineAngle: -89 * Math.PI / 180 });
    expect(answer.designs[0]!.outcome).toBe("no-speed");
    expect(answer.findings.some((one) => one.code === "no-speed-lifts")).toBe(true);
  });
  it("the density of air in the water's column is asked about", () => {
    const { answer } = estimateTakeoff(
      session(HEAD + ALDER, CONDITIONS.replace("18", "1.225")),
      few,
    );
    const [own] = answer.findings;
    expect(own).toMatchObject({ code: "air-in-water", file: "conditions.csv", row: 2 });
    expect(own!.what).toContain("density");
  });
  it("a density of air among the conditions is told to be no density of water", () => {
    const { answer } = estimateTakeoff(
      session(HEAD + ALDER, CONDITIONS + "water_density,1.225,kg/m3,,\n"),
      few,
    );
    expect(answer.findings[0]!.code).toBe("air-in-water");
    expect(answer.findings[0]!.what).toContain("would be air's");
  });
  it("no load, no answer", () => {
    const none = estimateTakeoff(session(HEAD + ALDER, CONDITIONS.replace(/carried_mass.*\n/, "")));
    expect(none.answer).toMatchObject({ setting: null, designs: [] });
    expect(codes(none)).toContain("no-mass");
  });
  it("a section too thick for the formulas is named, and nothing is made up", () => {
    const { answer } = estimateTakeoff(session(HEAD + ALDER.replace("0.13", "0.45")), few);
    expect(answer.designs[0]!.outcome).toBe("not-told");
    expect(answer.findings.find((one) => one.code === "not-told")!.what).toContain("0 to 0.3");
  });
  it("a wrong name is a wrong use, water that can't be a fault of the data", () => {
    expect(() => estimateTakeoff(session(), { designs: ["oak"] })).toThrow(UsageError);
    const hot = { ...session() };
    const conditions = hot.conditions.map((one) =>
      one.quantity === "water_temperature" ? { ...one, value: 340 } : one
    );
    expect(() => estimateTakeoff({ ...hot, conditions })).toThrow(DataError);
  });
});
