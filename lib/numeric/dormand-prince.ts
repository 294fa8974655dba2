/**
 * One step of the pair of orders 5 and 4 of Dormand and Prince, and the interpolation within it.
 *
 * Source: Dormand and Prince 1980; coefficients and dense output as in Hairer, Nørsett and Wanner, Solving Ordinary
 * Differential Equations I, 2nd edition, 1993, table II.5.2 and II.6 (from memory; orders are checked in the tests).
 *
 * @module
 */

const C = [0, 1 / 5, 3 / 10, 4 / 5, 8 / 9, 1, 1] as const;
const A = [
  [],
  [1 / 5],
  [3 / 40, 9 / 40],
  [44 / 45, -56 / 15, 32 / 9],
  [19372 / 6561, -25360 / 2187, 64448 / 6561, -212 / 729],
  [9017 / 3168, -355 / 33, 46732 / 5247, 49 / 176, -5103 / 18656],
  [35 / 384, 0, 500 / 1113, 125 / 192, -2187 / 6784, 11 / 84],
] as const;
/** Order 5 less order 4. */
const ERROR = [71 / 57600, 0, -71 / 16695, 71 / 1920, -17253 / 339200, 22 / 525, -1 / 40] as const;
const DENSE = [
  -12715105075 / 11282082432,
  0,
  87487479700 / 32700410799,
  -10690763975 / 1880347072,
  701980252875 / 199316789632,
  -1453857185 / 822651844,
  69997945 / 29380423,
] as const;

/** Where a step starts, how fast things change there, and how long it is. */
export interface StepStart {
  readonly time: number;
  readonly state: readonly number[];
  readonly slope: readonly number[];
  readonly length: number;
}

/** A step taken. */
export interface Step {
  readonly end: readonly number[];
  /** Estimated error of each component. */
  readonly error: readonly number[];
  readonly slopes: readonly (readonly number[])[];
  /** Slope at the end: the first of the next step. */
  readonly lastSlope: readonly number[];
}

/** The state within one step. */
export interface DensePiece {
  readonly from: number;
  readonly length: number;
  /** State at a share of the step, 0 to 1. */
  readonly at: (theta: number) => number[];
}

const weighted = (
  slopes: readonly (readonly number[])[],
  weights: readonly number[],
  component: number,
): number => weights.reduce((sum, weight, s) => sum + weight * slopes[s]![component]!, 0);

/**
 * Takes one step.
 *
 * @param rate rate of change of each component
 * @param start where, and how long
 * @returns end of the step, error estimate and the seven slopes
 */
export function dormandPrinceStep(
  rate: (time: number, state: readonly number[]) => readonly number[],
  start: StepStart,
): Step {
  const { time, state, length } = start;
  const slopes: (readonly number[])[] = [start.slope];
  let end: readonly number[] = state;
  for (let stage = 1; stage < 7; stage++) {
    end = state.map((value, i) => value + length * weighted(slopes, A[stage]!, i));
    slopes.push(rate(time + C[stage]! * length, end));
  }
  return {
    end,
    error: state.map((_value, i) => length * weighted(slopes, ERROR, i)),
    slopes,
    lastSlope: slopes[6]!,
  };
}

/**
 * The fourth-order interpolation within a step.
 *
 * @param step the step taken
 * @param start where it started
 * @returns the piece
 */
export function densePiece(
  step: Step,
  start: { readonly time: number; readonly state: readonly number[]; readonly length: number },
): DensePiece {
  const { time, state, length } = start;
  const parts = state.map((value, i) => {
    const change = step.end[i]! - value;
    const third = length * step.slopes[0]![i]! - change;
    const fourth = change - length * step.slopes[6]![i]! - third;
    return [value, change, third, fourth, length * weighted(step.slopes, DENSE, i)] as const;
  });
  return {
    from: time,
    length,
    at: (theta) => {
      const rest = 1 - theta;
      return parts.map(([a, b, c, d, e]) => a + theta * (b + rest * (c + theta * (d + rest * e))));
    },
  };
}
