/** `task answer QUESTION SESSION...`: one question, answered at the command line. */
import { Command } from "commander";
import { UsageError } from "../base/errors.ts";
import { excerpt } from "../base/printable.ts";
import { answerGlide, type GlideFlags } from "./answer-glide.ts";
import { answerTow } from "./answer-tow.ts";
import { runTask } from "./exit-codes.ts";
import { sessionArgument } from "./session-argument.ts";

/** Questions that this version can't answer yet. */
const LATER = ["takeoff", "next", "balance", "hold"];

const command = new Command("answer")
  .description("Answers one question from one or more session folders.")
  .argument(
    "<question>",
    "glide: which design glides further from the same launch? tow: how much drag has each?",
  )
  .argument("<session...>", "names under data/, or any paths")
  .option(
    "--baseline <design>",
    "design to compare against; when left out, the first of designs.csv",
  )
  .option(
    "--candidate <design>",
    "design to compare, may be given again; when left out, all others",
    (name: string, before: readonly string[] | undefined) => [...before ?? [], name],
  )
  .option("--launch-speed <speed>", "common launch, in m/s or with a unit, as 14km/h")
  .option("--drop <height>", "height used, in m or with a unit, as 20cm")
  .option("--mass <mass>", "all that flies, in kg or with a unit")
  .option("--json", "one JSON object on standard output, nothing else")
  .exitOverride();

await runTask(async () => {
  command.parse(Deno.args, { from: "user" });
  const [question = "", ...typed] = command.args;
  if (LATER.includes(question)) {
    throw new UsageError(`Cannot answer "${question}" yet: so far there are glide and tow.`);
  }
  if (question !== "glide" && question !== "tow") {
    throw new UsageError(`Cannot answer "${excerpt(question)}": so far there are glide and tow.`);
  }
  const from = Deno.env.get("INIT_CWD");
  const sessions = typed.map((one) => sessionArgument(one, from));
  const answer = question === "glide" ? answerGlide : answerTow;
  const { text, code } = await answer(sessions, command.opts<GlideFlags>());
  console.log(text.trimEnd());
  return code;
});
