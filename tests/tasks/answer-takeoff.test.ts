import { describe, expect, it } from "vitest";
import { DataError, UsageError } from "lakeproof/base/errors.ts";
import type { TakeoffAnswer } from "lakeproof/base/takeoff-answer.ts";
import { answerTakeoff, type TakeoffFlags } from "lakeproof/tasks/answer-takeoff.ts";

const DEMO = "quillwater-tow";

describe("task answer takeoff", () => {
  it("prints the contract's object, every number finite", async () => {
    const { text, code } = await answerTakeoff([DEMO], { json: true, design: ["birch"] });
    const answer = JSON.parse(text) as TakeoffAnswer;
    expect(code).toBe(0);
    expect(Object.keys(answer).slice(0, 6)).toEqual([
      "contract",
      "question",
      "sessions",
      "findings",
      "versions",
      "dataChecksums",
    ]);
    expect(answer.question).toBe("takeoff");
    const [own] = answer.designs;
    expect(own!.design).toBe("birch");
    const keys = [
      "design",
      "wingLoading",
      "stallSpeed",
      "takeoffSpeed",
      "leastDragSpeed",
      "leastPowerSpeed",
      "towForceAtTakeoff",
      "reynoldsNumber",
      "inAir",
    ];
    expect(Object.keys(own!)).toEqual(expect.arrayContaining(keys));
    expect(own!.wingLoading!.unit).toBe("N/m2");
    expect(own!.inAir).toMatchObject({ altitude: 210 });
    expect(text).not.toMatch(/NaN|Infinity|undefined/);
  });
  it("prints speeds, water beside air, and the caution", async () => {
    const { text, code } = await answerTakeoff([DEMO], { mass: "180lb", depth: "35cm" });
    expect(code).toBe(0);
    for (const words of ["takes off at", "in air", "quick release", "local rules", "invented"]) {
      expect(text).toContain(words);
    }
  });
  it("tells the speeds that a power holds, as the drag times the speed at both ends", async () => {
    const flags = { power: "0.28kW", design: ["birch"] };
    const { text } = await answerTakeoff([DEMO], flags);
    const [, from, to] = /280\u00a0W hold birch at ([\d.]+) to ([\d.]+)/.exec(text)!;
    const json = await answerTakeoff([DEMO], { ...flags, json: true });
    const [held] = (JSON.parse(json.text) as TakeoffAnswer).designs[0]!.speedsHeld!;
    expect(held!.map((one) => one.toFixed(2))).toEqual([from, to]);
    // At the fast end the pull that 280 W give there holds the same speed and no faster one.
    const pull = await answerTakeoff([DEMO], {
      pull: String(280 / held![1]),
      design: ["birch"],
      json: true,
    });
    const [, fast] = (JSON.parse(pull.text) as TakeoffAnswer).designs[0]!.speedsHeld!.at(-1)!;
    expect(fast / held![1]).toBeCloseTo(1, 6);
  });
  it("says what power is short at takeoff, and takes pull or power, not both", async () => {
    const { text } = await answerTakeoff([DEMO], { power: "100", design: ["birch"] });
    expect(text.replace(/\s+/g, " ")).toMatch(/needs \d+ W to take off; the tow gives 100 W/);
    await expect(answerTakeoff([DEMO], { power: "280", pull: "70" })).rejects.toThrow(UsageError);
  });
  it("ends with code 1 where the line leaves no speed", async () => {
    const { text, code } = await answerTakeoff([DEMO], { lineAngle: "-89" });
    expect(code).toBe(1);
    expect(text).toContain("No speed lifts");
  });
  it("refuses options that can't be, one session twice, and unknown designs", async () => {
    const wrong: [string[], TakeoffFlags][] = [
      [[DEMO], { mass: "4 m" }],
      [[DEMO], { depth: "0" }],
      [[DEMO], { depth: "40" }],
      [[DEMO], { altitude: "9km" }],
      [[DEMO], { design: ["oak"] }],
      [[DEMO, DEMO], {}],
    ];
    for (const [names, flags] of wrong) {
      await expect(answerTakeoff(names, flags)).rejects.toThrow(UsageError);
    }
  });
  it("tells a missing session as data, also in JSON", async () => {
    await expect(answerTakeoff(["nowhere"], {})).rejects.toThrow(DataError);
    const { text, code } = await answerTakeoff(["nowhere"], { json: true });
    expect(code).toBe(1);
    expect((JSON.parse(text) as TakeoffAnswer).findings.at(-1)!.code).toBe("no-session");
  });
});
