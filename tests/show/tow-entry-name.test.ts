import { expect, it } from "vitest";
import { compareTows } from "lakeproof/decide/compare-tows.ts";
import { towEntryName } from "lakeproof/show/tow-entry-name.ts";
import { figureDrag } from "lakeproof/show/figure-drag.ts";
import { towRecord } from "lakeproof/show/tow-record.ts";
import { towTable } from "lakeproof/show/tow-table.ts";
import { towText } from "lakeproof/show/tow-text.ts";
import { exampleTow } from "../support/towed-world.ts";

it("a design towed in two sessions is told with its session, others by name alone", () => {
  const { session } = exampleTow("two tows");
  const tow = session.tow.filter((one) => one.design === "alder");
  const evidence = compareTows([{ ...session, name: "June" }, { ...session, name: "July", tow }]);
  expect(evidence.answer.designs.map((one) => towEntryName(evidence, one))).toEqual([
    "alder (June)",
    "alder (July)",
    "birch",
  ]);
  expect(towText(evidence, true)).toContain("alder (July)");
  const record = towRecord(evidence);
  expect(record.question).toContain("alder (June) and birch");
  expect(record.details.join(" ")).toContain("alder (July): best lift-to-drag");
  expect(record.headline).toContain("alder (June)");
  expect(record.headline).not.toMatch(/alder(?! \()/);
  expect(figureDrag(evidence).wide).toContain("alder (July)");
  expect(towTable(evidence).rows.map((one) => one[0]!.text)).toEqual([
    "alder (June)",
    "alder (July)",
    "birch",
  ]);
});

it("one candidate in two sessions is told apart in what is said of its comparisons", () => {
  const { session } = exampleTow("two tows");
  const evidence = compareTows([{ ...session, name: "June" }, { ...session, name: "July" }]);
  const { comparisons } = evidence.answer;
  expect(comparisons.map((one) => [one.baselineSession, one.candidateSession])).toEqual([
    ["June", "June"],
    ["July", "July"],
  ]);
  const record = towRecord(evidence);
  expect(record.headline).toMatch(
    /[Bb]irch \(June\).*than alder \(June\).*[Bb]irch \(July\).*than alder \(July\)/,
  );
  expect(record.details.join(" ")).toContain("The 2 comparisons");
});
