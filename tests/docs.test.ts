import { describe, expect, it } from "vitest";
import { execFileSync } from "node:child_process";
import { fileURLToPath } from "node:url";

/** The runtime's own parser of documentation reads the sources, so nothing here guesses at the syntax. */
const root = new URL("../lib/", import.meta.url);

function* sources(folder: URL): Generator<string> {
  for (const entry of Deno.readDirSync(folder)) {
    const path = new URL(entry.name + (entry.isDirectory ? "/" : ""), folder);
    if (entry.isDirectory) yield* sources(path);
    else if (entry.name.endsWith(".ts")) yield fileURLToPath(path);
  }
}

/** What the parser tells; only the parts read here. */
interface Parameter {
  readonly kind: "identifier" | "assign" | "rest" | "object" | "array";
  readonly name?: string;
  readonly left?: Parameter;
  readonly arg?: Parameter;
}
interface Type {
  readonly repr?: string;
  readonly value?: { readonly typeParams?: readonly Type[]; readonly asserts?: boolean };
}
interface Declaration {
  readonly kind: string;
  readonly declarationKind: string;
  readonly location: { readonly filename: string; readonly line: number };
  readonly jsDoc?: { readonly doc?: string; readonly tags?: readonly Tag[] };
  readonly def: { readonly params: readonly Parameter[]; readonly returnType?: Type };
}
interface Tag {
  readonly kind: string;
  readonly name?: string;
}
interface Documentation {
  readonly nodes: Readonly<
    Record<
      string,
      { readonly symbols: readonly { name: string; declarations: readonly Declaration[] }[] }
    >
  >;
}

function documentation(files: readonly string[]): Documentation {
  const text = execFileSync(Deno.execPath(), ["doc", "--json", ...files], {
    encoding: "utf8",
    maxBuffer: 2 ** 28,
    stdio: ["ignore", "pipe", "ignore"],
  });
  return JSON.parse(text);
}

/** Name of a parameter; `null` for one that is taken apart in the signature. */
function nameOf(one: Parameter): string | null {
  if (one.kind === "assign") return nameOf(one.left!);
  if (one.kind === "rest") return nameOf(one.arg!);
  return one.kind === "identifier" ? one.name! : null;
}

function givesNothing(type: Type | undefined): boolean {
  if (type?.value?.asserts === true) return true;
  const inner = type?.repr === "Promise" ? type.value?.typeParams?.[0] : type;
  return inner?.repr === "void" || inner?.repr === "never";
}

/** Code of a formatted function, from its first line to the brace that closes it, without lines of comment. */
function codeFrom(lines: readonly string[], line: number): string {
  const rest = lines.slice(line - 1);
  const end = rest.findIndex((one) => /^\}\S*$/.test(one) && !one.endsWith("{"));
  return rest.slice(0, end + 1).filter((one) => !/^\s*(?:\/\/|\/?\*)/.test(one)).join("\n");
}

/** What the comment before a function does not say. Parts of what is taken apart may go by names of their own. */
function lacking(one: Declaration, code: string): string[] {
  const tags = one.jsDoc?.tags ?? [];
  const told = tags.filter((tag) => tag.kind === "param").map((tag) => tag.name!);
  const names = one.def.params.map(nameOf);
  const apart = names.filter((name) => name === null).length;
  const strangers = told.filter((name) => !names.includes(name));
  return [
    ...((one.jsDoc?.doc ?? "").trim() === "" ? ["a sentence"] : []),
    ...names.filter((name) => name !== null && !told.includes(name)).map((name) =>
      `@param ${name}`
    ),
    ...(strangers.length < apart ? ["@param of what is taken apart"] : []),
    ...(apart === 0 && strangers.length > 0
      ? [`a parameter for @param ${strangers.join(", ")}`]
      : []),
    ...(!givesNothing(one.def.returnType) && !tags.some((tag) => tag.kind === "return")
      ? ["@returns"]
      : []),
    ...(/\bthrow new /.test(code) && !tags.some((tag) => tag.kind === "throws") ? ["@throws"] : []),
  ];
}

const read = [...sources(root)];
const functions = Object.entries(documentation(read).nodes).flatMap(([url, { symbols }]) => {
  const lines = Deno.readTextFileSync(fileURLToPath(url)).split("\n");
  return symbols.flatMap(({ name, declarations }) =>
    declarations
      .filter((one) =>
        one.kind === "function" && one.declarationKind === "export" && one.location.filename === url
      )
      .map((one) => ({
        place: `${url.slice(root.href.length)} ${name}`,
        lack: lacking(one, codeFrom(lines, one.location.line)),
      }))
  );
});

describe("every function that a file gives to others", () => {
  it("is found", () => {
    expect(functions.length).toBeGreaterThan(900);
  });

  it("says what it means, what goes in, what comes out and what it refuses", () => {
    const poor = functions.filter(({ lack }) => lack.length > 0);
    expect(poor.map(({ place, lack }) => `${place} lacks ${lack.join(", ")}`)).toEqual([]);
  });
});
