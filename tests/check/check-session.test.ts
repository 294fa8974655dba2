import { describe, expect, it } from "vitest";
import { answerable } from "lakeproof/check/answerable.ts";
import { checkSession } from "lakeproof/check/check-session.ts";
import { DESIGNS_CSV, GLIDES_CSV, sessionWith } from "../read/invented-session.ts";

/** The invented session with one row of glides.csv replaced by cells of our own. */
function withRun(changes: Readonly<Record<string, string>>, run = 1) {
  const lines = GLIDES_CSV.split("\n");
  const names = lines[0]!.split(",");
  const cells = lines[run]!.split(",");
  for (const [name, value] of Object.entries(changes)) cells[names.indexOf(name)] = value;
  lines[run] = cells.join(",");
  return sessionWith({ "glides.csv": lines.join("\n") });
}

const found = (session: ReturnType<typeof sessionWith>) =>
  checkSession(session).map((one) =>
    `${one.severity} ${one.code} ${one.file} ${one.row} ${one.column}`
  );

describe("what looks odd in a session", () => {
  it("is nothing in a session that is in order", () => {
    expect(checkSession(sessionWith())).toEqual([]);
  });

  it("a run that ends faster than it was launched was pumped or pushed, and stays", () => {
    const session = withRun({ launch_speed: "3", end_speed: "3.5", duration: "" });
    expect(found(session)).toEqual(["warning sped-up glides.csv 2 end_speed"]);
    expect(session.glides).toHaveLength(6);
  });

  it("an end speed more than 10 % below the stated stall is told", () => {
    // By hand: (85.5 - 998.6 x 0.00425) 9.8126 = 797.3 N; sqrt(2 x 797.3/(998.6 x 0.177 x 1.15)) = 2.801 m/s.
    const session = withRun({ end_speed: "2.4", duration: "" });
    expect(found(session)).toContain("warning below-stall glides.csv 2 end_speed");
    expect(checkSession(session)[0]!.what).toContain("stalls at 2.8 m/s");
  });

  it("a design whose every run ends below its stated stall is told once, at its coefficient", () => {
    const designs = DESIGNS_CSV.replace("1.15", "0.7");
    expect(checkSession(sessionWith({ "designs.csv": designs }))).toMatchObject([
      {
        code: "below-stall",
        file: "designs.csv",
        row: 2,
        column: "largest_lift_coefficient",
        count: 3,
      },
    ]);
  });

  it("a distance that does not fit time and speeds is told, a fitting one is not", () => {
    expect(found(withRun({ duration: "12.5" }))).toEqual([
      "warning mean-speed glides.csv 2 duration",
    ]);
    expect(found(withRun({ duration: "8.3" }))).toEqual([]);
  });

  it("a negative drop and one above two metres are told", () => {
    expect(found(withRun({ drop: "-0.1" }))).toContain("warning odd-value glides.csv 2 drop");
    expect(found(withRun({ drop: "2.5" }))).toContain("warning odd-value glides.csv 2 drop");
  });

  it("a distance with a slipped decimal mark gives a glide ratio that no craft has", () => {
    expect(found(withRun({ distance: "315", duration: "" }))).toContain(
      "warning odd-glide-ratio glides.csv 2 distance",
    );
  });

  it("a whole column in another unit is told once, with the unit that would fit", () => {
    const lines = GLIDES_CSV.trim().split("\n").map((line, row) => {
      const cells = line.split(",");
      if (row > 0) cells[4] = String(Number(cells[4]) * 3.6);
      return cells.join(",");
    });
    const findings = checkSession(sessionWith({ "glides.csv": lines.join("\n") }));
    const slips = findings.filter((one) => one.code === "unit-slip");
    expect(slips).toHaveLength(1);
    expect(slips[0]).toMatchObject({ file: "glides.csv", column: "launch_speed", count: 6 });
    expect(slips[0]!.wanted).toContain("Did you mean km/h? 17.1 km/h is 4.75 m/s");
  });

  it("one speed in another unit than the rest is told with the unit", () => {
    const session = withRun({ launch_speed: "14", duration: "" });
    const odd = checkSession(session).filter((one) => one.code === "odd-value");
    expect(odd).toMatchObject([{ file: "glides.csv", row: 2, column: "launch_speed" }]);
    expect(odd[0]!.wanted).toBe("Did you mean km/h? 14 km/h is 3.89 m/s.");
  });

  it("both speeds in knots are told by the time they took", () => {
    const lines = GLIDES_CSV.trim().split("\n").map((line, row) => {
      const cells = line.split(",");
      if (row > 0) {
        for (const at of [4, 5]) cells[at] = (Number(cells[at]) / 0.514444).toFixed(2);
      }
      return cells.join(",");
    });
    const findings = checkSession(sessionWith({ "glides.csv": lines.join("\n") }));
    expect(findings.filter((one) => one.code === "unit-slip")).toMatchObject([
      { column: "launch_speed", count: 6, wanted: expect.stringContaining("Did you mean kn?") },
    ]);
  });

  it("designs flown on days of their own can't be told from their days", () => {
    const glides = GLIDES_CSV.replaceAll("mira-sat,birch", "mira-sun,birch");
    expect(found(sessionWith({ "glides.csv": glides }))).toEqual([
      "warning one-design-a-block glides.csv null block",
    ]);
  });

  it("a condition for a block that no run is in is told", () => {
    const conditions = "quantity,value,unit,block\nwater_temperature,18,degC,mira_sat\n";
    const [one] = checkSession(sessionWith({ "conditions.csv": conditions }));
    expect(one).toMatchObject({ code: "unknown-block", file: "conditions.csv", row: 2 });
    expect(one!.wanted).toBe("Did you mean mira-sat?");
  });

  it("runs that don't say how they ended are noted", () => {
    const glides = GLIDES_CSV.replace(/stalled|touched/g, "");
    expect(found(sessionWith({ "glides.csv": glides }))).toEqual([
      "note no-ends glides.csv null ended",
    ]);
  });

  it("an area in another unit shows in the aspect ratio", () => {
    const designs = DESIGNS_CSV.replace("0.177", "0.0177");
    expect(found(sessionWith({ "designs.csv": designs }))).toContain(
      "warning odd-aspect-ratio designs.csv 2 area",
    );
  });
});

