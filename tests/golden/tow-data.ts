/** The readings of tow-example.json as the fit takes them, with the errors that they share. */
import type { SharedError } from "lakeproof/fit/tow-series.ts";
import type { TowData } from "lakeproof/fit/tow-data.ts";
import { planformPrior } from "lakeproof/fit/planform-prior.ts";
import golden from "./tow-example.json" with { type: "json" };

export { golden };

const DEGREE = Math.PI / 180;

type Name = keyof typeof golden.designs;

/** An error by name and how many of its standard uncertainties are taken off the readings. */
interface Off {
  readonly name: keyof typeof golden.shared;
  readonly sign: 1 | -1;
}

export function goldenData(name: Name, off?: Off): TowData {
  const spec = golden.designs[name];
  const taken = (one: keyof typeof golden.shared) =>
    off?.name === one ? off.sign * golden.shared[one] : 0;
  const volume = spec.volume * (1 - taken("volume"));
  const lift = (spec.mass - taken("mass") - golden.density * volume) * golden.gravity;
  const { towed } = planformPrior(
    {
      span: spec.span,
      area: spec.area,
      strutCount: null,
      strutChord: null,
      strutThickness: null,
      extraDragArea: null,
    },
    { lift, density: golden.density, depth: 0.4 },
  );
  return {
    craft: {
      lift,
      phi: () => 1,
      // The independent fit was made with an expectation of its own for the constant.
      expected: {
        ...towed,
        constant: { mean: -0.006 * lift, standardUncertainty: 0.008 * lift },
      },
    },
    readings: golden.readings[name].map(([speed, tension, degrees], i) => ({
      speed: speed! * (1 - taken("speed scale")) - taken("speed zero"),
      tension: tension! * (1 - taken("cell scale")) - taken("cell zero"),
      angle: degrees! * DEGREE - taken("angle zero"),
      weight: lift,
      inertia: 0,
      group: String(Math.floor(i / 2)),
      block: "all",
      uncertainty: {
        speed: { fixed: 0, share: 0.01 },
        tension: { fixed: 0.8, share: 0.015 },
        angle: 0.5 * DEGREE,
      },
    })),
  };
}

export function goldenErrors(name: Name): SharedError[] {
  return (Object.keys(golden.shared) as (keyof typeof golden.shared)[]).map((error) => ({
    name: error,
    key: error === "volume" ? null : error,
    shifted: [
      goldenData(name, { name: error, sign: 1 }),
      goldenData(name, { name: error, sign: -1 }),
    ],
  }));
}
