/**
 * What instruments told, as other programs read it: raw windows and the current.
 *
 * @module
 */
import type { TowCurrent, TowWindow } from "../base/tow-answer.ts";
import { type Plain, quantityObject } from "./plain-answer.ts";

/**
 * A window with its keys in order.
 *
 * @param one from the answer
 * @returns plain data
 */
export function windowObject(one: TowWindow | null): Plain {
  return one === null ? null : {
    samples: one.samples,
    used: one.used,
    given: one.given,
    duration: one.duration,
    speedScatter: one.speedScatter,
    speedCorrelationTime: one.speedCorrelationTime,
    speedChange: one.speedChange,
    speedChangeUncertainty: one.speedChangeUncertainty,
    tensionScatter: one.tensionScatter,
    tensionCorrelationTime: one.tensionCorrelationTime,
  };
}

/**
 * A block's current with its keys in order.
 *
 * @param one from the answer
 * @returns plain data
 */
export function currentObject(one: TowCurrent): Plain {
  return {
    session: one.session,
    block: one.block,
    towards: one.towards,
    speed: quantityObject(one.speed),
    change: quantityObject(one.change),
    origin: one.origin,
    passes: one.passes,
  };
}
