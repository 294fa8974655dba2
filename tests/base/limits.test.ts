import { describe, expect, it } from "vitest";
import { likelyUnit } from "lakeproof/base/likely-unit.ts";
import { LIMITS, standing } from "lakeproof/base/limits.ts";
import { CONDITION_QUANTITIES, DESIGNS, GLIDES, TOW } from "lakeproof/base/tables.ts";
import { unitNamed } from "lakeproof/base/units.ts";

const MEASURED = [...DESIGNS.columns, ...GLIDES.columns, ...TOW.columns, ...CONDITION_QUANTITIES]
  .filter((one) => one.dimension !== undefined);

describe("limits of columns", () => {
  it("stand for every column that holds a number with a dimension, and for no other", () => {
    expect([...new Set(MEASURED.map((one) => one.name))].sort()).toEqual(
      Object.keys(LIMITS).sort(),
    );
  });

  it("allow what is usual within what is possible", () => {
    for (const [name, { possible, usual }] of Object.entries(LIMITS)) {
      expect(possible[0], name).toBeLessThanOrEqual(usual[0]);
      expect(usual[0], name).toBeLessThan(usual[1]);
      expect(usual[1], name).toBeLessThanOrEqual(possible[1]);
    }
  });

  it("tell impossible, odd and fitting values apart", () => {
    expect(standing("launch_speed", 4.5)).toBe("fits");
    expect(standing("launch_speed", 14)).toBe("odd");
    expect(standing("launch_speed", 55.6)).toBe("impossible");
    expect(standing("distance", 0)).toBe("impossible");
    expect(standing("wet_volume", 0)).not.toBe("impossible");
    expect(standing("mood", 1e9)).toBe("fits");
  });

  it.each(
    [
      ["launch_speed", 16, "m/s", "km/h"],
      ["carried_mass", 187, "kg", "lb"],
      ["span", 95, "m", "cm"],
      ["area", 1500, "m2", "cm2"],
      ["thickness_ratio", 13, "1", "%"],
      ["water_temperature", 65, "degC", "degF"],
    ] as const,
  )("an odd %s of %s %s was probably written in %s", (column, value, unit, likely) => {
    const { dimension } = MEASURED.find((one) => one.name === column)!;
    expect(likelyUnit(column, value, unitNamed(unit, dimension!))?.name).toBe(likely);
  });

  it("a number that no unit makes usual has no likely unit", () => {
    expect(likelyUnit("launch_speed", 5000, unitNamed("m/s", "speed"))).toBeNull();
  });
});
