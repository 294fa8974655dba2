import { choice, type TableContract, text } from "./column.ts";

/** `instruments.csv`: how well each column is known. */
export const INSTRUMENTS: TableContract = {
  file: "instruments.csv",
  key: null,
  means: "How well each column is known; several rows for one column add up.",
  columns: [
    text("quantity", "A column of glides.csv or tow.csv.", true),
    text("instrument", "What it was measured with."),
    { name: "uncertainty", kind: "number", required: true, means: "Half width or standard." },
    text("unit", "Unit of the uncertainty, or %."),
    choice("stated_as", ["standard", "95 %", "limits"], "How the uncertainty is meant."),
    choice("kind", ["independent", "common"], "Differs from run to run, or shared by all."),
    text("how", "How you know."),
  ],
};
