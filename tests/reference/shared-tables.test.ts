import { parse } from "csv-parse/sync";
import { describe, expect, it } from "vitest";

const folder = new URL("../../shared/", import.meta.url);

interface Resource {
  readonly name: string;
  readonly path: string;
  readonly description?: string;
  readonly sources?: readonly { readonly title: string }[];
  readonly schema: {
    readonly fields: readonly { readonly name: string; readonly description?: string }[];
  };
}

const resources: Resource[] =
  JSON.parse(Deno.readTextFileSync(new URL("datapackage.json", folder))).resources;
const tables = [...Deno.readDirSync(folder)].map((entry) => entry.name)
  .filter((name) => name.endsWith(".csv")).sort();

describe("the descriptor of the reference tables", () => {
  it("lists every table", () => {
    expect(resources.map((one) => one.path).sort()).toEqual(tables);
  });

  it.each(resources.map((one) => [one.path, one] as const))(
    "describes %s: its columns in order, its source as a whole or row by row",
    (path, resource) => {
      const [header, ...rows]: string[][] = parse(
        Deno.readTextFileSync(new URL(path, folder)),
      );
      expect(resource.schema.fields.map((field) => field.name)).toEqual(header);
      expect(rows.length).toBeGreaterThan(0);
      expect(resource.schema.fields.filter((field) => !field.description)).toEqual([]);
      expect(resource.sources?.[0]?.title !== undefined || header!.includes("source")).toBe(true);
    },
  );
});
