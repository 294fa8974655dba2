/** A session whose towed readings are changed one by one. */
import type { Session, TowPoint } from "lakeproof/base/session.ts";

/** Changes some fields of each towed reading of a session. */
export function withTow(change: (one: TowPoint) => Partial<TowPoint>, from: Session): Session {
  return { ...from, tow: from.tow.map((one) => ({ ...one, ...change(one) })) };
}
