import { expect, it } from "vitest";
import { compareTows } from "lakeproof/decide/compare-tows.ts";
import { towEntryName } from "lakeproof/show/tow-entry-name.ts";
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
});
