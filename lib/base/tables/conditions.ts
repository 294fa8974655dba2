import { choice, type Column, note, number, type TableContract, text } from "./column.ts";

/** `conditions.csv`: water, day, and the comparison's own settings. */
export const CONDITIONS: TableContract = {
  file: "conditions.csv",
  key: null,
  means: "Water, day, and what the comparison should assume: one row a quantity.",
  columns: [
    text("quantity", "What it is, from the list in the glossary.", true),
    { name: "value", kind: "number", required: true, means: "Its value." },
    text("unit", "Unit of value and uncertainty."),
    { name: "uncertainty", kind: "number", required: false, means: "How well it is known." },
    choice("stated_as", ["standard", "95 %", "limits"], "How the uncertainty is meant."),
    text("block", "Block it holds for; empty means all."),
    note,
  ],
};

/** Quantities that `conditions.csv` may state, with dimension and default unit. */
export const CONDITION_QUANTITIES: readonly Column[] = [
  number("water_temperature", "temperature", "degC", "Temperature of the water."),
  number("salinity", "salinity", "g/kg", "Salt in the water; 0 for fresh."),
  number("latitude", "angle", "deg", "Latitude, for gravity."),
  number("altitude", "length", "m", "Height above the sea, for gravity and air."),
  number("running_depth", "length", "m", "Usual depth of the wing where no run has its own."),
  number("wind_speed", "speed", "m/s", "Wind."),
  number("air_drag_area", "area", "m2", "Drag area of rider and board in the air, where measured."),
  number(
    "current",
    "speed",
    "m/s",
    "Current along the course, by a drifting float; above zero where it carries passes marked down along.",
  ),
  number("carried_mass", "mass", "kg", "All that flies, where no run has its own."),
  number("drop", "length", "m", "Height lost in a run, where no run has its own."),
  number("reference_launch_speed", "speed", "m/s", "Launch speed to compare at."),
  number("reference_drop", "length", "m", "Height used to compare at."),
  number("reference_mass", "mass", "kg", "Mass to compare at."),
];
