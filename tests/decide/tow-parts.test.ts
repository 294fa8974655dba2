import { describe, expect, it } from "vitest";
import fc from "fast-check";
import type { Instrument, Session } from "lakeproof/base/session.ts";
import type { DesignTow, SpeedParts } from "lakeproof/base/tow-answer.ts";
import { compareTows } from "lakeproof/decide/compare-tows.ts";
import { seededRandom } from "lakeproof/numeric/random.ts";
import { taredWorld, untared } from "../support/tared-world.ts";

const answered = (session: Session) => compareTows(session).answer;
const only = (session: Session): DesignTow => answered(session).designs[0]!;
const middle = (one: DesignTow): SpeedParts => one.parts.find(({ at }) => at === "best")!;
const part = (one: SpeedParts, name: string) => one.parts.find((each) => each.part === name);

const { session, truth, lift } = taredWorld("struts alone");
const tared = only(session);
const byFormula = only(untared(session));

describe("drag by parts", () => {
  it("adds up to the whole at every speed told, with a tare and without", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 1000 }),
        fc.integer({ min: 0, max: 3 }),
        (seed, tares) => {
          const { parts, law } = only(taredWorld(`parts ${seed}`, { tares }).session);
          if (law === null) return;
          expect(parts.length).toBeGreaterThanOrEqual(2);
          for (const one of parts) {
            const sum = one.parts.reduce((total, each) => total + each.drag.value, 0);
            // A dozen additions of numbers below 200 N.
            expect(Math.abs(sum - one.total.value)).toBeLessThan(1e-10);
          }
        },
      ),
      { numRuns: 12, seed: 1 },
    );
  });

  it("holds the true parts in their intervals", () => {
    for (const one of tared.parts) {
      const true_ = truth(one.speed);
      const wanted: Record<string, number> = {
        "struts and spray": true_.struts,
        "junction": true_.junction,
        "rider in the air": true_.rider,
        "wing": true_.wing,
      };
      for (const { part, drag } of one.parts) {
        expect(drag.low!, `${part} ${one.at}`).toBeLessThan(wanted[part]!);
        expect(drag.high!, `${part} ${one.at}`).toBeGreaterThan(wanted[part]!);
      }
    }
    expect(tared.parts.map((one) => one.at)).toEqual(["slowest", "best", "fastest"]);
  });

  it("tells the wing's lift-to-drag from the wing's part and the full lift, and its true value in the interval", () => {
    for (const { speed, liftToDrag } of tared.wingLiftToDrag) {
      const wing = part(tared.parts.find((one) => one.speed === speed)!, "wing")!.drag.value;
      expect(liftToDrag.value * wing).toBeCloseTo(tared.law!.lift, 8);
      expect(liftToDrag.low!).toBeLessThan(lift / truth(speed).wing);
      expect(liftToDrag.high!).toBeGreaterThan(lift / truth(speed).wing);
      expect(liftToDrag.value).toBeGreaterThan(tared.bestLiftToDrag!.value * 0.9);
    }
  });

  it("is narrower with tare readings than by formula", () => {
    const width = (one: DesignTow) =>
      one.wingLiftToDrag.map(({ liftToDrag }) => Math.log(liftToDrag.high! / liftToDrag.low!));
    width(tared).forEach((one, i) => expect(one).toBeLessThan(width(byFormula)[i]!));
    const struts = part(middle(tared), "struts and spray")!.drag;
    const formula = part(middle(byFormula), "struts")!.drag;
    expect(struts.standardUncertainty! / struts.value).toBeLessThan(0.1);
    expect(formula.standardUncertainty! / formula.value).toBeGreaterThanOrEqual(0.4);
  });

  it("takes the rider's drag area as stated where somebody measured it, and is the surer for it", () => {
    const measured = middle(only({
      ...session,
      conditions: [{
        row: 2,
        own: {},
        quantity: "air_drag_area",
        value: 0.5,
        unit: "m2",
        uncertainty: 0.05,
        statedAs: "standard",
        block: null,
        note: null,
      }],
    }));
    const rider = part(measured, "rider in the air")!;
    expect(rider.how).toBe("stated");
    expect(rider.source).toContain("to 10 %");
    expect(rider.drag.value).toBeCloseTo(1.225 / 2 * 0.5 * measured.speed ** 2, 8);
    const u = (one: SpeedParts) => part(one, "wing")!.drag.standardUncertainty!;
    expect(u(measured)).toBeLessThan(0.75 * u(middle(tared)));
  });

  it("leaves the whole craft's answer as it was", () => {
    for (const key of ["law", "bestLiftToDrag", "speedOfBestLiftToDrag", "dragAt"] as const) {
      expect(tared[key]).toEqual(byFormula[key]);
    }
  });

  it("lets a zero that the load cell has in every reading cancel between the whole and the tare", () => {
    const zero: Instrument = {
      row: 2,
      own: {},
      quantity: "line_tension",
      instrument: "load cell",
      uncertainty: 4,
      relative: false,
      statedAs: "standard",
      kind: "common",
      how: null,
    };
    const with_ = (one: Session) => middle(only({ ...one, instruments: [zero] }));
    const off = with_(session);
    const u = (one: SpeedParts, name?: string) =>
      (name === undefined ? one.total : part(one, name)!.drag).standardUncertainty!;
    // 4 N shared by all: the whole carries them, the tare carries about as much, the wing hardly any.
    expect(u(off)).toBeGreaterThan(3.5);
    expect(u(off, "struts and spray")).toBeGreaterThan(0.5);
    const before = u(middle(tared), "wing");
    const shared = Math.sqrt(u(off, "wing") ** 2 - before ** 2);
    const unshared = Math.sqrt(
      u(with_(untared(session)), "wing") ** 2 - u(middle(byFormula), "wing") ** 2,
    );
    expect(shared).toBeLessThan(0.75 * unshared);
  });
});