describe("which questions a session can answer", () => {
  const one = (question: string, session = sessionWith()) =>
    answerable(session).find((each) => each.question === question)!;

  it("glides of two designs with mass answer the glide question", () => {
    expect(one("glide")).toMatchObject({ can: true, needs: [] });
    expect(one("glide").has).toContain("alder 3 runs and birch 3 runs");
  });

  it("no runs is said plainly", () => {
    const header = GLIDES_CSV.split("\n")[0]!;
    expect(one("glide", sessionWith({ "glides.csv": header }))).toMatchObject({
      can: false,
      has: "No runs yet.",
    });
    expect(one("glide", sessionWith({ "glides.csv": null }))).toMatchObject({ can: false });
  });

  it("what is missing is named with the place it may stand in", () => {
    const bare = GLIDES_CSV.replace("carried_mass", "my_own_column");
    expect(one("glide", sessionWith({ "glides.csv": bare })).needs[0]).toBe(
      "carried_mass in glides.csv, or one for all runs in conditions.csv (missing in 6 runs)",
    );
  });

  it("an error in a table that the question rests on forbids it", () => {
    const bad = GLIDES_CSV.replace("31.5", "far");
    expect(one("glide", sessionWith({ "glides.csv": bad }))).toMatchObject({
      can: false,
      needs: ["the errors in glides.csv put right"],
    });
    expect(one("takeoff", sessionWith({ "glides.csv": bad })).can).toBe(true);
  });

  it("one mass for all in conditions.csv is enough", () => {
    const bare = GLIDES_CSV.replaceAll(",85.5,", ",,");
    const conditions = "quantity,value,unit\ncarried_mass,85.5,kg\n";
    expect(one("glide", sessionWith({ "glides.csv": bare, "conditions.csv": conditions })).can)
      .toBe(
        true,
      );
  });

  it("towed readings need four speeds", () => {
    const tow = "point,design,speed,line_tension,carried_mass\n" +
      [3, 3.5, 4, 4.5].map((v, i) => `${i},alder,${v},60,85`).join("\n");
    expect(one("tow", sessionWith({ "tow.csv": tow })).can).toBe(true);
    expect(one("tow", sessionWith({ "tow.csv": tow.split("\n").slice(0, 3).join("\n") })).needs)
      .toEqual(["readings of alder at 4 or more speeds (there are 2)"]);
    expect(one("tow").can).toBe(false);
  });

  it("readings of the struts alone need no mass, and are counted apart", () => {
    const tow = "point,design,speed,line_tension,carried_mass\n" +
      [3, 3.5, 4, 4.5].map((v, i) => `${i},alder,${v},60,85\n${i + 4},tare,${v},5,`).join("\n");
    expect(one("tow", sessionWith({ "tow.csv": tow }))).toMatchObject({
      can: true,
      has: "4 readings of alder, 4 of the struts alone.",
    });
    const alone = tow.split("\n").filter((row) => !row.includes("alder")).join("\n");
    expect(one("tow", sessionWith({ "tow.csv": alone }))).toMatchObject({
      can: false,
      has: "4 readings of the struts alone.",
      needs: ["readings of a design, not of the struts alone"],
    });
  });
});
