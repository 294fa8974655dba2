/**
 * The page and the data about what changed since an earlier state, where the project keeps one.
 *
 * @module
 */
import type { FileChecksum } from "../base/session.ts";
import { moduleInputs, type ProjectState } from "./cache-key.ts";
import type { Cache } from "./cache.ts";
import { publicationSha256 } from "./publication.ts";
import type { Makers } from "./report-request.ts";
import { changesBetween } from "./since/changes.ts";
import { readSince } from "./since/since-file.ts";
import { blobName, stateOf } from "./since/site-state.ts";
import { sha256 } from "./checksum.ts";
import { SOURCE, sourceFiles, type SourceParts } from "./source-files.ts";

/** Name of the cache's record about the page. */
export const CHANGES_RECORD = "changes-page";

/**
 * The two files, `changes.html` and `changes.json`, their bytes kept in the cache; none when there is nothing to compare
 * with.
 *
 * @param makers give the page's builder
 * @param sources what is published now
 * @param project as it stands
 * @param cache takes the bytes
 * @returns names with checksums
 */
export async function makeChanges(
  makers: Pick<Makers, "builder" | "buildChanges">,
  sources: SourceParts,
  project: ProjectState,
  cache: Cache,
): Promise<FileChecksum[]> {
  const before = readSince(project.root);
  if (before === null) return [];
  const files = sourceFiles(sources)
    .map(({ file, bytes }) => [file.slice(SOURCE.length + 1), blobName(bytes)] as const);
  const now = stateOf({
    from: "now",
    commit: false,
    notebooks: new Map(sources.notebooks.map(({ file, text }) => [file.file, text])),
    files: new Map(files),
    settings: Deno.readTextFileSync(`${project.root}/deno.json`),
    deno: project.deno,
  });
  const changes = changesBetween(before, now);
  const json = new TextEncoder().encode(`${JSON.stringify(changes, null, 2)}\n`);
  const data = { file: "changes.json", sha256: cache.keep(json) };
  const { inputs } = moduleInputs(project, { entries: [makers.builder] });
  const of = sha256(
    JSON.stringify([data.sha256, publicationSha256(project.publication), inputs, project.common]),
  );
  const kept = cache.read<{ of: string; sha256: string }>(CHANGES_RECORD);
  if (kept !== null && kept.of === of && cache.has(kept.sha256)) {
    return [{ file: "changes.html", sha256: kept.sha256 }, data];
  }
  const html = await (await makers.buildChanges())(changes, project.publication);
  const page = { file: "changes.html", sha256: cache.keep(new TextEncoder().encode(html)) };
  cache.write(CHANGES_RECORD, { of, sha256: page.sha256 });
  return [page, data];
}
