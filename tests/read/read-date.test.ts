import { describe, expect, it } from "vitest";
import { readDate } from "lakeproof/read/read-date.ts";

describe("days", () => {
  it.each([
    ["2031-06-14", "2031-06-14"],
    ["2031-6-4", "2031-06-04"],
    ["2031-06-14 00:00:00", "2031-06-14"],
    ["2031-06-14T18:30", "2031-06-14"],
    ["2031/06/14", "2031-06-14"],
    ["14.06.2031", "2031-06-14"],
    ["5.6.2031", "2031-06-05"],
    ["14.06.31", "2031-06-14"],
    ["14/06/2031", "2031-06-14"],
    ["06/14/2031", "2031-06-14"],
    ["06/06/2031", "2031-06-06"],
    ["29.02.2032", "2032-02-29"],
  ])("%s is %s", (text, date) => expect(readDate(text)).toEqual({ ok: true, date }));

  it.each([
    "29.02.2031",
    "31.04.2031",
    "2031-13-01",
    "0.1.2031",
    "14 June 2031",
    "14.06",
    "45000",
    "",
  ])(
    "%s is no day",
    (text) => expect(readDate(text)).toEqual({ ok: false, why: "not-a-date" }),
  );

  it.each(["05/06/2031", "1/2/31", "05-06-2031"])(
    "%s may be two days",
    (text) => expect(readDate(text)).toEqual({ ok: false, why: "ambiguous-date" }),
  );
});
