import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Session } from "lakeproof/base/session.ts";
import type { TowAnswer } from "lakeproof/base/tow-answer.ts";
import { DataError, UsageError } from "lakeproof/base/errors.ts";
import { compareTows } from "lakeproof/decide/compare-tows.ts";
import { answerTow } from "lakeproof/tasks/answer-tow.ts";
import { exampleTow } from "../support/towed-world.ts";

let folder = "";

beforeAll(() => {
  folder = Deno.makeTempDirSync({ prefix: "lakeproof-tow-" });
});

afterAll(() => Deno.removeSync(folder, { recursive: true }));

const DEGREES = 180 / Math.PI;

/** Writes a session as a builder would, in the usual units of the tables. */
function written(name: string, { designs, tow }: Session, speedUnit = "m/s", factor = 1): string {
  const path = `${folder}/${name}`;
  Deno.mkdirSync(path);
  const lines = (head: string, rows: readonly (readonly (string | number | null)[])[]) =>
    [head, ...rows.map((row) => row.map((one) => one ?? "").join(","))].join("\n") + "\n";
  Deno.writeTextFileSync(
    `${path}/designs.csv`,
    lines(
      "design,span,area,wet_volume [l],thickness_ratio",
      designs.map((
        one,
      ) => [one.design, one.span, one.area, one.wetVolume! * 1000, one.thicknessRatio]),
    ),
  );
  Deno.writeTextFileSync(
    `${path}/tow.csv`,
    lines(
      `point,sweep,design,set_speed,speed [${speedUnit}],line_tension [N],line_angle [deg],depth,carried_mass`,
      tow.map((one) => [
        one.point,
        one.sweep,
        one.design,
        one.setSpeed,
        one.speed! * factor,
        one.lineTension,
        one.lineAngle! * DEGREES,
        one.depth,
        one.carriedMass,
      ]),
    ),
  );
  return path;
}

const { session } = exampleTow("two tows");

async function answered(path: string): Promise<[TowAnswer, number]> {
  const { text, code } = await answerTow([path], { json: true });
  return [JSON.parse(text), code];
}

describe("task answer tow", () => {
  it("gives from a folder what the same readings give in memory", async () => {
    const [answer, code] = await answered(written("plain", session));
    expect(code).toBe(0);
    const direct = compareTows(session).answer;
    expect(answer.question).toBe("tow");
    expect(Object.keys(answer)).toEqual([
      "contract",
      "question",
      "sessions",
      "findings",
      "versions",
      "dataChecksums",
      "designs",
      "comparisons",
      "current",
      "agreement",
    ]);
    answer.designs.forEach((one, i) => {
      const other = direct.designs[i]!;
      // Degrees and litres there and back, 12 digits.
      expect(one.law!.a / other.law!.a).toBeCloseTo(1, 8);
      expect(one.bestLiftToDrag!.low! / other.bestLiftToDrag!.low!).toBeCloseTo(1, 8);
      expect(one.points).toHaveLength(other.points.length);
    });
    expect(answer.comparisons[0]!.candidateLessDrag.length)
      .toBe(direct.comparisons[0]!.candidateLessDrag.length);
    expect(answer.dataChecksums.map((one) => one.file)).toContain("tow.csv");
  });

  it("prints sentences, both tables, doubts, findings and a caution, the same each time", async () => {
    const path = written("text", session);
    const { text, code } = await answerTow([path], {});
    expect(code).toBe(0);
    for (const part of ["best lift-to-drag", "Drag at the speeds towed", "95 %", "quick release"]) {
      expect(text).toContain(part);
    }
    expect(text).not.toMatch(/NaN|undefined|Infinity|null/);
    expect((await answerTow([path], {})).text).toBe(text);
  });

  it("tells the robust view and uncertainty by drawing on request, at the terminal and in JSON", async () => {
    const path = written("views", session);
    const { text } = await answerTow([path], { robust: true, draws: "100" });
    expect(text).toContain("counts for little (weight)");
    expect(text).toContain("100 draws");
    const json = await answerTow([path], { robust: true, draws: "100", json: true });
    const [one] = (JSON.parse(json.text) as TowAnswer).designs;
    expect(one!.robust!.bestLiftToDrag!.kind).toBe("interval");
    expect(one!.byDrawing!.draws).toBe(100);
    await expect(answerTow([path], { draws: "many" })).rejects.toThrow(UsageError);
    await expect(answerTow([path], { draws: "7" })).rejects.toThrow(/100 or more/);
  });

  it("finds speeds in knots under a head of m/s, and answers right once the head says so", async () => {
    const [wrong, fault] = await answered(written("knots", session, "m/s", 1 / 0.514444444));
    expect(fault).toBe(1);
    expect(wrong.designs[0]!.law).toBeNull();
    expect(wrong.findings.find((one) => one.code === "unit-slip")!.wanted).toContain("speed [kn]");
    const [right, done] = await answered(written("told", session, "kn", 1 / 0.514444444));
    expect(done).toBe(0);
    const plain = compareTows(session).answer.designs[0]!.law!;
    expect(right.designs[0]!.law!.a / plain.a).toBeCloseTo(1, 6);
  });

  it("says what is missing in a session without tows", async () => {
    const path = written("untowed", { ...session, tow: [] });
    const { text, code } = await answerTow([path], {});
    expect(code).toBe(1);
    expect(text).toContain("no towed reading");
  });

  it("tells from speed traces what a session without tows can tell, and that it does", async () => {
    const { text, code } = await answerTow(["quillwater-evening"], {});
    expect(code).toBe(0);
    expect(text).toContain("no towed reading");
    expect(text).toContain("What the speeds of the glides say");
    expect(text).not.toContain("as far as the speeds towed tell");
  });

  it("takes two sessions together, each named", async () => {
    const names = ["quillwater-tow", "quillwater-evening"];
    const { text, code } = await answerTow(names, { json: true });
    expect(code).toBe(0);
    const answer: TowAnswer = JSON.parse(text);
    expect(answer.sessions).toEqual(names);
    expect(answer.dataChecksums.map((one) => one.file)).toContain(
      "quillwater-evening/traces/13.csv",
    );
    expect(answer.designs[0]!.fromTraces!.session).toBe("quillwater-evening");
    expect(answer.agreement.length).toBeGreaterThan(4);
  });

  it("refuses one session twice, options of glides, and sessions that are not there", async () => {
    const path = written("once", session);
    await expect(answerTow([path, path], {})).rejects.toThrow(UsageError);
    await expect(answerTow([path], { mass: "80kg" })).rejects.toThrow("belongs to glide");
    await expect(answerTow([path], { baseline: "oak" })).rejects.toThrow(UsageError);
    await expect(answerTow([`${folder}/none`], {})).rejects.toThrow(DataError);
    const [answer, code] = await answered(`${folder}/none`);
    expect([answer.designs, code]).toEqual([[], 1]);
  });
});
