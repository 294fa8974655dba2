import { describe, expect, it } from "vitest";
import { DataError, UsageError } from "lakeproof/base/errors.ts";
import { estimateTakeoff } from "lakeproof/decide/estimate-takeoff.ts";
import {
  ALDER_ROW as ALDER,
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
    expect(own!.inAir!.altitude).toBe(2000);
    expect(own!.speedsHeld!.length).toBe(1);
    expect(own!.outcome).toBe("beyond-tow");
    expect(own!.takeoffSpeed!.value).toBeGreaterThan(alder!.takeoffSpeed!.value);
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
