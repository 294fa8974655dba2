/**
 * Writes the demo session of tows at Quillwater and the truth behind it. Everything in both is invented.
 *
 *     deno run -A data/generate-tow-demo.ts            write the files
 *     deno run -A data/generate-tow-demo.ts --check    only say whether the files are what would be written
 *
 * @module
 */
import { CALIBRATIONS, CONDITIONS, INSTRUMENTS, TOW } from "lakeproof/base/tables.ts";
import { seededRandom } from "lakeproof/numeric/random.ts";
import { bracketedRoot } from "lakeproof/numeric/roots.ts";
import { makeDescriptor } from "lakeproof/read/make-descriptor.ts";
import { sessionFiles } from "./generate-demo.ts";
import { PLACE } from "./quillwater-craft.ts";
import {
  mastDrag,
  MORNING,
  REFERENCE_MASS,
  RUNNING_DEPTH,
  TOWED,
  type TowedCraft,
  towedCraft,
} from "./quillwater-tow-craft.ts";
import {
  calibrationRows,
  ERRORS,
  loadCell,
  MORNING_SCATTER,
  type Rows,
  SEED,
  SPEEDS,
  tareRows,
  towRows,
  WIND,
} from "./quillwater-tow-session.ts";
import { withTruth, writeDemo } from "./write-demo.ts";

const FOLDER = "quillwater-tow";

function conditionRows(): Rows {
  const row = (quantity: string, value: string, unit: string, note: string) => ({
    quantity,
    value,
    unit,
    note,
  });
  return [
    {
      ...row(
        "water_temperature",
        MORNING.waterTemperature.toFixed(1),
        "degC",
        "thermometer over the side",
      ),
      uncertainty: "0.5",
      stated_as: "standard",
    },
    row("salinity", "0", "g/kg", "reservoir"),
    row("latitude", String(PLACE.latitude), "deg", "Quillwater is invented"),
    row("altitude", String(PLACE.altitude), "m", ""),
    row("wind_speed", String(WIND), "m/s", "up the lake, hardly to be felt"),
    row("reference_mass", String(REFERENCE_MASS), "kg", "between the two"),
  ];
}

function instrumentRows(): Rows {
  const row = (
    quantity: string,
    instrument: string,
    uncertainty: number,
    [unit, stated_as, kind]: readonly [string, string, string],
    how: string,
  ) => ({ quantity, instrument, uncertainty: String(uncertainty), unit, stated_as, kind, how });
  const own = (unit: string) => [unit, "standard", "independent"] as const;
  const shared = (unit: string) => [unit, "standard", "common"] as const;
  const { window } = MORNING_SCATTER;
  return [
    row("speed", "paddle log", ERRORS.speed, own("m/s"), "ten looks at the display a window"),
    row("speed", "paddle log", 100 * ERRORS.speedScale, shared("%"), "timed over taped posts"),
    row("speed", "paddle log", ERRORS.speedZero, shared("m/s"), "drifting beside a float"),
    row("line_tension", "load cell", ERRORS.tension, own("N"), "it jumps about that much"),
    row("line_tension", "load cell", 100 * window, own("%"), "wake and ripples, by repeats"),
    row("line_angle", "protractor", ERRORS.angle, own("deg"), "read from a photograph"),
    row("line_angle", "protractor", ERRORS.level, shared("deg"), "the level that it hangs by"),
    row("depth", "video", ERRORS.depth, own("m"), "bands on the mast"),
    row("depth", "video", ERRORS.bands, shared("m"), "where the bands sit"),
    row("pitch", "phone", ERRORS.pitch, own("deg"), "a phone's level, filmed on the deck"),
    row("pitch", "phone", ERRORS.deck, shared("deg"), "how it lies on the deck"),
    row(
      "carried_mass",
      "bathroom scale",
      ERRORS.mass,
      ["kg", "limits", "common"],
      "the scale's own error",
    ),
  ];
}

