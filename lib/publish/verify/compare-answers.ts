/**
 * Compares a published answer with the same answer of a fresh run, result by result.
 *
 * @module
 */
import type { CheckedResult, Sameness } from "./finding-of-check.ts";

/** Engines may differ from here on: relative difference of numbers that count as equal but for rounding. */
const ROUNDING = 1e-9;

/** Keys by which a member of a list is called, the most telling first. */
const NAMES = ["candidate", "run", "point", "design", "file"];

interface Leaf {
  readonly path: string;
  readonly value: unknown;
  /** Standard uncertainty and unit of the quantity that a number belongs to. */
  readonly of: { readonly u: number; readonly unit: string } | null;
}

function memberName(list: readonly unknown[], at: number): string {
  const names = list.map((one) => {
    if (typeof one !== "object" || one === null) return null;
    const found = NAMES.map((key) => (one as Record<string, unknown>)[key])
      .find((name) => typeof name === "string");
    return found === undefined ? null : String(found);
  });
  const own = names[at];
  return own !== null && own !== undefined && names.filter((name) => name === own).length === 1
    ? own
    : String(at);
}

function leaves(value: unknown, path: string, of: Leaf["of"], found: Leaf[]): Leaf[] {
  if (Array.isArray(value)) {
    for (const [at, one] of value.entries()) {
      leaves(one, `${path}[${memberName(value, at)}]`, of, found);
    }
    if (value.length === 0) found.push({ path, value: "an empty list", of });
  } else if (typeof value === "object" && value !== null) {
    const { standardUncertainty: u, unit } = value as Record<string, unknown>;
    const own = typeof u === "number" ? { u, unit: typeof unit === "string" ? unit : "" } : of;
    for (const [key, one] of Object.entries(value)) {
      leaves(one, path === "" ? key : `${path}/${key}`, own, found);
    }
  } else found.push({ path, value, of });
  return found;
}

function sameness(published: unknown, fresh: unknown): Sameness {
  if (Object.is(published, fresh)) return "same";
  if (typeof published !== "number" || typeof fresh !== "number") return "different";
  const scale = Math.max(Math.abs(published), Math.abs(fresh));
  return Math.abs(published - fresh) <= ROUNDING * scale ? "within rounding" : "different";
}

/**
 * Every number, word and gap of an answer beside that of a fresh run.
 *
 * A number inside a quantity (value, ends of its interval) is told in units of that quantity's standard uncertainty.
 *
 * @param file the answer's file
 * @param published JSON value as published; `undefined` when there is none
 * @param fresh JSON value of the fresh run
 * @returns one entry for each value that stands in either
 */
export function compareAnswers(file: string, published: unknown, fresh: unknown): CheckedResult[] {
  const before = new Map(leaves(published ?? {}, "", null, []).map((one) => [one.path, one]));
  const now = new Map(leaves(fresh ?? {}, "", null, []).map((one) => [one.path, one]));
  const paths = [...new Set([...now.keys(), ...before.keys()])];
  return paths.map((path) => {
    const [left, right] = [before.get(path), now.get(path)];
    const of = right?.of ?? left?.of ?? null;
    const number = (one: Leaf | undefined) => typeof one?.value === "number" ? one.value : null;
    const [a, b] = [number(left), number(right)];
    return {
      file,
      path,
      published: a,
      fresh: b,
      standardUncertainty: of === null ? null : of.u,
      unit: of?.unit ?? "",
      sameness: left === undefined || right === undefined
        ? "different"
        : sameness(left.value, right.value),
      apart: a === null || b === null || of === null || of.u === 0 ? null : (a - b) / of.u,
    };
  });
}
