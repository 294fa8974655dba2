import { describe, expect, it } from "vitest";
import { besselJ1OverArgument } from "lakeproof/numeric/bessel-j1.ts";
import { biplaneFactor, ellipticLinePhi } from "lakeproof/model/free-surface.ts";

const g = 9.80665;

/** phi at a span Froude number, by way of a wing of one metre. */
function phi(froude: number, depthOverSpan: number): number {
  return ellipticLinePhi({ span: 1, depth: depthOverSpan })(froude * Math.sqrt(g), g);
}

/* Parent of the values: the same integrals by 25-digit tanh-sinh quadrature (Python, mpmath), and by a 200-point
 * Gauss-Legendre rule cut at exp(-36) (Python, numpy 2.4, scipy 1.17 j1). */
const CHECKED: readonly [number, number, number][] = [
  [0.25, 0.05, 5.5842882474],
  [0.3, 0.08, 3.3751308445],
  [0.5, 0.1, 3.1258756199],
  [1, 4 / 9, 1.2166222985],
  [1.5, 0.5, 1.1537848612],
  [3, 0.2, 1.328136051],
  [10, 1, 1.029325073],
];

const FROUDE = [0.25, 0.5, 0.75, 1, 1.5, 2, 3, 5, 10, 100];
/** Same parent, four decimals, by depth over span. */
const TABLE: readonly [number, readonly number[]][] = [
  [0.1, [1.5329, 3.1259, 2.4743, 2.0636, 1.7338, 1.6194, 1.5415, 1.5041, 1.4891, 1.4843]],
  [0.2, [0.7482, 1.7032, 1.775, 1.6268, 1.4498, 1.3787, 1.3281, 1.3035, 1.2937, 1.2906]],
  [0.25, [0.7754, 1.389, 1.5712, 1.4937, 1.3634, 1.3058, 1.2637, 1.2431, 1.2348, 1.2322]],
  [0.3, [0.8129, 1.2022, 1.4238, 1.3939, 1.2984, 1.2512, 1.2156, 1.1979, 1.1909, 1.1887]],
  [0.5, [0.9065, 0.9708, 1.1308, 1.1749, 1.1538, 1.1306, 1.1101, 1.0992, 1.0949, 1.0935]],
  [0.75, [0.952, 0.9592, 1.0238, 1.0708, 1.0809, 1.071, 1.0589, 1.0518, 1.0489, 1.048]],
  [1, [0.9713, 0.9722, 0.996, 1.0292, 1.0478, 1.0444, 1.0367, 1.0315, 1.0293, 1.0287]],
];

