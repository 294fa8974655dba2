/** `task answer QUESTION SESSION...`: one question, answered at the command line. */
import { Command } from "commander";
import { UsageError } from "../base/errors.ts";
import { excerpt } from "../base/printable.ts";
import { answerGlide, type GlideFlags } from "./answer-glide.ts";
import { answerTakeoff, type TakeoffFlags } from "./answer-takeoff.ts";
import { answerTow } from "./answer-tow.ts";
import { runTask } from "./exit-codes.ts";
import { sessionArgument } from "./session-argument.ts";

/** Questions that this version can't answer yet. */
const LATER = ["next", "balance", "hold"];

/** Options that belong to one question or two, by their names in the program. */
const BELONGS: Readonly<Record<string, readonly string[]>> = {
  baseline: ["glide", "tow"],
  candidate: ["glide", "tow"],
  launchSpeed: ["glide"],
  drop: ["glide"],
  mass: ["glide", "takeoff"],
  design: ["takeoff"],
  depth: ["takeoff"],
  altitude: ["takeoff"],
  lineAngle: ["takeoff"],
  pull: ["takeoff"],
  power: ["takeoff"],
  robust: ["tow"],
  draws: ["tow"],
};

const command = new Command("answer")
  .description("Answers one question from one or more session folders.")
  .argument(
    "<question>",
    "glide: which design glides further from the same launch? tow: how much drag has each? " +
      "takeoff: from which speed does each carry me?",
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
  .option(
    "--design <design>",
    "takeoff: only this design, may be given again",
    (name: string, before: readonly string[] | undefined) => [...before ?? [], name],
  )
  .option("--depth <depth>", "takeoff: running depth of the wing, in m or with a unit")
  .option("--altitude <height>", "takeoff: height above the sea of the same wing in air, in m")
  .option(
    "--line-angle <angle>",
    "takeoff: of the tow line above the horizontal, in degrees; level when left out",
  )
  .option("--pull <force>", "takeoff: what the tow can give, in N; tells the speeds that it holds")
  .option("--power <power>", "takeoff: in W or with a unit, instead of --pull")
  .option("--robust", "tow: also the view in which readings far off the law count for little")
  .option(
    "--draws <count>",
    "tow: also the uncertainty by so many draws of every input, 100 or more",
  )
  .option("--json", "one JSON object on standard output, nothing else")
  .exitOverride();

await runTask(async () => {
  command.parse(Deno.args, { from: "user" });
  const [question = "", ...typed] = command.args;
  const there = "so far there are glide, tow and takeoff.";
  if (LATER.includes(question)) {
    throw new UsageError(`Cannot answer "${question}" yet: ${there}`);
  }
  if (!["glide", "tow", "takeoff"].includes(question)) {
    throw new UsageError(`Cannot answer "${excerpt(question)}": ${there}`);
  }
  const flags = command.opts<GlideFlags & TakeoffFlags>();
  for (const [name, questions] of Object.entries(BELONGS)) {
    if (Object.hasOwn(flags, name) && !questions.includes(question)) {
      const typedName = name.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);
      throw new UsageError(
        `Cannot use --${typedName} with ${question}: it belongs to ${questions.join(" and ")}.`,
      );
    }
  }
  const from = Deno.env.get("INIT_CWD");
  const sessions = typed.map((one) => sessionArgument(one, from));
  const answer = {
    glide: answerGlide,
    tow: answerTow,
    takeoff: answerTakeoff,
  }[question as "glide" | "tow" | "takeoff"];
  const { text, code } = await answer(sessions, flags);
  console.log(text.trimEnd());
  return code;
});
