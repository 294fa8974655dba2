import { describe, expect, it } from "vitest";
import { didYouMean } from "lakeproof/base/did-you-mean.ts";

const columns = ["launch_speed", "end_speed", "distance", "duration", "drop", "design"];

describe("the name that was meant", () => {
  it.each([
    ["launchspeed", "launch_speed"],
    ["Launch-Speed", "launch_speed"],
    ["lanuch speed", "launch_speed"],
    ["distence", "distance"],
    ["dist", "distance"],
    ["desing", "design"],
  ])("%s means %s", (found, meant) => expect(didYouMean(found, columns)).toBe(meant));

  it("makes no guess without known words or of a single letter", () => {
    expect(didYouMean("x", [])).toBeNull();
    expect(didYouMean("", ["a"])).toBeNull();
    expect(didYouMean("q", ["a"])).toBeNull();
  });

  it.each(["", "mood", "x", "hull", "weather_today"])(
    "'%s' means none",
    (found) => expect(didYouMean(found, columns)).toBeNull(),
  );
});
