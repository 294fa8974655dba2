/**
 * Writes the demo session of Quillwater and the truth behind it. Everything in both is invented.
 *
 *     deno run -A data/generate-demo.ts            write the files
 *     deno run -A data/generate-demo.ts --check    only say whether the files are what would be written
 *
 * @module
 */
import { CONTRACT } from "lakeproof/base/answers.ts";
import {
  type Column,
  CONDITIONS,
  DESIGNS as DESIGNS_TABLE,
  GLIDES,
  INSTRUMENTS,
  type TableContract,
  traceContract,
} from "lakeproof/base/tables.ts";
import { weightInWater } from "lakeproof/model/buoyancy.ts";
import { strutVolume } from "lakeproof/model/strut-drag.ts";
import { minimumBetween } from "lakeproof/numeric/minimum.ts";
import {
  DESIGNS,
  EVENINGS,
  flySink,
  pair,
  PLACE,
  type TrueDesign,
  wingVolume,
} from "./quillwater-craft.ts";
import { flownRuns, LAUNCH_DEPTH, NOISE, SEED } from "./quillwater-session.ts";
import { REFERENCE_MASS } from "./quillwater-tow-craft.ts";
import { ERRORS } from "./quillwater-tow-session.ts";
import { traceFiles } from "./quillwater-traces.ts";
import { withTruth, writeDemo } from "./write-demo.ts";

const FOLDER = "quillwater-evening";

type Rows = readonly Readonly<Record<string, string>>[];

/** What the builders say of their designs: the drawing, not the truth. */
function designRows(): Rows {
  const notes: Readonly<Record<string, string>> = {
    alder: "last year's wing, the one everybody knows",
    birch: "longer and thinner; sits awkwardly on the jetty, so riders step off slower",
    cedar: "alder's mould with new tips",
  };
  return DESIGNS.map((design) => ({
    design: design.name,
    span: design.span.toFixed(2),
    area: design.area.toFixed(3),
    // Wing and mast at running depth, from the drawing.
    wet_volume: (1000 * (wingVolume(design) + 0.685 * 0.115 * 0.0145 * 0.4)).toFixed(1),
    thickness_ratio: String(design.thicknessRatio),
    section: "cambered",
    largest_lift_coefficient: "1.05",
    strut_count: "1",
    strut_chord: "115",
    strut_thickness: "14.5",
    strut_length: "0.75",
    board_draught: "0.08",
    note: notes[design.name]!,
  }));
}

function conditionRows(): Rows {
  const evenings = EVENINGS.map((evening) => ({
    quantity: "water_temperature",
    value: evening.waterTemperature.toFixed(1),
    unit: "degC",
    uncertainty: "0.5",
    stated_as: "standard",
    block: evening.block,
    note: "bath thermometer off the jetty",
  }));
  const all = (quantity: string, value: string, unit: string, note: string) => ({
    quantity,
    value,
    unit,
    note,
  });
  return [
    ...evenings,
    all("salinity", "0", "g/kg", "reservoir"),
    all("latitude", String(PLACE.latitude), "deg", "Quillwater is invented"),
    all("altitude", String(PLACE.altitude), "m", ""),
    all("wind_speed", "0", "m/s", "flat calm on both evenings"),
  ];
}

function instrumentRows(): Rows {
  const row = (
    quantity: string,
    instrument: string,
    uncertainty: string,
    [unit, stated_as, kind]: readonly [string, string, string],
    how: string,
  ) => ({ quantity, instrument, uncertainty, unit, stated_as, kind, how });
  const own = (unit: string) => [unit, "standard", "independent"] as const;
  const shared = [
    String(100 * NOISE.speedScale),
    ["%", "standard", "common"],
    "spacing of the posts, taped twice",
  ] as const;
  const speed = String(NOISE.speed);
  return [
    row("launch_speed", "video", speed, own("m/s"), "50 frames a second between two posts"),
    row("launch_speed", "posts", ...shared),
    row("end_speed", "video", speed, own("m/s"), "50 frames a second between two posts"),
    row("end_speed", "posts", ...shared),
    row("drop", "video", String(NOISE.drop), own("m"), "bands on the mast against the water line"),
    row(
      "distance",
      "buoys",
      String(2 * NOISE.distance),
      ["m", "95 %", "independent"],
      "a buoy every metre, read by two people",
    ),
    row(
      "distance",
      "tape",
      String(100 * NOISE.distanceScaleLimit),
      ["%", "limits", "common"],
      "the buoy line stretches",
    ),
    row("duration", "watch", String(NOISE.duration), own("s"), "by hand"),
    row(
      "carried_mass",
      "bathroom scale",
      String(NOISE.massLimit),
      ["kg", "limits", "common"],
      "the scale's own error",
    ),
    row("depth", "video", String(NOISE.depth), own("m"), "bands on the mast, middle of the run"),
    row(
      "trace_speed",
      "paddle log",
      String(100 * ERRORS.speedScale),
      ["%", "standard", "common"],
      "timed over taped posts",
    ),
    row(
      "trace_speed",
      "paddle log",
      String(ERRORS.speedZero),
      ["m/s", "standard", "common"],
      "drifting beside a float",
    ),
  ];
}

