/**
 * What changed between two states of a project: numbers that moved, verdicts that turned, and what they rest on.
 *
 * Nothing is run again to find a cause: the entries that differ are named, and the reader judges.
 *
 * @module
 */
import type { Quantity } from "../../base/quantity.ts";
import { decimalsOfUncertainty, formatNumber, formatQuantity } from "../../base/rounding.ts";
import type { SiteState } from "./site-state.ts";

/** A result that is not what it was. */
export interface MovedNumber {
  readonly notebook: string;
  /** Name of the answer and place in it, such as `glide/comparisons[birch]/ratio`. */
  readonly path: string;
  /** With unit and rounded by its uncertainty; `null` when it was not there. */
  readonly before: string | null;
  readonly now: string | null;
  /** How far it moved, in its own earlier standard uncertainties; `null` where a side is missing or has none. */
  readonly apart: number | null;
}

/** A verdict that turned, or came or went. */
export interface TurnedVerdict {
  readonly notebook: string;
  readonly path: string;
  readonly before: string | null;
  readonly now: string | null;
}

/** What a notebook's results rest on and what of it differs. */
export interface Causes {
  readonly data: readonly string[];
  readonly library: readonly string[];
  /** Notebooks whose code cells differ. */
  readonly code: readonly string[];
  /** Packages, Deno and the lock. */
  readonly runtime: readonly string[];
}

/** Everything that changed. */
export interface Changes {
  readonly since: string;
  readonly numbers: readonly MovedNumber[];
  readonly verdicts: readonly TurnedVerdict[];
  readonly causes: Causes;
  /** Results that are what they were. */
  readonly unmoved: number;
}

/** Relative difference below which only an engine's last digits differ. */
const ROUNDING = 1e-9;

const near = (a: number | null, b: number | null) =>
  a === b || (a !== null && b !== null &&
    Math.abs(a - b) <= ROUNDING * Math.max(Math.abs(a), Math.abs(b)));

/** Names of files in one group that differ, in words. */
function differing(
  before: Readonly<Record<string, string>>,
  now: Readonly<Record<string, string>>,
): string[] {
  const names = [...new Set([...Object.keys(before), ...Object.keys(now)])].sort();
  return names.flatMap((name) => {
    if (before[name] === now[name]) return [];
    if (before[name] === undefined) return [`${name} is new`];
    return [now[name] === undefined ? `${name} is gone` : `${name} changed`];
  });
}

function only(files: Readonly<Record<string, string>>, start: RegExp): Record<string, string> {
  return Object.fromEntries(Object.entries(files).filter(([file]) => start.test(file)));
}

function causesOf(before: SiteState, now: SiteState): Causes {
  const group = (start: RegExp) => differing(only(before.files, start), only(now.files, start));
  // A commit also holds sessions that no page speaks of.
  const published = (line: string) => !(before.commit && line.endsWith(" is gone"));
  const versions = Object.keys({ ...before.versions, ...now.versions }).sort().flatMap((name) => {
    const [old, fresh] = [before.versions[name], now.versions[name]];
    // A commit does not say which Deno ran it.
    if (old === fresh || (name === "Deno" && old === undefined)) return [];
    return [`${name} ${old ?? "(none)"} to ${fresh ?? "(none)"}`];
  });
  return {
    data: group(/^(?:data|shared)\/.*(?<!\.ts)$/).filter(published),
    library: group(/^lib\//),
    code: differing(before.code, now.code),
    runtime: [...versions, ...group(/^deno\.lock$/)],
  };
}

/**
 * Compares two states.
 *
 * @param before the earlier one
 * @param now the later one
 * @returns numbers by how far they moved, furthest first
 */
export function changesBetween(before: SiteState, now: SiteState): Changes {
  const numbers: MovedNumber[] = [];
  const verdicts: TurnedVerdict[] = [];
  let unmoved = 0;
  const notebooks = [...Object.keys(before.results), ...Object.keys(now.results)];
  for (const notebook of [...new Set(notebooks)].sort()) {
    const [old, fresh] = [before.results[notebook] ?? {}, now.results[notebook] ?? {}];
    for (const path of new Set([...Object.keys(old), ...Object.keys(fresh)])) {
      const [a, b] = [old[path], fresh[path]];
      if (a && b && near(a.value, b.value) && near(a.standardUncertainty, b.standardUncertainty)) {
        unmoved++;
        continue;
      }
      const u = a?.standardUncertainty ?? null;
      numbers.push({
        notebook,
        path,
        before: a === undefined ? null : written(a),
        now: b === undefined ? null : written(b),
        apart: a === undefined || b === undefined || u === null || u === 0
          ? null
          : Number(((b.value - a.value) / u).toPrecision(6)),
      });
    }
    const [was, is] = [before.verdicts[notebook] ?? {}, now.verdicts[notebook] ?? {}];
    for (const path of new Set([...Object.keys(was), ...Object.keys(is)])) {
      const [a, b] = [was[path] ?? null, is[path] ?? null];
      if (a !== b) verdicts.push({ notebook, path, before: a, now: b });
    }
  }
  const size = (one: MovedNumber) => one.apart === null ? -1 : Math.abs(one.apart);
  numbers.sort((a, b) => size(b) - size(a) || (a.path < b.path ? -1 : a.path > b.path ? 1 : 0));
  return { since: before.from, numbers, verdicts, causes: causesOf(before, now), unmoved };
}

/** A result with its standard uncertainty and unit. */
function written(quantity: Quantity): string {
  const { standardUncertainty: u, unit } = quantity;
  const value = formatQuantity(quantity, { unit: false });
  const spread = u === null || u <= 0 ? "" : ` ± ${formatNumber(u, decimalsOfUncertainty(u))}`;
  return `${value}${spread}${unit === "1" ? "" : ` ${unit}`}`;
}
