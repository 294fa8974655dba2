/**
 * The current that stands in speeds over ground: what the passes and a float tell of it.
 *
 * @module
 */
import type { Finding } from "../base/finding.ts";
import type { Session, TowPoint } from "../base/session.ts";
import type { TowCurrent } from "../base/tow-answer.ts";
import { conditionOf } from "../check/condition-of.ts";
import type { KnownBy } from "../fit/tow-series.ts";
import { studentInterval } from "../infer/mean-interval.ts";
import { currentFindings } from "./tow-current-findings.ts";
import { type GroundRow, joinedCurrent, passesTell } from "./tow-current-sources.ts";

/** A current along the course over one block's time. */
export interface BlockCurrent {
  readonly block: string | null;
  /** m/s at the centre, above zero with passes marked as `towards`; 0 where it is not known. */
  readonly value: number;
  readonly standardUncertainty: number;
  readonly knownBy: KnownBy | null;
  /** Place among the rows of tow.csv. */
  readonly centre: number;
  /** m/s a row. */
  readonly slope: number;
  readonly slopeUncertainty: number;
  readonly answer: TowCurrent;
}

/** How a pass stands to the current. */
export interface PassSign {
  readonly sign: 1 | -1 | 0;
  /** Rows from the centre of the block's current. */
  readonly time: number;
}

/** Currents of a session. */
export interface TowCurrents {
  readonly blocks: readonly BlockCurrent[];
  /** A row's sign and time; `null` for speeds through the water. */
  readonly passOf: (point: TowPoint, order: number) => PassSign | null;
  /** m/s through the water. */
  readonly waterSpeed: (point: TowPoint, order: number) => number | null;
  readonly findings: readonly Finding[];
}

/**
 * Which direction runs with the current, and which against it.
 *
 * @param session as read
 * @returns the word whose passes count as with it, and a sign for each word
 */
function directions(
  session: Session,
): { readonly towards: string | null; readonly signOf: (word: string | null) => 1 | -1 | 0 } {
  const plain = (word: string) => word.trim().toLowerCase();
  const words = [
    ...new Set(session.tow.flatMap((one) => one.direction === null ? [] : [plain(one.direction)])),
  ];
  const [one, other] = words.some((word) => word === "up" || word === "down")
    ? ["down", "up"]
    : words;
  return {
    towards: one ?? null,
    signOf: (word) => word === null ? 0 : plain(word) === one ? 1 : plain(word) === other ? -1 : 0,
  };
}

/**
 * Currents of a session's blocks, where speeds are over ground.
 *
 * Each pass is moved by its own current: the mean of passes both ways then holds none of it to first order whatever the
 * estimate is worth, and beyond 0.2 m/s, where the mean alone would be off by half the curvature of the drag times the current
 * squared, it still serves. Ground speeds tell a current only if the driver held the speed through the water. Where nobody says
 * so (`set_speed_over`), they are believed when both ways differ by more than chance; ways that read alike may mean still water
 * or a driver who held the ground speed, so that the current stays unknown, and 0.15 m/s to either side stays in the answer.
 *
 * @param session its tows reduced to one row a point
 * @returns currents, speeds through the water, and findings
 */
export function towCurrents(session: Session): TowCurrents {
  const { towards, signOf } = directions(session);
  const ground = session.tow.flatMap((point, order) =>
    point.speedOver === "ground" && point.leaveOut === null && point.speed !== null
      ? [{ point, order, sign: signOf(point.direction) }]
      : []
  );
  const names = [...new Set(ground.map((one) => one.point.block))];
  const findings: Finding[] = [];
  const blocks = names.map((block) => {
    const here = ground.filter((one) => one.point.block === block);
    const made = blockCurrent(session, { block, here, towards });
    findings.push(...made.findings);
    return made.current;
  });
  const of = (point: TowPoint) => blocks.find((one) => one.block === point.block);
  const passOf = (point: TowPoint, order: number): PassSign | null => {
    if (point.speedOver !== "ground") return null;
    return { sign: signOf(point.direction), time: order - (of(point)?.centre ?? order) };
  };
  return {
    blocks,
    passOf,
    waterSpeed(point, order) {
      const pass = passOf(point, order);
      const current = of(point);
      if (point.speed === null || pass === null || current === undefined) return point.speed;
      return point.speed - pass.sign * (current.value + current.slope * pass.time);
    },
    findings,
  };
}

interface BlockTask {
  readonly block: string | null;
  readonly here: readonly GroundRow[];
  readonly towards: string | null;
}

function blockCurrent(
  session: Session,
  { block, here, towards }: BlockTask,
): { readonly current: BlockCurrent; readonly findings: readonly Finding[] } {
  const byPasses = passesTell(here);
  const float = conditionOf(session, "current", block);
  const centre = (here[0]!.order + here.at(-1)!.order) / 2;
  const span = here.at(-1)!.order - here[0]!.order;
  const found = joinedCurrent(byPasses, float, centre);
  const { value, standardUncertainty, degreesOfFreedom, slope, slopeUncertainty, origin } = found;
  const interval = (size: number, u: number) =>
    studentInterval({ value: size, standardUncertainty: u, degreesOfFreedom }, { unit: "m/s" });
  const current: BlockCurrent = {
    block,
    value,
    standardUncertainty,
    knownBy: Number.isFinite(degreesOfFreedom)
      ? { origin: `passes of ${session.name} ${block ?? ""}`, degreesOfFreedom }
      : null,
    centre: found.centre,
    slope,
    slopeUncertainty,
    answer: {
      session: session.name,
      block,
      towards,
      speed: origin === null ? null : interval(value, standardUncertainty),
      change: slopeUncertainty > 0 ? interval(slope * span, slopeUncertainty * span) : null,
      origin,
      passes: byPasses?.passes ?? 0,
    },
  };
  const told = { current, here, passes: byPasses !== null, apart: found.apart };
  return { current, findings: currentFindings(told) };
}
