import type { Glide, Session } from "lakeproof/base/session.ts";
import { GLIDES, session } from "./invented-session.ts";

/** Codes of all findings of an answer. */
export const codes = (one: { answer: { findings: readonly { code: string }[] } }) =>
  one.answer.findings.map((finding) => finding.code);

/** The session of the tests with its glides changed. */
export function change(edit: (glide: Glide, i: number) => Partial<Glide>): Session {
  return session({ glides: GLIDES.map((one, i) => ({ ...one, ...edit(one, i) })) });
}

/** Whether no number anywhere in a value is NaN or infinite. */
export function allFinite(value: unknown): boolean {
  if (typeof value === "number") return Number.isFinite(value);
  if (value === null || typeof value !== "object") return true;
  return Object.values(value).every(allFinite);
}