const escape = (text: string) => /[",\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;

/** A table with those of the contract's columns that any row fills. */
function table({ columns }: typeof TOW, rows: Rows): string {
  const kept = columns.filter((column) =>
    column.required || rows.some((row) => (row[column.name] ?? "") !== "")
  );
  return [
    kept.map((column) => column.name),
    ...rows.map((row) => kept.map((column) => escape(row[column.name] ?? ""))),
  ].map((cells) => cells.join(",") + "\n").join("");
}

/** Head and rows of the towed designs, as the class wrote them down for its glides. */
function designsTable(): string {
  const [head, ...rows] = sessionFiles().get("designs.csv")!.trimEnd().split("\n");
  const towed = rows.filter((row) => TOWED.some((one) => row.startsWith(`${one.name},`)));
  return [head, ...towed].map((line) => `${line}\n`).join("");
}

let crafts: readonly TowedCraft[] | null = null, designs: string | null = null;

/** The session folder: text by name; another seed is another morning with the same foils. */
export function towSessionFiles(seed: string = SEED): Map<string, string> {
  crafts ??= TOWED.map(towedCraft);
  designs ??= designsTable();
  const chance = seededRandom(seed);
  const cell = loadCell(chance.stream("load cell"));
  const rows = towRows(crafts, cell, chance);
  const files = new Map([
    ["designs.csv", designs],
    ["tow.csv", table(TOW, [...rows, ...tareRows(rows.length, cell, chance)])],
    ["calibrations.csv", table(CALIBRATIONS, calibrationRows(cell, chance.stream("weights")))],
    ["conditions.csv", table(CONDITIONS, conditionRows())],
    ["instruments.csv", table(INSTRUMENTS, instrumentRows())],
  ]);
  const encoder = new TextEncoder();
  const bytes = new Map([...files].map(([name, text]) => [name, encoder.encode(text)]));
  const { $schema, name, title, ...rest } = JSON.parse(
    makeDescriptor(bytes, {
      name: FOLDER,
      title: "A morning behind the boat at Quillwater",
      invented: true,
    }),
  );
  const description =
    "Invented. An evening class in boatbuilding tows two of its wings, alder and birch, with a load cell in the line. " +
    "Nobody measured this; data/generate-tow-demo.ts computed it.";
  const descriptor = { $schema, name, title, description, ...rest };
  files.set("datapackage.json", JSON.stringify(descriptor, null, 2) + "\n");
  return files;
}

/** What scatter and instruments hide: drag in calm water without line or wind. */
export function towTruth() {
  crafts ??= TOWED.map(towedCraft);
  const [alder, birch] = crafts;
  const digits = (value: number) => Number(value.toPrecision(5));
  const [slowest, fastest] = [SPEEDS[0]!, SPEEDS.at(-1)!];
  const crossing = digits(
    bracketedRoot((speed) => birch!.drag(speed) - alder!.drag(speed), { low: slowest, high: 12 }),
  );
  return {
    invented: true,
    what:
      "True drag of each design as a whole, at the mass and depth given, on a level course in calm water without a line, " +
      "and that of its wing with fittings and of the mast alone; speeds in m/s, drag and lift in N, mass in kg, depth in m. Birch drags less below the speed of equal drag, more above; " +
      "the stretches are those among the speeds towed.",
    seed: SEED,
    mass: REFERENCE_MASS,
    depth: RUNNING_DEPTH,
    baseline: alder!.name,
    candidate: birch!.name,
    speedOfEqualDrag: crossing,
    candidateLessDrag: [[slowest, Math.min(crossing, fastest)]],
    candidateMoreDrag: crossing < fastest ? [[crossing, fastest]] : [],
    bestLiftToDragRatio: digits(birch!.best.liftToDrag / alder!.best.liftToDrag),
    best: crafts.map((one) => ({
      design: one.name,
      lift: digits(one.lift),
      liftToDrag: digits(one.best.liftToDrag),
      speed: digits(one.best.speed),
    })),
    drag: crafts.flatMap((one) =>
      SPEEDS.map((speed) => ({
        design: one.name,
        speed,
        drag: digits(one.drag(speed)),
        wing: digits(one.wing(speed)),
      }))
    ),
    mast: SPEEDS.map((speed) => ({ speed, drag: digits(mastDrag(speed, RUNNING_DEPTH)) })),
  };
}

/**
 * Every file of the demo, by path below `data/`.
 *
 * @returns text by path
 */
export function towDemoFiles(): Map<string, string> {
  return withTruth(FOLDER, towSessionFiles(), towTruth());
}

if (import.meta.main) await writeDemo(towDemoFiles(), Deno.args);
