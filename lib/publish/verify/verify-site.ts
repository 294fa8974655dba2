/**
 * Runs a published folder again and says whether it is what its own source gives.
 *
 * @module
 */
import { join } from "node:path";
import { sha256 } from "../checksum.ts";
import { CHECKSUMS, SITE_ZIP } from "../site.ts";
import { siteMakers } from "../site-makers.ts";
import type { Progress } from "../progress.ts";
import { SOURCE } from "../source-files.ts";
import { unzipFiles } from "../zip-files.ts";
import { checkChecksums } from "./checksums-check.ts";
import { compareAnswers } from "./compare-answers.ts";
import { compareFiles } from "./compare-files.ts";
import type { CheckedResult, CheckFinding } from "./finding-of-check.ts";
import { type FreshSite, freshSite } from "./fresh-site.ts";
import { type PublishedFolder, siteRecordIn, statedDeno } from "./published-folder.ts";
import type { Workshop } from "./workshop.ts";

/** What came of a check. */
export interface Verification {
  /** Everything that is not as a fresh run makes it; empty when all is the same. */
  readonly findings: readonly CheckFinding[];
  /** Every published result beside its fresh one. */
  readonly results: readonly CheckedResult[];
  /** What a reader should know though nothing is wrong: another Deno, another library. */
  readonly notes: readonly string[];
  readonly counts: {
    readonly files: number;
    readonly checksums: number;
    readonly notebooks: number;
    readonly figures: number;
    readonly tables: number;
  };
  /** One checksum that stands for the whole folder: that of its list of checksums. */
  readonly fingerprint: string;
}

/** What to check, and where. */
export interface VerifyRequest {
  readonly published: PublishedFolder;
  readonly workshop: Workshop;
  /** The folder of the project that checks. */
  readonly project: string;
  /** A fingerprint that was kept elsewhere, or its beginning; `null` for none. */
  readonly fingerprint: string | null;
  readonly signal: AbortSignal;
  readonly progress: Progress;
}

/** Notes on who checks whom. */
function notesOn({ published, project }: VerifyRequest): string[] {
  const { files } = published;
  const record = siteRecordIn(files);
  const notes: string[] = [];
  const deno = statedDeno(files);
  if (deno !== null && deno !== Deno.version.deno) {
    notes.push(`Published with Deno ${deno}, run again with Deno ${Deno.version.deno}.`);
  }
  if (record !== null && record.platform !== Deno.build.target) {
    notes.push(
      `Published on ${record.platform}, run again on ${Deno.build.target}: ` +
        "the last digits of computed numbers may differ.",
    );
  }
  const other = [...files.keys()].filter((file) => {
    if (!file.startsWith(`${SOURCE}/lib/`)) return false;
    try {
      const ours = Deno.readFileSync(join(project, file.slice(SOURCE.length + 1)));
      return sha256(ours) !== sha256(files.get(file)!);
    } catch {
      return true;
    }
  });
  if (other.length > 0) {
    const count = other.length === 1 ? "1 file differs" : `${other.length} files differ`;
    notes.push(
      `The published library is not the one that checks it: ${count}, such as ${
        other[0]
      }. Notebooks ran with the published one, pages were built with the one that checks.`,
    );
  }
  return notes;
}

/** The check of every file that a fresh run makes, and of every other file in the folder. */
function compareAll(
  published: PublishedFolder,
  fresh: FreshSite,
): { findings: CheckFinding[]; results: CheckedResult[] } {
  const findings: CheckFinding[] = [];
  const results: CheckedResult[] = [];
  const { files, slug } = published;
  const all = fresh.whole && slug === null;
  const owners = new Map(fresh.files.map((one) => [one.sha256, one.file]));
  const mine = fresh.files.filter(({ file }) =>
    all || fresh.pages.some((page) =>
      file === `${page}.html` || file.startsWith(`figures/${page}-`) ||
      file.startsWith(`tables/${page}-`) || file.startsWith(`answers/${page}-`)
    ) || file.startsWith(`${SOURCE}/`)
  );
  for (const { file, sha256: wanted } of mine) {
    const bytes = files.get(file);
    if (bytes === undefined) {
      // A folder that was unpacked from it need not hold it.
      if (file === SITE_ZIP) continue;
      if (all || !file.startsWith(`${SOURCE}/`)) {
        findings.push({ kind: "file", file, what: "is missing: a fresh run makes it" });
      }
      continue;
    }
    const answer = /^answers\/.*\.json$/.test(file);
    const same = sha256(bytes) === wanted;
    if (same && !answer) continue;
    const now = fresh.cache.kept(wanted)!;
    if (answer) {
      const json = parsed(bytes);
      if (json === undefined) {
        findings.push({ kind: "result", file, what: "can't be read as JSON" });
      }
      const compared = compareAnswers(file, json, parsed(now));
      results.push(...compared);
      const wrong = compared.filter((one) => one.sameness !== "same");
      if (!same && wrong.length === 0) {
        findings.push({ kind: "result", file, what: "has other bytes with the same results" });
      }
      findings.push(...wrong.map(resultFinding));
      continue;
    }
    const owner = owners.get(sha256(bytes));
    if (owner !== undefined) {
      findings.push({ kind: kindOf(file), file, what: `holds what belongs to ${owner}` });
      continue;
    }
    // Told by what they list.
    if (file === CHECKSUMS) continue;
    if (file === SITE_ZIP) {
      findings.push(...zipFindings(bytes, files));
      continue;
    }
    findings.push(...compareFiles(file, bytes, now));
  }
  if (all) {
    const made = new Set(fresh.files.map((one) => one.file));
    for (const file of files.keys()) {
      if (!made.has(file)) {
        findings.push({ kind: "file", file, what: "is no part of what a fresh run makes" });
      }
    }
  }
  return { findings, results };
}

