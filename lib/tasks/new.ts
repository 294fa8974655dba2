/** `task new NAME`: a session folder with tables to fill in, and a notebook of one's own; with `--from`, a write-up. */
import { Command } from "commander";
import { relative } from "node:path";
import { DataError } from "../base/errors.ts";
import { findRoot } from "../read/find-root.ts";
import { EXIT, runTask } from "./exit-codes.ts";
import { makeSession } from "./new-session.ts";
import { makeWriteUp } from "./new-write-up.ts";
import { sessionArgument } from "./session-argument.ts";

const command = new Command("new")
  .description(
    "Makes a session folder under data/ with tables to fill in, and a notebook for it. With --from: a notebook " +
      "that is the first draft of a write-up about sessions that hold data.",
  )
  .argument("<name>", "small letters, digits and hyphens, as lake-june")
  .option("--from <session...>", "sessions under data/, or their paths, to write about")
  .exitOverride();

await runTask(async () => {
  command.parse(Deno.args, { from: "user" });
  const root = findRoot();
  if (root === null) {
    throw new DataError("Cannot make a session: there is no deno.json here or above.");
  }
  const name = command.args[0]!;
  const { from } = command.opts<{ from?: string[] }>();
  if (from !== undefined) {
    const sessions = from.map((one) => sessionArgument(one, Deno.env.get("INIT_CWD")));
    const path = await makeWriteUp(root, name, sessions);
    console.log([
      `${
        relative(Deno.cwd(), path)
      } is a first draft: its numbers are right, its sentences are yours to rewrite.`,
      "Open it in any editor for notebooks, write what only you know, and then:",
      `      npx --yes deno@${Deno.version.deno} task report`,
    ].join("\n"));
    return EXIT.done;
  }
  const made = makeSession(root, name);
  console.log([
    `${
      relative(Deno.cwd(), made.folder)
    }/ holds the tables; GLOSSARY.md in there says what goes where.`,
    `${relative(Deno.cwd(), made.notebook)} is the notebook.`,
    "",
    "Next: open designs.csv and glides.csv in a spreadsheet and write your own rows over the examples.",
    `Then: npx --yes deno@${Deno.version.deno} task validate ${name}`,
    `      npx --yes deno@${Deno.version.deno} task answer glide ${name}`,
    `      npx --yes deno@${Deno.version.deno} task report`,
  ].join("\n"));
  return EXIT.done;
});
