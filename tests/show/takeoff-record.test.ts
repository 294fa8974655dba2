import { describe, expect, it } from "vitest";
import { estimateTakeoff } from "lakeproof/decide/estimate-takeoff.ts";
import { takeoffRecord } from "lakeproof/show/takeoff-record.ts";
import {
  takeoffChangesTable,
  takeoffInputsTable,
  whatMattersTable,
} from "lakeproof/show/takeoff-doubt-tables.ts";
import { measuredDragTable } from "lakeproof/show/takeoff-measured-table.ts";
import {
  takeoffPartsTable,
  takeoffTable,
  waterBesideAirTable,
} from "lakeproof/show/takeoff-table.ts";
import { takeoffBothWaysTable } from "lakeproof/show/takeoff-both-ways-table.ts";
import { heldSentence } from "lakeproof/show/takeoff-sentence.ts";
import { ALDER_ROW, BIRCH_ROW, DESIGNS_HEAD, takeoffSession } from "../support/invented-takeoff.ts";

const evidence = estimateTakeoff(takeoffSession(DESIGNS_HEAD + ALDER_ROW + BIRCH_ROW), {
  draws: 200,
  pull: 60,
});

describe("the short answer on takeoff", () => {
  const record = takeoffRecord(evidence);
  it("tells each design's takeoff, and calls it a prediction", () => {
    expect(record.verdict).toBe("told");
    expect(record.headline).toMatch(
      /^By prediction alder takes off at .* of pull and birch at .*\u00a0N\.$/,
    );
    expect(record.strip).toBeNull();
  });
  it("says of one design all it knows, of several what stands side by side", () => {
    const alone = takeoffRecord(
      estimateTakeoff(takeoffSession(DESIGNS_HEAD + ALDER_ROW), { draws: 200 }),
    );
    expect(alone.details.join(" ")).toContain("in air");
    expect(record.details.join(" ")).not.toContain("in air");
    expect(record.details.join(" ")).toContain("Birch beside alder");
  });
  it("carries the words, the interval's meaning and the caution", () => {
    for (const words of ["95 % interval", "Stall speed:", "quick release", "local rules"]) {
      expect(record.rests).toContain(words);
    }
  });
  it("refuses with the reason where nothing flies", () => {
    const none = takeoffRecord(
      estimateTakeoff(takeoffSession(DESIGNS_HEAD + ALDER_ROW.replace("2.4", "120"))),
    );
    expect(none.verdict).toBe("refused");
    expect(none.details.join(" ")).toContain("floats");
  });
  it("tells which speeds the pull holds", () => {
    const [alder, birch] = evidence.answer.designs;
    expect(heldSentence(alder!, 60)).toMatch(/^60\u00a0N hold alder at 4\.\d\d to 5\.\d\d/);
    expect(birch!.speedsHeld!.length).toBe(1);
    expect(heldSentence({ ...alder!, speedsHeld: [] }, 60)).toContain("at no speed");
  });
});

describe("tables of a takeoff", () => {
  it("hold the answer's own numbers", () => {
    const [alder] = evidence.answer.designs;
    const whole = takeoffTable(evidence);
    expect(whole.columns.map((one) => one.label)).toEqual(["quantity", "alder", "birch"]);
    const takeoff = whole.rows.find((one) => one[0]!.text === "takeoff speed (m/s)")!;
    expect(takeoff[1]!.number).toBe(alder!.takeoffSpeed!.value);
    const besides = waterBesideAirTable(evidence);
    expect(besides.rows.length).toBe(4);
    expect(besides.rows[1]![3]!.number).toBe(alder!.inAir!.takeoffSpeed!.value);
  });
  it("add parts up, and leave out what nobody has", () => {
    const { rows } = takeoffPartsTable(evidence, "alder");
    const at = (label: string) => rows.find((one) => one[0]!.text === label)![1]!.number!;
    const parts = rows.slice(0, rows.findIndex((one) => one[0]!.text === "whole craft"));
    const sum = parts.reduce((total, one) => total + one[1]!.number!, 0);
    expect(sum / at("whole craft")).toBeCloseTo(1, 12);
    expect(rows.some((one) => one[0]!.text === "else under water")).toBe(false);
  });
  it("tell what matters most first, with shares of at most one", () => {
    const { rows } = whatMattersTable(evidence, "alder");
    expect(rows[0]![0]!.text).toBe("largest lift coefficient");
    for (const row of rows) {
      for (const cell of row.slice(1)) expect(cell.number!).toBeLessThanOrEqual(1);
    }
  });
  it("tell changes with their sign, and inputs in the units that people use", () => {
    const changes = takeoffChangesTable(evidence, "alder").rows;
    const of = (words: string) => changes.find((one) => one[0]!.text.startsWith(words))!;
    expect(of("10 kg more")[1]!.text).toMatch(/^\+5\./);
    expect(of("10 % more span")[2]!.text).toMatch(/^−/);
    expect(of("rough finish")[1]!.text).toBe("0.0\u00a0%");
    expect(of("rough finish")[3]!.number!).toBeGreaterThan(of("turbulent from")[3]!.number!);
    const inputs = takeoffInputsTable(evidence, "alder").rows;
    const volume = inputs.find((one) => one[0]!.text === "wet volume")!;
    expect([volume[2]!.text, volume[4]!.text]).toEqual(["l", "the session"]);
    expect(volume[1]!.number!).toBeGreaterThan(1);
  });
  it("have no measured row where nothing was measured", () => {
    expect(measuredDragTable(evidence).rows).toEqual([]);
  });
});

describe("intervals both ways", () => {
  it("agree for takeoff, which is nearly a straight line, and are the answer's own where it draws", () => {
    const { bothWays, answer } = evidence.designs[0]!;
    const of = (result: string) => bothWays.find((one) => one.result === result)!;
    expect(of("takeoffSpeed").firstOrder).toEqual(answer.takeoffSpeed);
    expect(of("leastDrag").drawn).toEqual(answer.leastDrag);
    const table = takeoffBothWaysTable(evidence);
    expect(table.rows).toHaveLength(14);
    expect(table.rows.map((row) => row[5]!.text)).toContain("yes");
    expect(table.rows[1]!.map((cell) => cell.text).slice(0, 2)).toEqual([
      "alder",
      "takeoff speed (m/s)",
    ]);
  });

  it("are called apart as soon as an end differs by more than a fifth of the half-width", () => {
    // A long slow wing near the surface: its curve of drag is flat, and its best speed far from a straight line.
    const slow = estimateTakeoff(
      takeoffSession(
        DESIGNS_HEAD + ALDER_ROW.replace("0.95", "3.6").replace("0.15", "0.55").replace("2.4", "7"),
      ),
      { draws: 400 },
    );
    const all = [...evidence.designs, ...slow.designs].flatMap((one) => one.bothWays);
    for (const { firstOrder, drawn, agree } of all) {
      const half = (firstOrder.high! - firstOrder.low!) / 2;
      const apart = Math.max(
        Math.abs(firstOrder.low! - drawn.low!),
        Math.abs(firstOrder.high! - drawn.high!),
      );
      expect(agree).toBe(apart <= half / 5);
    }
    expect(new Set(all.map((one) => one.agree))).toEqual(new Set([true, false]));
  });
});
