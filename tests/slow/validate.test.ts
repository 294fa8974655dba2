import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { parseDescriptor } from "lakeproof/read/descriptor-schema.ts";
import { FILES, GLIDES_CSV } from "../read/invented-session.ts";

const task = fileURLToPath(new URL("../../lib/tasks/validate.ts", import.meta.url));

let folder = "";
beforeEach(() => {
  folder = join(mkdtempSync(join(tmpdir(), "lakeproof-")), "lake");
  mkdirSync(folder);
  for (const [file, text] of Object.entries(FILES)) writeFileSync(join(folder, file), text);
});
afterEach(() => rmSync(join(folder, ".."), { recursive: true }));

async function validate(...args: string[]) {
  const { code, stdout, stderr } = await new Deno.Command(Deno.execPath(), {
    args: ["run", "-A", task, ...args],
    stdin: "null",
    env: { NO_COLOR: "1" },
  }).output();
  const text = (bytes: Uint8Array) => new TextDecoder().decode(bytes);
  return { code, out: text(stdout), err: text(stderr) };
}

describe("task validate", () => {
  it("ends with 0 for a good folder and says what can be answered", async () => {
    const { code, out } = await validate(folder);
    expect(code).toBe(0);
    expect(out).toContain("0 errors");
    expect(out).toMatch(/glide\s+yes/);
    expect(out).toMatch(/tow\s+not yet[\s\S]*needs readings in tow\.csv/);
  });

  it("ends with 1 for a fault and tells it by file, row, column and what is wanted", async () => {
    writeFileSync(join(folder, "glides.csv"), GLIDES_CSV.replace("31.5", "-31.5"));
    const { code, out } = await validate(folder);
    expect(code).toBe(1);
    expect(out).toMatch(/glides\.csv\n {2}ERROR {2}row 2, distance: -31\.5 m can't be/);
    expect(out).toContain("Did you mean 31.5, without the minus?");
  });

  it("tells a long series of one fault once, with the rows", async () => {
    const rows = Array.from({ length: 40 }, (_, i) => `${i},alder,fast${i % 2},30`);
    writeFileSync(
      join(folder, "glides.csv"),
      `run,design,launch_speed,distance\n${rows.join("\n")}\n`,
    );
    const { out } = await validate(folder);
    expect(out).toContain("and 38 more like these: rows 4 to 41.");
    expect(out).toContain("Not used: rows 2 to 41.");
  });

  it("prints one JSON object and nothing else with --json", async () => {
    const { code, out, err } = await validate(folder, "--json");
    expect(code).toBe(0);
    expect(err).toBe("");
    const json = JSON.parse(out) as { contract: number; sessions: { questions: unknown[] }[] };
    expect(json.contract).toBe(1);
    expect(json.sessions[0]!.questions).toHaveLength(3);
  });

  it("ends with 2 for wrong usage and 1 for a folder that is not there", async () => {
    expect((await validate("--colour")).code).toBe(2);
    expect((await validate("a", "b")).code).toBe(2);
    const missing = await validate(join(folder, "no"));
    expect(missing.code).toBe(1);
    expect(missing.err).toContain("there is no such folder");
  });

  it("never hands a control character of the data to the terminal", async () => {
    const evil = GLIDES_CSV.replace(
      "3,2031-06-14,mira-sat,alder",
      '"\u001b[31m3",,,"al\u001b]0;x\u0007der"',
    );
    writeFileSync(join(folder, "glides.csv"), evil);
    const { out, err } = await validate(folder);
    // deno-lint-ignore no-control-regex
    expect(out + err).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f]/);
    expect(out).toContain("There is no design");
  });

  it("writes the descriptor anew with --describe and keeps what is not ours", async () => {
    const path = join(folder, "datapackage.json");
    writeFileSync(
      path,
      JSON.stringify({
        title: "An evening",
        licenses: [{ name: "CC0-1.0" }],
        resources: [{
          name: "designs",
          path: "designs.csv",
          schema: { fields: [{ name: "span", unit: "cm" }] },
        }],
      }),
    );
    writeFileSync(
      join(folder, "designs.csv"),
      FILES["designs.csv"]!.replace("1.2,", "120,").replace("1.25,", "125,"),
    );
    expect((await validate(folder, "--describe")).code).toBe(0);
    const text = readFileSync(path, "utf8");
    const parsed = parseDescriptor(text);
    expect(parsed).toMatchObject({ ok: true, descriptor: { title: "An evening", contract: 1 } });
    expect(text).toContain("CC0-1.0");
    expect(text).toMatch(/"name": "span",[\s\S]{0,160}"unit": "cm"/);
  });
});
