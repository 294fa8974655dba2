import { describe, expect, it } from "vitest";
import { excerpt, printable } from "lakeproof/base/printable.ts";

describe("text from data", () => {
  it("loses what could steer a terminal or turn the reading direction", () => {
    for (const safe of [printable, excerpt]) {
      expect(safe("a\u001b[31mb\u0007\u202ec\u0000d")).toBe("a?[31mb??c?d");
      expect(safe("two\nlines\tand\u2028more")).toBe("two lines and more");
      expect(safe("a\ud800b")).toBe("a?b");
      expect(safe("a\u061cb\uffff")).toBe("a?b?");
    }
  });

  it("is cut to a length in a message, without breaking a letter", () => {
    expect(excerpt("😀".repeat(100), 5)).toBe("😀😀😀😀…");
    expect(printable("😀".repeat(100))).toBe("😀".repeat(100));
  });

  it("keeps the spaces at its ends in a message, which may be what is wrong", () => {
    expect(excerpt("alder ")).toBe("alder ");
    expect(printable("alder ")).toBe("alder");
  });
});