describe("free-surface factor of an elliptic line", () => {
  it("equals 25-digit quadrature to 2e-8, the rule's stated error", () => {
    for (const [froude, depth, value] of CHECKED) {
      expect(Math.abs(phi(froude, depth) / value - 1)).toBeLessThan(2e-8);
    }
  });
  it("equals every cell of the table to its last digit", () => {
    for (const [depth, row] of TABLE) {
      row.forEach((value, i) => {
        // 6e-5: half the last printed digit and a little for ties.
        expect(Math.abs(phi(FROUDE[i]!, depth) - value)).toBeLessThan(6e-5);
      });
    }
  });
  it("equals the wave integral in its first form, by brute force", () => {
    // R_w = (rho k^2/pi) int_0^(pi/2) sec^5 exp(-2 k h sec^2) |G(k sin sec^2)|^2, D_i = pi rho Gamma0^2/8 and
    // G(x) = Gamma0 (pi b/2) J1(x b/2)/(x b/2): midpoint rule, 200,000 points.
    const waves = (froude: number, depth: number) => {
      const k = 1 / (froude * froude);
      const n = 200_000;
      let sum = 0;
      for (let i = 0; i < n; i++) {
        const theta = Math.PI / 2 * (i + 0.5) / n;
        const secant = 1 / Math.cos(theta);
        const faded = Math.exp(-2 * k * depth * secant * secant);
        if (faded === 0) break;
        const load = besselJ1OverArgument(k * Math.sin(theta) * secant * secant / 2);
        sum += secant ** 5 * faded * load * load;
      }
      return 2 * k * k * sum * Math.PI / 2 / n;
    };
    for (const [froude, depth] of [[0.4, 0.1], [0.8, 0.3], [1.3, 0.35], [2.5, 0.6]] as const) {
      const whole = 1 - biplaneFactor(2 * depth) + waves(froude, depth);
      // 3e-8: the rule's stated error and the midpoint rule's own.
      expect(Math.abs(phi(froude, depth) / whole - 1)).toBeLessThan(3e-8);
    }
  });
  it("tends to 1 + sigma fast and to 1 - sigma slow", () => {
    const sigma = biplaneFactor(0.5);
    expect(phi(1e4, 0.25)).toBeCloseTo(1 + sigma, 7);
    expect(phi(0.05, 0.25)).toBeCloseTo(1 - sigma, 7);
    expect(phi(1e-4, 0.25)).toBe(1 - sigma);
  });
  it("is 1 in unbounded water and nearly so 50 spans deep", () => {
    expect(ellipticLinePhi({ span: 1, depth: Infinity })(4, g)).toBe(1);
    expect(phi(1, 50)).toBeCloseTo(0.9999875, 7);
  });
  it("tends to strip theory's wave drag for spans of many wave lengths", () => {
    // Strip theory over the elliptic loading: R_w/D_i -> 16/(3 pi) K exp(-2 K h/b); here k h = 1.
    const depthRatios = [[20, 0.9618], [40, 0.9878], [80, 0.9963]] as const;
    for (const [k, ratio] of depthRatios) {
      const depth = 1 / k;
      const wave = phi(1 / Math.sqrt(k), depth) - 1 + biplaneFactor(2 * depth);
      expect(Math.abs(wave / (16 / (3 * Math.PI) * k * Math.exp(-2)) - ratio)).toBeLessThan(1e-4);
    }
  });
  it("peaks where the speed is 1.39 to 1.48 sqrt(g h)", () => {
    const peaks = [[0.05, 6.23], [0.1, 3.2], [0.2, 1.81], [0.3, 1.43], [0.5, 1.18]] as const;
    for (const [depth, height] of peaks) {
      let best = 0, at = 0;
      for (let s = 1.2; s < 1.7; s += 0.005) {
        const value = phi(s * Math.sqrt(depth), depth);
        if (value > best) [best, at] = [value, s];
      }
      expect(at).toBeGreaterThan(1.385);
      expect(at).toBeLessThan(1.485);
      expect(Math.abs(best - height)).toBeLessThan(0.006);
    }
  });
  it("depends on speed, gravity, span and depth only through two ratios", () => {
    const small = ellipticLinePhi({ span: 1, depth: 0.3 })(3, 9.8);
    const large = ellipticLinePhi({ span: 4, depth: 1.2 })(6, 9.8);
    expect(large / small - 1).toBeCloseTo(0, 13);
  });
  it("refuses a wing at the surface, no span, no speed, NaN", () => {
    expect(() => ellipticLinePhi({ span: 1, depth: 0 })).toThrow(RangeError);
    expect(() => ellipticLinePhi({ span: 0, depth: 1 })).toThrow(RangeError);
    expect(() => ellipticLinePhi({ span: 1, depth: NaN })).toThrow(RangeError);
    expect(() => ellipticLinePhi({ span: 1, depth: 1 })(0, g)).toThrow(RangeError);
    expect(() => ellipticLinePhi({ span: 1, depth: 1 })(NaN, g)).toThrow(RangeError);
    expect(() => ellipticLinePhi({ span: 1, depth: Infinity })(-1, g)).toThrow(RangeError);
  });
});

describe("image factor", () => {
  it("equals the exact integral's table and lies near Prandtl's fraction", () => {
    const table = [
      [0.05, 0.78452],
      [0.1, 0.65647],
      [0.15, 0.56038],
      [0.2, 0.4842],
      [0.25, 0.42209],
      [0.3, 0.37055],
      [0.4, 0.29054],
      [0.5, 0.23221],
      [0.75, 0.14181],
      [1, 0.09351],
    ] as const;
    for (const [gap, sigma] of table) {
      expect(Math.abs(biplaneFactor(gap) - sigma)).toBeLessThan(6e-6);
      // Prandtl, NACA Report 116 (1921): (1 - 0.66 g)/(1.05 + 3.7 g), good to 0.2 % for gaps of 0.05 to 0.4 spans.
      if (gap <= 0.4) {
        expect(Math.abs((1 - 0.66 * gap) / (1.05 + 3.7 * gap) / sigma - 1)).toBeLessThan(2.1e-3);
      }
    }
  });
  it("vanishes far apart and refuses no gap", () => {
    expect(biplaneFactor(Infinity)).toBe(0);
    expect(() => biplaneFactor(0)).toThrow(RangeError);
  });
});

describe("phi nearer the surface than it was checked for", () => {
  it("is refused, and given at the limit", () => {
    expect(() => ellipticLinePhi({ span: 1, depth: 0.0099 })).toThrow("a hundredth of the span");
    expect(ellipticLinePhi({ span: 1, depth: 0.01 })(4, 9.81)).toBeGreaterThan(1);
  });
});
