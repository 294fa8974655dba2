/**
 * Tampers with a published folder in many ways and has each result checked.
 *
 * One fresh run serves all: what it gave is kept, and a notebook runs again only where the tampering changed what it rests
 * on.
 *
 * @module
 */
import { join } from "node:path";
import { seededRandom } from "../../numeric/random.ts";
import { SILENT } from "../../publish/progress.ts";
import { SITE_ZIP } from "../../publish/site.ts";
import { type Verification, verifySite } from "../../publish/verify/verify-site.ts";
import type { Workshop } from "../../publish/verify/workshop.ts";
import type { Change, Files } from "./change.ts";
import { TAMPERINGS } from "./kinds.ts";
import type { TamperKind } from "./ways.ts";
import { changed, recomputed } from "./recompute.ts";

/** What became of one try. */
export interface TryResult {
  readonly kind: TamperKind;
  readonly checksums: "left" | "made anew";
  readonly words: string;
  /** `named`: the very file is named; `found`: what follows from it is; `noted`: told, though not as a difference. */
  readonly outcome: "named" | "found" | "noted" | "missed";
  /** The first thing that was told. */
  readonly told: string;
}

/** Where the suite works. */
export interface SuiteOptions {
  readonly files: Files;
  readonly workshop: Workshop;
  /** The folder of the project that checks. */
  readonly project: string;
  /** Share of the tries to make, for a quick look. */
  readonly share: number;
  readonly onTry: (result: TryResult) => void;
}

/** Draws until a way of tampering finds something to change. */
function drawChange(kind: TamperKind, files: Files, nth: number): Change {
  const random = seededRandom(`tampering: ${kind.name}, ${nth}`);
  for (let draw = 0; draw < 200; draw++) {
    const change = kind.tamper(files, random);
    if (change !== null) return change;
  }
  throw new Error(`Cannot tamper by "${kind.name}": nothing in the folder lends itself to it`);
}

function outcomeOf(
  change: Change,
  check: Verification,
  before: Verification,
): Pick<TryResult, "outcome" | "told"> {
  const files = [...change.files.keys()];
  const naming = check.findings.find((one) =>
    files.includes(one.file) || files.some((file) => one.what.includes(file))
  );
  if (naming !== undefined) return { outcome: "named", told: `${naming.file}: ${naming.what}` };
  const first = check.findings[0];
  if (first !== undefined) return { outcome: "found", told: `${first.file}: ${first.what}` };
  const note = check.notes.find((one) => !before.notes.includes(one));
  if (note !== undefined) return { outcome: "noted", told: note };
  return { outcome: "missed", told: "" };
}

/**
 * Runs the suite.
 *
 * @param options where
 * @returns every try in order
 * @throws Error when the folder itself is not the same as a fresh run, or when a change changes nothing
 */
export async function runSuite(options: SuiteOptions): Promise<TryResult[]> {
  const { workshop, project } = options;
  const files = new Map(options.files);
  // A folder that was unpacked from it need not hold it; packing it for each try would take most of the time.
  files.delete(SITE_ZIP);
  const verify = async (now: Files) =>
    await verifySite({
      published: { files: now, slug: null },
      workshop,
      project,
      fingerprint: null,
      signal: new AbortController().signal,
      progress: SILENT,
    });
  const fresh = await verify(files);
  if (fresh.findings.length > 0) {
    const { file, what } = fresh.findings[0]!;
    throw new Error(`Cannot tamper with a folder that already differs: ${file}: ${what}`);
  }
  const records = cacheRecords(workshop.root);
  const results: TryResult[] = [];
  for (const kind of TAMPERINGS) {
    const tries = Math.max(2, Math.round(kind.tries * options.share));
    for (let nth = 0; nth < tries; nth++) {
      for (const [path, text] of records) Deno.writeTextFileSync(path, text);
      const anew = nth % 2 === 1;
      const change = drawChange(kind, files, nth);
      const check = await verify(anew ? recomputed(files, change) : changed(files, change));
      const result: TryResult = {
        kind,
        checksums: anew ? "made anew" : "left",
        words: change.words,
        ...outcomeOf(change, check, fresh),
      };
      results.push(result);
      options.onTry(result);
    }
  }
  return results;
}

/** What the fresh run kept, so that each try begins from it. */
function cacheRecords(root: string): Map<string, string> {
  const folder = join(root, ".site", "cache");
  const names = [...Deno.readDirSync(folder)].filter((entry) => entry.isFile);
  return new Map(names.map(({ name }) => {
    const path = join(folder, name);
    return [path, Deno.readTextFileSync(path)];
  }));
}
