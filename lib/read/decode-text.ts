/**
 * The bytes of a table as text, whatever a spreadsheet saved them as.
 *
 * @module
 */
import { type Failure } from "../base/quantity.ts";

/** How the bytes were read. */
export type Encoding = "utf-8" | "utf-16le" | "utf-16be" | "windows-1252";

/** A decoded text. */
export interface Decoded {
  readonly ok: true;
  readonly text: string;
  readonly encoding: Encoding;
}

const startsWith = (bytes: Uint8Array, ...head: number[]) => head.every((b, i) => bytes[i] === b);

/** Files that are no text at all, by their first bytes. */
function foreign(bytes: Uint8Array): string | null {
  if (startsWith(bytes, 0x50, 0x4b, 0x03, 0x04)) {
    return "this is a workbook or archive, not a CSV table";
  }
  if (startsWith(bytes, 0xd0, 0xcf, 0x11, 0xe0)) return "this is an old workbook, not a CSV table";
  if (startsWith(bytes, 0x25, 0x50, 0x44, 0x46)) return "this is a PDF, not a CSV table";
  return null;
}

/** Which UTF-16 the bytes are, told by their mark or by every second byte being zero. */
function utf16(bytes: Uint8Array): "utf-16le" | "utf-16be" | null {
  if (startsWith(bytes, 0xff, 0xfe)) return "utf-16le";
  if (startsWith(bytes, 0xfe, 0xff)) return "utf-16be";
  if (bytes.length < 4 || bytes.length % 2 !== 0) return null;
  let even = 0;
  let odd = 0;
  for (let i = 0; i < bytes.length; i += 2) {
    if (bytes[i] === 0) even++;
    if (bytes[i + 1] === 0) odd++;
  }
  const most = 0.4 * bytes.length;
  if (odd > most && even === 0) return "utf-16le";
  if (even > most && odd === 0) return "utf-16be";
  return null;
}

function tryDecode(bytes: Uint8Array, label: string): string | null {
  try {
    return new TextDecoder(label, { fatal: true }).decode(bytes);
  } catch {
    return null;
  }
}

/**
 * The text in the bytes of a table: UTF-8 with or without its mark, UTF-16 as spreadsheets save it, else Windows-1252.
 *
 * Windows-1252 fits any bytes, so it is the last try; letters outside English may then be wrong, which the caller notes.
 *
 * Source: WHATWG Encoding Standard, whose decoder the runtime carries.
 *
 * @param bytes the whole file
 * @returns the text without its byte order mark, or why it is no text
 */
export function decodeText(bytes: Uint8Array): Decoded | Failure {
  const why = foreign(bytes);
  if (why !== null) return { ok: false, reason: why };
  const wide = utf16(bytes);
  const tries: readonly Encoding[] = wide === null ? ["utf-8", "windows-1252"] : [wide];
  for (const encoding of tries) {
    const text = tryDecode(bytes, encoding);
    if (text === null) continue;
    // deno-lint-ignore no-control-regex
    const strange = text.match(/[\u0000-\u0006\u000e-\u001a\ufffe\uffff]/g)?.length ?? 0;
    if (text.includes("\0") || strange > 0.02 * text.length) break;
    return { ok: true, text, encoding };
  }
  return { ok: false, reason: "these bytes are no text" };
}
