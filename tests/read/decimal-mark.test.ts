import { describe, expect, it } from "vitest";
import { decimalChoice, numberForm, numberText } from "lakeproof/read/decimal-mark.ts";

const point = { mark: ".", open: false } as const;
const comma = { mark: ",", open: false } as const;

describe("written numbers", () => {
  it.each([
    ["12", "whole"],
    ["1 234", "whole"],
    ["1.5", "point"],
    [".5", "point"],
    ["0.250", "point"],
    ["1.2345", "point"],
    ["1,234.5", "point"],
    ["1'234.5", "point"],
    ["1.5e-3", "point"],
    ["1,5", "comma"],
    ["0,250", "comma"],
    ["1.234,5", "comma"],
    ["1\u00a0234,5", "comma"],
    ["1\u202f234,5", "comma"],
    ["1.234.567", "comma"],
    ["1.234", "point-or-thousands"],
    ["1,234", "comma-or-thousands"],
    ["1.2.3", "none"],
    ["1 2", "none"],
    ["12 34,5", "none"],
    ["", "none"],
    ["-", "none"],
    ["e5", "none"],
    ["NaN", "none"],
  ])("%s is of the form %s", (text, form) => {
    expect(numberForm(text)).toBe(form);
    if (form !== "none") expect(numberForm(`−${text}`)).toBe(form);
  });

  it.each(
    [
      [["1.5", "1.234", "7"], ",", point],
      [["1,5", "1,234", "7"], ";", comma],
      [["1,5", "1,234", "7"], ",", comma],
      [["1.234"], ",", point],
      [["1,234"], ";", comma],
      [["1.234"], ";", { mark: ".", open: true }],
      [["1,234"], ",", { mark: ",", open: true }],
      [["1.5", "2.5", "1,5"], ",", point],
      [["1.5", "1,5"], ";", { mark: ",", open: true }],
      [["1.234", "1,234"], "\t", { mark: ".", open: true }],
      [["7", "8"], ";", comma],
      [[], ",", point],
    ] as const,
  )("a file with %j between %s is decided once", (cells, delimiter, choice) => {
    expect(decimalChoice(cells, delimiter)).toEqual(choice);
  });

  it("become plain decimal text, or say why they can't", () => {
    expect(numberText("1.234,5", comma)).toEqual({ ok: true, decimal: "1234.5" });
    expect(numberText("1 234,5", comma)).toEqual({ ok: true, decimal: "1234.5" });
    expect(numberText("1,234", comma)).toEqual({ ok: true, decimal: "1.234" });
    expect(numberText("1,234.5", point)).toEqual({ ok: true, decimal: "1234.5" });
    expect(numberText("−4.5", point)).toEqual({ ok: true, decimal: "-4.5" });
    expect(numberText("1.234", comma)).toEqual({ ok: false, why: "ambiguous-number" });
    expect(numberText("1,234", point)).toEqual({ ok: false, why: "ambiguous-number" });
    expect(numberText("1.5", comma)).toEqual({ ok: false, why: "other-decimal-mark" });
    expect(numberText("1.234", { mark: ".", open: true })).toEqual({
      ok: false,
      why: "ambiguous-number",
    });
    expect(numberText("about 3", point)).toEqual({ ok: false, why: "not-a-number" });
  });
});
