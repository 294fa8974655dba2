/**
 * SHA-256 of bytes or text, in hexadecimal: how this room tells whether something is still the same.
 *
 * @module
 */
import { createHash } from "node:crypto";

/**
 * The SHA-256 checksum of some bytes.
 *
 * Source: NIST FIPS 180-4; the value of the empty text is e3b0c442...b855.
 *
 * @param content bytes, or text that is taken as UTF-8
 * @returns 64 hexadecimal digits
 *
 * @example
 * ```ts
 * import { sha256 } from "lakeproof/publish/checksum.ts";
 * console.assert(sha256("abc").startsWith("ba7816bf"));
 * ```
 */
export function sha256(content: string | Uint8Array): string {
  return createHash("sha256").update(content).digest("hex");
}
