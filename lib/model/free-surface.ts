/**
 * The water surface above a lifting line: how far it raises or lowers the drag due to lift.
 *
 * @module
 */
import { besselJ1OverArgument } from "../numeric/bessel-j1.ts";
import { gaussLegendre } from "../numeric/gauss-legendre.ts";

/** A wing seen as an elliptically loaded line under a flat surface. */
export interface EllipticLine {
  /** m, tip to tip. */
  readonly span: number;
  /** m below the surface; `Infinity` for unbounded water. */
  readonly depth: number;
}

/** Drag due to lift over its value in unbounded water, from speed (m/s) and gravity (m/s2). */
export type FreeSurfaceFactor = (speed: number, gravity: number) => number;

/** The exponential is cut off where it has fallen to exp(-16) = 1e-7; the integrand is tiny there anyway. */
const CUT = 16;

/** Points that hold phi to 2e-8 down to a depth of 0.02 spans. */
function pointCount(depthOverSpan: number): number {
  return Math.ceil(16 + 0.15 * CUT / depthOverSpan);
}

/** Squared J1(z)/z: the elliptic loading's share of waves or images of one length. */
function loading(z: number): number {
  const value = besselJ1OverArgument(z);
  return value * value;
}

/**
 * Image factor sigma of an elliptic line: the drag that one wing of a pair causes on the other, over its own.
 *
 * Equal wings one above the other, each with elliptic loading; Prandtl's approximate fraction is within 0.2 % only for gaps of
 * 0.05 to 0.4 spans, so the integral itself is used. Under water the image of a wing at depth h is 2 h away.
 *
 * Source: Prandtl, NACA Report 116 (1921), for the factor; integral `2 int_0^inf exp(-2 (G/b) z) J1(z)^2/z dz` derived from
 * the Fourier transform of the elliptic loading.
 *
 * @param gapOverSpan distance between the two lines over their span, 1
 * @returns sigma, 0 (far apart) to 1 (together), 1
 * @throws RangeError when the gap is not above zero
 *
 * @example
 * ```ts
 * import { biplaneFactor } from "lakeproof/model/free-surface.ts";
 * if (Math.abs(biplaneFactor(0.5) - 0.23221) > 5e-6) throw new Error("tabulated value");
 * ```
 */
export function biplaneFactor(gapOverSpan: number): number {
  if (!(gapOverSpan > 0)) {
    throw new RangeError(`Cannot give sigma as the gap must be above zero: ${gapOverSpan} spans`);
  }
  if (gapOverSpan === Infinity) return 0;
  const depthOverSpan = gapOverSpan / 2;
  const { nodes, weights } = gaussLegendre(pointCount(depthOverSpan));
  let sum = 0;
  for (let i = 0; i < nodes.length; i++) {
    const x = nodes[i]!;
    const z = CUT * x * x / (4 * depthOverSpan);
    sum += weights[i]! * Math.exp(-CUT * x * x) * 2 * z * loading(z) * CUT * x /
      (2 * depthOverSpan);
  }
  return sum;
}

/** Shallowest depth over span that phi was checked for; nearer the surface the linear waves of the model mean nothing. */
export const LEAST_DEPTH_OVER_SPAN = 0.01;

/**
 * Free-surface factor phi of an elliptically loaded line at one depth, for any speed: `1 - sigma(2h/b) + R_w/D_i`.
 *
 * It multiplies the induced drag of unbounded water and holds induced and wave drag together: nothing may be added to it.
 * Slow, it tends to 1 - sigma (the surface acts as a lid), fast to 1 + sigma (a free jet boundary); between, waves raise it to a
 * peak at 1.4 to 1.5 sqrt(g h), three-fold a tenth of a span deep. Water without bottom, linear waves; the model's own doubt
 * is about 15 % of phi - 1.
 *
 * Source: wave resistance of a lifting line by the Fourier transform of its loading (Wehausen and Laitone 1960, Surface
 * Waves, section on wave resistance; equation from memory), integrated as
 * `2 K^2 int_0^inf (1+t^2)^1.5 exp(-2 K (h/b) (1+t^2)) (J1(z)/z)^2 dt`, `K = g b/V^2`, `z = (K/2) t sqrt(1+t^2)`, by
 * Gauss-Legendre in t scaled so that the exponential is the same at all speeds. Relative error against 25-digit
 * quadrature: 2e-8 for V/sqrt(g b) of 0.2 to 1000 and h/b of 0.02 to 3; 1e-7 down to 0.05.
 *
 * @param line span and depth in m
 * @returns phi as a function of speed in m/s and gravity in m/s2; fast, since everything that depends on depth alone is kept
 * @throws RangeError when span or depth is not above zero or the depth is less than a hundredth of the span, or later when
 *   speed or gravity is not above zero
 *
 * @example
 * ```ts
 * import { ellipticLinePhi } from "lakeproof/model/free-surface.ts";
 * const phi = ellipticLinePhi({ span: 0.9, depth: 0.4 });
 * if (Math.abs(phi(3.5, 9.8107021356) - 1.20736784) > 1e-8) throw new Error("checked value");
 * ```
 */
export function ellipticLinePhi({ span, depth }: EllipticLine): FreeSurfaceFactor {
  if (!(span > 0 && span < Infinity && depth > 0)) {
    throw new RangeError(
      `Cannot give phi as span and depth must be above zero: span ${span} m, depth ${depth} m`,
    );
  }
  if (depth < LEAST_DEPTH_OVER_SPAN * span) {
    throw new RangeError(
      `Cannot give phi as the depth must be at least a hundredth of the span: ${depth} m under ${span} m of span`,
    );
  }
  const requireMotion = (speed: number, gravity: number) => {
    if (!(speed > 0 && speed < Infinity && gravity > 0 && gravity < Infinity)) {
      throw new RangeError(
        `Cannot give phi as speed and gravity must be above zero: ${speed} m/s, ${gravity} m/s2`,
      );
    }
  };
  if (depth === Infinity) {
    return (speed, gravity) => (requireMotion(speed, gravity), 1);
  }
  const depthOverSpan = depth / span;
  const lid = 1 - biplaneFactor(2 * depthOverSpan);
  const { nodes, weights } = gaussLegendre(pointCount(depthOverSpan));
  const decayed = nodes.map((x, i) => weights[i]! * Math.exp(-CUT * x * x));
  const squares = nodes.map((x) => x * x);

  return (speed, gravity) => {
    requireMotion(speed, gravity);
    const waveNumber = gravity * span / (speed * speed);
    const exponent = 2 * waveNumber * depthOverSpan;
    const stretch = CUT / exponent;
    let sum = 0;
    for (let i = 0; i < squares.length; i++) {
      const tangent = stretch * squares[i]!;
      const secant = 1 + tangent;
      const root = Math.sqrt(secant);
      sum += decayed[i]! * secant * root * loading(waveNumber / 2 * Math.sqrt(tangent) * root);
    }
    // Very slow: no waves left. Written so that zero times infinity can't arise.
    const faded = Math.exp(-exponent);
    if (faded === 0) return lid;
    return lid + 2 * waveNumber * waveNumber * Math.sqrt(stretch) * faded * sum;
  };
}
