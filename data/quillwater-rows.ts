/**
 * What the class at Quillwater, all invented, wrote of its designs, the water and its instruments.
 *
 * @module
 */
import { DESIGNS, EVENINGS, PLACE, wingVolume } from "./quillwater-craft.ts";
import { NOISE } from "./quillwater-session.ts";
import { ERRORS } from "./quillwater-tow-session.ts";

/** Rows as a table holds them: texts by column. */
export type Rows = readonly Readonly<Record<string, string>>[];
/** What the builders say of their designs: the drawing, not the truth. */
export function designRows(): Rows {
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

export function conditionRows(): Rows {
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

export function instrumentRows(): Rows {
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
