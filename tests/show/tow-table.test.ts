import { describe, expect, it } from "vitest";
import { compareTows } from "lakeproof/decide/compare-tows.ts";
import { towLawTable, towReadingTable, towSpeedTable, towTable } from "lakeproof/show/tow-table.ts";
import { exampleTow } from "../support/towed-world.ts";

const { crafts, session } = exampleTow("two tows");
const tow = session.tow.map((one, at) => at === 4 ? { ...one, leaveOut: "hit a wake" } : one);
const evidence = compareTows({ ...session, tow });
const { designs } = evidence.answer;

describe("tables of a tow", () => {
  it("have a cell for every column", () => {
    for (const table of [towTable, towLawTable, towSpeedTable, towReadingTable]) {
      const { columns, rows } = table(evidence);
      expect(rows.length).toBeGreaterThan(0);
      for (const row of rows) expect(row.length).toBe(columns.length);
    }
  });

  it("give the best with its interval, full numbers behind the rounded ones", () => {
    const [row] = towTable(evidence).rows;
    const { bestLiftToDrag: best, speedOfBestLiftToDrag: speed } = designs[0]!;
    expect(row!.slice(1, 7).map((cell) => cell.number)).toEqual([
      best!.value,
      best!.low,
      best!.high,
      speed!.value,
      speed!.low,
      speed!.high,
    ]);
    expect(row!.at(-1)!.text).toBe("20");
  });

  it("give one end and no value where the best speed was not towed", () => {
    const fast = compareTows({
      ...session,
      tow: session.tow.filter((one) => one.setSpeed! > 1.25 * crafts[0]!.best.speed),
    });
    const { bestLiftToDrag: best, law } = fast.answer.designs[0]!;
    const [row] = towTable(fast).rows;
    expect(row!.slice(1, 7).map((cell) => cell.number ?? cell.text)).toEqual([
      "at least",
      best!.low,
      "–",
      "at most",
      "–",
      law!.from,
    ]);
  });

  it("give a law whose terms add up to the drag beside it, where the surface is far", () => {
    const [row] = towLawTable(evidence).rows;
    const { law, dragAt } = designs[0]!;
    const [a, d, e] = [row![1]!, row![3]!, row![5]!].map((cell) => cell.number!);
    const { speed, drag } = dragAt[0]!;
    // phi of the water surface lies between 1 and 1.5 at half a span's depth and more.
    expect(a! * speed ** 2 + d! + e! / speed ** 2).toBeLessThan(drag.value);
    expect(a! * speed ** 2 + d! + 1.5 * e! / speed ** 2).toBeGreaterThan(drag.value);
    expect(row![2]!.number).toBeCloseTo(Math.sqrt(law!.covariance[0]![0]!), 12);
  });

  it("name every reading, and why one was left out", () => {
    const { rows } = towReadingTable(evidence);
    expect(rows.length).toBe(42);
    expect(rows[4]!.at(-1)!.text).toContain("hit a wake");
    expect(rows.filter((row) => row.at(-1)!.text === "").length).toBeGreaterThan(35);
    const first = designs[0]!.points[0]!;
    expect(rows[0]![3]!.number).toBe(first.drag);
    expect(rows[0]![5]!.number).toBeGreaterThan(first.drag!);
  });
});
