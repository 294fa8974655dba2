/**
 * What the generators of the demo sessions share: the form of the truth file, and writing or checking what they made.
 *
 * @module
 */

/**
 * JSON with one object a line inside its lists of objects.
 *
 * @param value plain data
 * @returns text, ended by a line feed
 */
export function linesOf(value: object): string {
  const entries = Object.entries(value).map(([name, part]) => {
    const long = Array.isArray(part) && part.some((one) => !Array.isArray(one));
    const text = long
      ? `[\n${part.map((one: unknown) => `    ${JSON.stringify(one)}`).join(",\n")}\n  ]`
      : JSON.stringify(part);
    return `  ${JSON.stringify(name)}: ${text}`;
  });
  return `{\n${entries.join(",\n")}\n}\n`;
}

/**
 * A session's files and its truth, by path below `data/`.
 *
 * @param folder name of the session
 * @param files text by name
 * @param truth plain data
 * @returns text by path
 */
export function withTruth(
  folder: string,
  files: ReadonlyMap<string, string>,
  truth: object,
): Map<string, string> {
  const all = new Map<string, string>();
  for (const [name, text] of files) all.set(`${folder}/${name}`, text);
  all.set(`${folder}-truth.json`, linesOf(truth));
  return all;
}

/**
 * Writes the files that differ from what was generated, or with `--check` only names them and ends with exit code 1.
 *
 * @param files text by path below `data/`
 * @param args of the command line
 */
export async function writeDemo(
  files: ReadonlyMap<string, string>,
  args: readonly string[],
): Promise<void> {
  const check = args.includes("--check");
  const differing: string[] = [];
  for (const [path, text] of files) {
    const url = new URL(path, import.meta.url);
    const before = await Deno.readTextFile(url).catch(() => null);
    if (before === text) continue;
    differing.push(path);
    if (check) continue;
    await Deno.mkdir(new URL(".", url), { recursive: true });
    await Deno.writeTextFile(url, text);
  }
  const verb = check ? "differs" : "written";
  console.log(differing.length === 0 ? "nothing differs" : `${verb}: ${differing.join(", ")}`);
  if (check && differing.length > 0) Deno.exit(1);
}
