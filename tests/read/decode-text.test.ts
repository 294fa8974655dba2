import { describe, expect, it } from "vitest";
import { decodeText } from "lakeproof/read/decode-text.ts";

const text = "design,note\nälder,½ °C\n";
const bytes = (...all: number[]) => Uint8Array.from(all);
const utf16 = (little: boolean, mark: boolean) =>
  Uint8Array.from([
    ...(mark ? (little ? [0xff, 0xfe] : [0xfe, 0xff]) : []),
    ...[...text].flatMap((letter) => {
      const code = letter.charCodeAt(0);
      return little ? [code & 255, code >> 8] : [code >> 8, code & 255];
    }),
  ]);

describe("bytes of a table", () => {
  it.each(
    [
      ["utf-8", new TextEncoder().encode(text)],
      ["utf-8", new TextEncoder().encode("\ufeff" + text)],
      ["utf-16le", utf16(true, true)],
      ["utf-16be", utf16(false, true)],
      ["utf-16le", utf16(true, false)],
      ["windows-1252", Uint8Array.from(text, (letter) => letter.charCodeAt(0))],
    ] as const,
  )("in %s become the same text", (encoding, all) => {
    expect(decodeText(all)).toEqual({ ok: true, text, encoding });
  });

  it.each([
    ["a workbook", bytes(0x50, 0x4b, 3, 4, 0, 0)],
    ["an old workbook", bytes(0xd0, 0xcf, 0x11, 0xe0, 0xa1)],
    ["a PDF", new TextEncoder().encode("%PDF-1.7")],
    ["zeros", new Uint8Array(64)],
    ["half a letter of UTF-16", bytes(0xff, 0xfe, 0x41)],
  ])("of %s are no text, and that is said", (_, all) => {
    expect(decodeText(all).ok).toBe(false);
  });

  it("of an empty file are an empty text", () => {
    expect(decodeText(new Uint8Array())).toMatchObject({ ok: true, text: "" });
  });
});
