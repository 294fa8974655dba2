/** `task validate [SESSION]`: every problem in the data at once, and which questions can be answered with it. */
import { Command } from "commander";
import { CONTRACT } from "../base/answers.ts";
import { DataError } from "../base/errors.ts";
import { hasErrors } from "../base/finding.ts";
import { answerable } from "../check/answerable.ts";
import { checkSession } from "../check/check-session.ts";
import { describeFolder } from "../read/describe-folder.ts";
import { openSession, sessionFolder, sessionNames } from "../read/open-session.ts";
import { EXIT, runTask } from "./exit-codes.ts";
import { sessionArgument } from "./session-argument.ts";
import { validationText } from "./validation-text.ts";

interface Flags {
  readonly json?: true;
  readonly describe?: true;
}

const command = new Command("validate")
  .description(
    "Looks through a session folder and tells every problem in it, and what can be answered.",
  )
  .argument("[session]", "a name under data/ or any path; all sessions under data/ when left out")
  .option("--json", "one JSON object on standard output, nothing else")
  .option("--describe", "first write datapackage.json anew from the tables as they are")
  .exitOverride();

async function validate(name: string | undefined, flags: Flags): Promise<number> {
  const names = name === undefined
    ? sessionNames()
    : [sessionArgument(name, Deno.env.get("INIT_CWD"))];
  if (names.length === 0) {
    throw new DataError(
      "There is no session under data/ yet. Make one: npx --yes deno@2.9.6 task new my-session",
    );
  }
  const results = [];
  for (const one of names) {
    if (flags.describe) await describeFolder(sessionFolder(one));
    const session = await openSession(one);
    const findings = [...session.findings, ...checkSession(session)];
    results.push({ session, findings, questions: answerable(session) });
  }
  if (flags.json) {
    const sessions = results.map(({ session, findings, questions }) => ({
      session: session.name,
      findings,
      questions,
    }));
    console.log(JSON.stringify({ contract: CONTRACT, sessions }, null, 2));
  } else {
    const texts = results.map((one) => validationText(one.session, one.findings, one.questions));
    console.log(texts.join("\n").trimEnd());
  }
  return results.some((one) => hasErrors(one.findings)) ? EXIT.fault : EXIT.done;
}

await runTask(async () => {
  command.parse(Deno.args, { from: "user" });
  return await validate(command.args[0], command.opts<Flags>());
});
