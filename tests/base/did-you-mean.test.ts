import { describe, expect, it } from "vitest";
import { didYouMean } from "lakeproof/base/did-you-mean.ts";
import { printable } from "lakeproof/base/printable.ts";

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

  it.each(["", "mood", "x", "weather_today"])(
    "'%s' means none",
    (found) => expect(didYouMean(found, columns)).toBeNull(),
  );
});

describe("text from data", () => {
  it("loses what could steer a terminal or turn the reading direction", () => {
    expect(printable("a\u001b[31mb\u0007\u202ec\u0000d")).toBe("a?[31mb??c?d");
    expect(printable("two\nlines\tand\u2028more")).toBe("two lines and more");
    expect(printable("a\ud800b")).toBe("a?b");
  });

  it("is cut to a length without breaking a letter", () => {
    expect(printable("😀".repeat(100), 5)).toBe("😀😀😀😀…");
  });
});
