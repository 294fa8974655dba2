import { choice, note, number, type TableContract, text } from "./column.ts";

/** `designs.csv`: what was built. */
export const DESIGNS: TableContract = {
  file: "designs.csv",
  key: "design",
  means: "What was built: one row a design.",
  columns: [
    text("design", "Name of the design.", true),
    number("span", "length", "m", "Tip to tip, projected.", true),
    number("area", "area", "m2", "Projected area of the wing.", true),
    number("wet_volume", "volume", "l", "Water pushed aside by wing and struts at running depth."),
    number("thickness_ratio", "ratio", "1", "Largest thickness over chord of the wing section."),
    choice("section", ["symmetric", "cambered"], "Kind of wing section."),
    number("largest_lift_coefficient", "ratio", "1", "Lift coefficient at which the wing stalls."),
    number("strut_count", "ratio", "1", "How many struts (masts) go through the surface."),
    number("strut_chord", "length", "mm", "Chord of a strut."),
    number("strut_thickness", "length", "mm", "Thickness of a strut."),
    number("strut_length", "length", "m", "From wing to board."),
    number("board_draught", "length", "m", "How deep the board floats."),
    number("extra_drag_area", "area", "m2", "Drag area of anything else under water."),
    note,
  ],
};