describe("what can't be split", () => {
  const without = (one: Session): Session => ({
    ...one,
    designs: one.designs.map((each) => ({ ...each, strutChord: null })),
  });

  it("stays with the wing where neither sizes nor tares are known, and is said, and the rest is answered", () => {
    const { designs, findings } = answered(without(untared(session)));
    expect(findings.map((one) => one.code)).toContain("wing-not-split");
    expect(middle(designs[0]!).parts.map((one) => one.part)).toEqual([
      "rider in the air",
      "wing and struts",
    ]);
    expect(designs[0]!.wingLiftToDrag).toEqual([]);
    expect(middle(designs[0]!).expectedOfWing).toBeNull();
    expect(designs[0]!.bestLiftToDrag).not.toBeNull();
  });

  it("is the junction alone where struts of unknown size were tared", () => {
    const { designs, findings } = answered(without(session));
    expect(findings.map((one) => one.code)).toContain("wing-not-split");
    expect(middle(designs[0]!).parts.map((one) => one.part)).toEqual([
      "struts and spray",
      "rider in the air",
      "wing and junction",
    ]);
  });

  it("goes with the depth where struts of unknown size were tared at another one", () => {
    const struts = (deeper: number) =>
      middle(only(without({
        ...session,
        tow: session.tow.map((one) =>
          one.design === "tare" ? { ...one, depth: one.depth! * deeper } : one
        ),
      }))).parts[0]!.drag.value;
    // The same pull at twice the depth is half of it at the depth of the wing.
    expect(struts(2) / struts(1)).toBeCloseTo(0.5, 2);
  });

  it("is nothing on a wing without struts", () => {
    const one = only({
      ...untared(session),
      designs: session.designs.map((each) => ({ ...each, strutCount: 0 })),
    });
    expect(middle(one).parts.map((each) => each.part)).toEqual(["rider in the air", "wing"]);
  });
});

describe("tare readings that can't serve", () => {
  const tares = (change: (one: Session["tow"][number]) => Session["tow"][number]): Session => ({
    ...session,
    tow: session.tow.map((one) => one.design === "tare" ? change(one) : one),
  });
  const code = (one: Session) => answered(one).findings.map((each) => each.code);
  const how = (one: Session) => middle(only(one)).parts[0]!.how;

  it("are refused where they show a tenth of what struts of this size can drag, as kilograms do", () => {
    const kilograms = tares((one) => ({ ...one, lineTension: one.lineTension! / 9.81 }));
    expect(code(kilograms)).toContain("tare-is-odd");
    expect(how(kilograms)).toBe("formula");
  });

  it("are not used where designs have different struts", () => {
    const second = { ...session.designs[0]!, row: 3, design: "birch", strutChord: 0.1 };
    const two: Session = {
      ...session,
      designs: [...session.designs, second],
      tow: session.tow.flatMap((one) =>
        one.design === "alder" ? [one, { ...one, row: one.row + 500, design: "birch" }] : [one]
      ),
    };
    expect(code(two)).toContain("tare-of-which-struts");
    expect(how(two)).toBe("formula");
  });

  it("are named with their reason where they lack something", () => {
    const slack = tares((one) => one.sweep === "1" ? { ...one, lineTension: null } : one);
    const found = answered(slack).findings.find((one) => one.code === "tares-left-out")!;
    expect(found.count).toBe(7);
    expect(found.what).toContain("no line tension");
    expect(how(slack)).toBe("tare");
  });

  it("need no carried mass", () => {
    expect(how(tares((one) => ({ ...one, carriedMass: null })))).toBe("tare");
  });
});

describe("any tares and struts at all", () => {
  it("give finite parts that add up, or none, and never an exception", () => {
    const random = seededRandom("any tares");
    const strange = (value: number | null) => {
      const one = [null, 0, 1e-9, 0.5, 2, 1e3, -1, 1e12][Math.floor(8 * random.uniform())]!;
      return value === null || random.uniform() > 0.1 ? value : one === null ? null : value * one;
    };
    let told = 0;
    for (let i = 0; i < 60; i++) {
      const from = taredWorld(`any ${i % 4}`, { tares: 1 }).session;
      const { designs } = answered({
        ...from,
        designs: from.designs.map((one) => ({
          ...one,
          strutCount: strange(one.strutCount),
          strutChord: strange(one.strutChord),
          strutThickness: strange(one.strutThickness),
          extraDragArea: strange(2e-4),
          thicknessRatio: strange(one.thicknessRatio),
        })),
        tow: from.tow.map((one) =>
          one.design !== "tare" ? one : {
            ...one,
            speed: strange(one.speed),
            lineTension: strange(one.lineTension),
            lineAngle: strange(one.lineAngle),
            depth: strange(one.depth),
          }
        ),
      });
      for (const { parts, total } of designs[0]!.parts) {
        told++;
        const numbers = parts.flatMap(({ drag }) => [drag.value, drag.low!, drag.high!]);
        expect(numbers.every((one) => Number.isFinite(one) && one > 0)).toBe(true);
        const sum = parts.reduce((sum, one) => sum + one.drag.value, 0);
        expect(Math.abs(sum - total.value)).toBeLessThan(1e-9);
      }
    }
    expect(told).toBeGreaterThan(15);
  });
});