const escape = (text: string) => /[",\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;

/** A table with those of the contract's columns that any row fills. */
function table(contract: TableContract, rows: Rows): { text: string; columns: readonly Column[] } {
  const columns = contract.columns.filter((column) =>
    column.required || rows.some((row) => (row[column.name] ?? "") !== "")
  );
  const lines = [
    columns.map((column) => column.name),
    ...rows.map((row) => columns.map((column) => escape(row[column.name] ?? ""))),
  ];
  return { text: lines.map((cells) => cells.join(",") + "\n").join(""), columns };
}

/** A column as Table Schema tells it; `unit` is a property of our own, since the standard has none. */
function field(column: Column) {
  return {
    name: column.name,
    type: column.kind === "number" ? "number" : column.kind === "date" ? "date" : "string",
    description: column.means,
    ...(column.unit === undefined ? {} : { unit: column.unit }),
    ...(column.required || column.choices
      ? {
        constraints: {
          ...(column.required ? { required: true } : {}),
          ...(column.choices ? { enum: column.choices } : {}),
        },
      }
      : {}),
  };
}

/** The session folder: text by name; another seed is another pair of evenings with the same foils. */
export function sessionFiles(seed: string = SEED): Map<string, string> {
  const runs = flownRuns(seed);
  const tables = [
    [DESIGNS_TABLE, designRows()],
    [GLIDES, runs.map((one) => one.row)],
    [CONDITIONS, conditionRows()],
    [INSTRUMENTS, instrumentRows()],
  ] as const;
  const files = new Map<string, string>();
  const traces = traceFiles(runs, seed);
  const resources = [
    ...tables.map(([contract, rows]) => ({ contract, ...table(contract, rows) })),
    ...[...traces].map(([file, text]) => {
      const contract = traceContract(file);
      return { contract, text, columns: contract.columns };
    }),
  ].map(({ contract, text, columns }) => {
    files.set(contract.file, text);
    return {
      name: contract.file.replace(".csv", "").replace("/", "-"),
      type: "table",
      path: contract.file,
      format: "csv",
      mediatype: "text/csv",
      encoding: "utf-8",
      description: contract.means,
      schema: {
        fields: columns.map(field),
        missingValues: [""],
        ...(contract.key === null ? {} : { primaryKey: [contract.key] }),
      },
    };
  });
  const descriptor = {
    $schema: "https://datapackage.org/profiles/2.0/datapackage.json",
    name: FOLDER,
    title: "Two evenings at Quillwater",
    description:
      "Invented. An evening class in boatbuilding glides three wings off a jetty: alder, birch and cedar. " +
      "Nobody measured this; data/generate-demo.ts computed it.",
    contract: CONTRACT,
    invented: true,
    resources,
  };
  files.set("datapackage.json", JSON.stringify(descriptor, null, 2) + "\n");
  return files;
}

/** What the runs' scatter and the instruments hide: each design flown without noise from the same launches. */
function truth() {
  const [evening, other] = EVENINGS;
  const rider = {
    ...evening!,
    rider: (evening!.rider + other!.rider) / 2,
    airDragArea: (evening!.airDragArea + other!.airDragArea) / 2,
    waterTemperature: (evening!.waterTemperature + other!.waterTemperature) / 2,
  };
  const digits = (value: number) => Number(value.toPrecision(5));
  const launches = [4.1, 4.2, 4.3, 4.4, 4.5].flatMap((launchSpeed) =>
    [0.16, 0.17, 0.18, 0.19].map((dropAtStall) => ({ launchSpeed, dropAtStall }))
  );
  const glides = DESIGNS.flatMap((design) => {
    // The same mass for all, so that only the foil differs.
    const pairing = pair({ ...design, mass: DESIGNS[0]!.mass }, rider);
    return launches.map((launch) => {
      const flown = flySink(pairing, {
        ...launch,
        launchDepth: LAUNCH_DEPTH,
        steepening: 0.8,
        mostDrop: Infinity,
      });
      return {
        design: design.name,
        launchSpeed: launch.launchSpeed,
        drop: launch.dropAtStall,
        distance: digits(flown.distance),
        endSpeed: digits(flown.endSpeed),
      };
    });
  });
  const baseline = glides.filter((one) => one.design === DESIGNS[0]!.name);
  const ratios = DESIGNS.slice(1).flatMap((design) =>
    glides.filter((one) => one.design === design.name).map((one, place) => ({
      baseline: DESIGNS[0]!.name,
      candidate: design.name,
      launchSpeed: one.launchSpeed,
      drop: one.drop,
      ratio: digits(one.distance / baseline[place]!.distance),
    }))
  );
  return {
    invented: true,
    what:
      "True distance of each design from a common launch, by integrating the equation of motion without noise; " +
      "speeds in m/s, lengths in m, mass in kg. Under best: lift-to-drag of the whole craft and its speed on a level course, " +
      "with the second evening's rider, at the mass and depth given there.",
    seed: SEED,
    mass: rider.rider + DESIGNS[0]!.mass,
    launchDepth: LAUNCH_DEPTH,
    ratios,
    glides,
    best: DESIGNS.map(bestOf),
  };
}

/** m of the wing under the surface: in the middle of a run. */
const TRACED_DEPTH = 0.4;

/** What the speed traces of the second evening are there to find. */
function bestOf(design: TrueDesign) {
  const { flown, around, drag } = pair(design, EVENINGS[1]!);
  const lift = weightInWater({
    mass: REFERENCE_MASS,
    wetVolume: wingVolume(design) + strutVolume(flown.craft.struts, TRACED_DEPTH),
    ...around,
  });
  const least = minimumBetween(
    (speed) => flown.dragFactor * drag(TRACED_DEPTH, { speed, weightInWater: lift }).total,
    { low: 3.2, high: 8 },
  );
  const digits = (value: number) => Number(value.toPrecision(5));
  return {
    design: design.name,
    mass: REFERENCE_MASS,
    depth: TRACED_DEPTH,
    liftToDrag: digits(lift / least.value),
    speed: digits(least.at),
  };
}

/**
 * Every file of the demo, by path below `data/`.
 *
 * @returns text by path
 */
export function demoFiles(): Map<string, string> {
  return withTruth(FOLDER, sessionFiles(), truth());
}

if (import.meta.main) await writeDemo(demoFiles(), Deno.args);
