import { describe, expect, it } from "vitest";
import { answerable } from "lakeproof/check/answerable.ts";
import { readSession } from "lakeproof/read/read-session.ts";
import { validationText } from "lakeproof/tasks/validation-text.ts";

const bytes = (text: string) => new TextEncoder().encode(text);

describe("what can be answered with what is there", () => {
  it("says yes to a takeoff with designs and a load, and to nothing else", () => {
    const session = readSession(
      "lake",
      new Map([
        ["designs.csv", bytes("design,span,area,largest_lift_coefficient\nalder,1,0.16,1.1\n")],
        ["conditions.csv", bytes("quantity,value,unit\ncarried_mass,85,kg\n")],
      ]),
    );
    const questions = answerable(session);
    expect(questions.find((one) => one.question === "takeoff")!.can).toBe(true);
    const text = validationText(session, [], questions).replace(/\s+/g, " ");
    expect(text).toContain("takeoff yes");
    expect(text).toContain("glide not yet");
    expect(text).toContain("tow not yet");
  });
});