/** What in the packed site is not what lies beside it. */
function zipFindings(bytes: Uint8Array, files: ReadonlyMap<string, Uint8Array>): CheckFinding[] {
  const tell = (what: string): CheckFinding => ({ kind: "file", file: SITE_ZIP, what });
  let inside: ReadonlyMap<string, Uint8Array>;
  try {
    inside = unzipFiles(bytes);
  } catch {
    return [tell("can't be unpacked")];
  }
  const names = new Set([...inside.keys(), ...files.keys()]);
  names.delete(SITE_ZIP);
  const sum = (one: Uint8Array | undefined) => one === undefined ? "" : sha256(one);
  const other = [...names].filter((name) => sum(inside.get(name)) !== sum(files.get(name)));
  if (other.length === 0) return [tell("is packed in another way than a fresh run packs it")];
  return other.map((name) => tell(`holds another ${name} than the folder`));
}

function kindOf(file: string): CheckFinding["kind"] {
  return file.startsWith("figures/") ? "figure" : file.startsWith("tables/") ? "table" : "file";
}

function parsed(bytes: Uint8Array): unknown {
  try {
    return JSON.parse(new TextDecoder().decode(bytes));
  } catch {
    return undefined;
  }
}

function resultFinding(one: CheckedResult): CheckFinding {
  const apart = one.apart === null
    ? ""
    : `, ${Math.abs(one.apart).toPrecision(2)} of its own standard uncertainties apart`;
  const what = one.published === null || one.fresh === null
    ? `${one.path} is not what a fresh run gives`
    : `${one.path}: published ${one.published}, a fresh run gives ${one.fresh}${apart}` +
      (one.sameness === "within rounding" ? " (within rounding)" : "");
  return { kind: "result", file: one.file, what };
}

/**
 * Checks a published folder.
 *
 * @param request the folder, and where to run it
 * @returns everything that was compared and everything that differs
 */
export async function verifySite(request: VerifyRequest): Promise<Verification> {
  const { published, workshop } = request;
  const { files, slug } = published;
  const checksums = checkChecksums(files);
  const count = (start: string) =>
    [...files.keys()].filter((file) => file.startsWith(start)).length;
  const fingerprint = sha256(files.get(CHECKSUMS) ?? new Uint8Array());
  const kept: CheckFinding[] = [];
  if (request.fingerprint !== null && !fingerprint.startsWith(request.fingerprint)) {
    const what = `gives the fingerprint ${fingerprint}, but ${request.fingerprint} was kept`;
    kept.push({ kind: "checksum", file: CHECKSUMS, what });
  }
  let fresh: FreshSite | null = null;
  const give = (
    findings: readonly CheckFinding[],
    results: readonly CheckedResult[],
    notebooks: number,
  ): Verification => ({
    findings: [...kept, ...checksums.findings, ...findings],
    results,
    notes: [...notesOn(request), ...(fresh?.notes ?? [])],
    counts: {
      files: files.size,
      checksums: checksums.right,
      notebooks,
      figures: count("figures/"),
      tables: count("tables/"),
    },
    fingerprint,
  });
  const laid = await workshop.lay(files);
  if (!laid.ok) {
    return give([{ kind: "run", file: `${SOURCE}/deno.lock`, what: laid.reason }], [], 0);
  }
  const record = siteRecordIn(files);
  try {
    fresh = await freshSite({
      root: workshop.root,
      makers: siteMakers(workshop.root),
      deno: statedDeno(files) ?? Deno.version.deno,
      origin: {
        commit: record?.commit ?? null,
        changedSinceCommit: record?.changedSinceCommit ?? [],
        platform: record?.platform ?? Deno.build.target,
      },
      slug,
      signal: request.signal,
      progress: request.progress,
    });
  } catch (error) {
    if (!(error instanceof Error) || error.name === "StoppedError") throw error;
    return give([{ kind: "run", file: SOURCE, what: error.message }], [], 0);
  }
  const { findings, results } = compareAll(published, fresh);
  return give([...fresh.findings, ...findings], results, fresh.pages.length);
}
