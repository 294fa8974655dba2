import { describe, expect, it } from "vitest";
import { DESIGNS_CSV, FILES, GLIDES_CSV, sessionWith } from "./invented-session.ts";

const problems = (session: ReturnType<typeof sessionWith>) =>
  session.findings.filter((one) => one.severity !== "note");

describe("a session read from its files", () => {
  it("holds every row in SI, with nothing to complain about", () => {
    const session = sessionWith();
    expect(problems(session)).toEqual([]);
    expect(session.designs[0]).toMatchObject({
      design: "alder",
      row: 2,
      span: 1.2,
      area: 0.177,
      wetVolume: 0.00425,
      section: "cambered",
      strutChord: null,
    });
    expect(session.glides).toHaveLength(6);
    expect(session.glides[0]).toMatchObject({
      run: "1",
      row: 2,
      launchSpeed: 4.75,
      distance: 31.5,
      ended: "stalled",
      leaveOut: null,
      own: {},
    });
  });

  it("turns conditions and instruments into SI standard uncertainties", () => {
    const { conditions, instruments } = sessionWith();
    expect(conditions[0]).toMatchObject({
      quantity: "water_temperature",
      value: 291.65,
      unit: "K",
    });
    // Rectangular half width: GUM 4.3.7.
    expect(conditions[0]!.uncertainty).toBeCloseTo(0.5 / Math.sqrt(3), 15);
    expect(conditions[2]!.value).toBe(52.5 * Math.PI / 180);
    expect(instruments[0]).toMatchObject({ quantity: "launch_speed", relative: true });
    expect(instruments[0]!.uncertainty).toBeCloseTo(0.02 / 1.959964, 8);
    expect(instruments[1]).toMatchObject({ relative: false, statedAs: "limits" });
  });

  it("takes the unit of the header before the default", () => {
    const glides = GLIDES_CSV.replace("launch_speed", "Launch Speed [km/h]").replace("4.75", "18");
    expect(sessionWith({ "glides.csv": glides }).glides[0]!.launchSpeed).toBe(5);
  });

  it("keeps a row with an empty distance and says that it can't be used", () => {
    const session = sessionWith({ "glides.csv": GLIDES_CSV.replace("31.5", "") });
    expect(session.glides[0]!.distance).toBeNull();
    expect(problems(session)).toMatchObject([{ code: "not-measured", row: 2, column: "distance" }]);
  });

  it("keeps out a row of an unknown design and guesses which was meant", () => {
    const session = sessionWith({
      "glides.csv": GLIDES_CSV.replace("5,2031-06-14,mira-sat,alder", "5,,,aldr"),
    });
    expect(session.glides.map((one) => one.run)).toEqual(["1", "2", "3", "4", "6"]);
    expect(problems(session)).toMatchObject([
      {
        severity: "error",
        code: "unknown-design",
        file: "glides.csv",
        row: 6,
        column: "design",
        wanted: "Did you mean alder?",
      },
    ]);
  });

  it("finds the misspelt design of a row that is kept out for another reason too", () => {
    const glides = GLIDES_CSV.replace("2,2031-06-14,mira-sat,birch", "1,2031-06-14,mira-sat,brich");
    const codes = problems(sessionWith({ "glides.csv": glides })).map((one) =>
      `${one.row} ${one.code}`
    );
    expect(codes.sort()).toEqual(["3 doubled-row", "3 unknown-design"]);
  });

  it("takes another case of a design's name with a note", () => {
    const session = sessionWith({ "glides.csv": GLIDES_CSV.replace("alder", " ALDER ") });
    expect(session.glides[0]!.design).toBe("alder");
    expect(session.findings.map((one) => one.code)).toContain("design-spelling");
  });

  it("keeps a faulty cell that is not needed out of its row, with an error, and the row in", () => {
    const session = sessionWith({ "glides.csv": GLIDES_CSV.replace("2.75", "slow") });
    expect(session.glides[0]!.endSpeed).toBeNull();
    expect(problems(session)).toMatchObject([{
      severity: "error",
      code: "not-a-number",
      column: "end_speed",
    }]);
  });

  it("takes a row's own uncertainty in its own unit, and a unit in round brackets", () => {
    const lines = GLIDES_CSV.trim().split("\n");
    const glides = lines.map((line, i) =>
      `${line},${i === 0 ? "U_Distance (cm)" : i === 1 ? "12.3" : ""}`
    );
    const session = sessionWith({ "glides.csv": glides.join("\n") });
    expect(problems(session)).toEqual([]);
    expect(session.glides[0]!.own).toEqual({ distance: 0.123 });
    expect(session.glides[1]!.own).toEqual({});
  });

  it("reads towed readings, of the struts alone too, angles in radians", () => {
    const tow = "point,design,speed [km/h],line_tension [kgf],line_angle,pitch,speed_over\n" +
      "1,alder,18,10,90,-1.5,water\n2,tare,18,2,0,0,Ground\n";
    const session = sessionWith({ "tow.csv": tow });
    expect(problems(session)).toEqual([]);
    expect(session.tow).toMatchObject([
      { point: "1", speed: 5, lineTension: 98.0665, lineAngle: Math.PI / 2, speedOver: "water" },
      { point: "2", design: "tare", speed: 5, lineTension: 19.6133, speedOver: "ground" },
    ]);
  });

  it("reads calibrations in SI where the unit is known, and a zero check as nothing applied", () => {
    const calibrations = "instrument,when,applied,applied_unit,reading,reading_unit\n" +
      "balance,before,,kg,120,g\nbalance,after,5,kg,5.1,kg\ncell,after,10,N,1.2,mV\n";
    expect(sessionWith({ "calibrations.csv": calibrations }).calibrations).toMatchObject([
      { when: "before", applied: null, reading: 0.12, readingUnit: "kg" },
      { when: "after", applied: 5, appliedUnit: "kg", reading: 5.1 },
      { applied: 10, reading: 1.2, readingUnit: "mV" },
    ]);
  });

  it("says when a spreadsheet has made a day of a number", () => {
    for (const day of ["01. Mai", "4-May", "04.05.2031"]) {
      const session = sessionWith({ "glides.csv": GLIDES_CSV.replace("4.75", day) });
      expect(problems(session)).toMatchObject([{
        code: "not-a-number",
        row: 2,
        column: "launch_speed",
      }]);
      expect(problems(session)[0]!.wanted).toContain("took it for a day");
    }
  });

  it("reads a folder without a descriptor with a note, and one that needs a newer program with an error", () => {
    expect(sessionWith().findings).toMatchObject([{ severity: "note", code: "no-descriptor" }]);
    const newer = JSON.stringify({ contract: 2, resources: [{ name: "glides" }] });
    expect(problems(sessionWith({ "datapackage.json": newer }))).toMatchObject([
      { severity: "error", code: "newer-contract" },
    ]);
  });

  it("says when the descriptor no longer tells the table's columns, and believes the table", () => {
    const fields = DESIGNS_CSV.split("\n")[0]!.split(",").map((name) => ({ name }));
    const descriptor = (names: readonly { readonly name: string }[]) =>
      JSON.stringify({
        resources: Object.keys(FILES).map((path) => ({
          name: path.replace(".csv", ""),
          path,
          ...(path === "designs.csv" ? { schema: { fields: names } } : {}),
        })),
      });
    const codes = (text: string) =>
      sessionWith({ "datapackage.json": text }).findings.map((one) => one.code);
    expect(codes(descriptor(fields))).toEqual(["no-schema"]);
    expect(codes(descriptor(fields.slice(1)))).toEqual(["no-schema", "stale-descriptor"]);
  });

  it("takes units from the descriptor where the header names none", () => {
    const descriptor = JSON.stringify({
      resources: [{
        name: "designs",
        path: "designs.csv",
        schema: { fields: [{ name: "span", type: "number", unit: "cm" }] },
      }],
    });
    const designs = DESIGNS_CSV.replace("1.2,", "120,").replace("1.25,", "125,");
    const session = sessionWith({ "datapackage.json": descriptor, "designs.csv": designs });
    expect(session.designs.map((one) => one.span)).toEqual([1.2, 1.25]);
  });
});
