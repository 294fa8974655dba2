/**
 * What traces say of a design, and whether a tow agrees, as other programs read it.
 *
 * @module
 */
import type { TowLaw } from "../base/tow-answer.ts";
import type { TowAgreement, TowFromTraces } from "../base/tow-traces.ts";
import { type Plain, quantityObject } from "./plain-answer.ts";

/**
 * A law with its keys in order.
 *
 * @param law of one design, coefficients in N
 * @returns plain JSON
 */
export function lawObject(law: TowLaw): Plain {
  return {
    a: law.a,
    d: law.d,
    e: law.e,
    K: law.K,
    covariance: law.covariance,
    from: law.from,
    to: law.to,
    lift: law.lift,
  };
}

/**
 * The law of the glides with its keys in order; `null` stays.
 *
 * @param one law that the speed traces of the same design gave
 * @returns plain JSON
 */
export function fromTracesObject(one: TowFromTraces | null): Plain {
  if (one === null) return null;
  return {
    session: one.session,
    law: lawObject(one.law),
    bestLiftToDrag: quantityObject(one.bestLiftToDrag),
    speedOfBestLiftToDrag: quantityObject(one.speedOfBestLiftToDrag),
    dragAt: one.dragAt.map(({ speed, drag }) => ({ speed, drag: quantityObject(drag) })),
    traces: one.traces.map((trace) => ({
      run: trace.run,
      file: trace.file,
      used: trace.used,
      reason: trace.reason,
      samples: trace.samples,
      launchSpeed: trace.launchSpeed,
      offset: trace.offset,
    })),
    noise: one.noise,
    noiseMemory: one.noiseMemory,
    uncertaintyShares: one.uncertaintyShares.map(({ source, share }) => ({ source, share })),
  };
}

/**
 * One line of agreement with its keys in order.
 *
 * @param one quantity by tow and by glide, side by side
 * @returns plain JSON
 */
export function agreementObject(one: TowAgreement): Plain {
  return {
    design: one.design,
    session: one.session,
    kind: one.kind,
    glideSession: one.glideSession,
    quantity: one.quantity,
    speed: one.speed,
    tow: quantityObject(one.tow),
    traces: quantityObject(one.traces),
    en: one.en,
    combined: quantityObject(one.combined),
  };
}
