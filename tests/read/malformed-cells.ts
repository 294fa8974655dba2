/** Faults in single cells, by a name that reads on in a test. */
import type fc from "fast-check";
import { cellFault, type Fault, NUMBERS, oneOf } from "./malformed-fault.ts";

/** Faults in one cell of designs.csv or glides.csv. */
export const CELL_KINDS: Readonly<Record<string, fc.Arbitrary<Fault>>> = {
  "text in a number": cellFault(
    "not-a-number",
    NUMBERS,
    oneOf("fast", "12x", "1.2.3", "--4", "12e", "0x10", "½", "4,2,1", "1.5.", "four", "1 2", "٣"),
  ),
  "a number beyond all measure": cellFault(
    "not-a-number",
    NUMBERS,
    oneOf("NaN", "Infinity", "-inf", "1e999", "-1e999", `${"9".repeat(400)}`),
  ),
  "a failed formula": cellFault(
    "spreadsheet-error",
    NUMBERS,
    oneOf("#VALUE!", "#DIV/0!", "#N/A", "#REF!", "Err:502", "#WERT!"),
  ),
  "a formula": cellFault("not-a-number", NUMBERS, oneOf("=1+1", "=SUM(A1:A3)", "@x", "+cmd|x")),
  "a unit in the cell": cellFault(
    "unit-in-cell",
    ["launch_speed", "end_speed"],
    oneOf("14 km/h", "8kn", "4.2 m/s", "10 mph"),
  ),
  "a negative length, speed or mass": cellFault(
    "impossible-value",
    [
      "launch_speed",
      "end_speed",
      "distance",
      "duration",
      "carried_mass",
      "depth",
      "span",
      "area",
      "wet_volume",
    ],
    oneOf("-1", "-0.5", "−4", "-31.5"),
  ),
  "a speed of 200 km/h": cellFault(
    "impossible-value",
    ["launch_speed", "end_speed"],
    oneOf("55.6", "200", "26"),
  ),
  "a zero that can't be": cellFault("impossible-value", [
    "distance",
    "launch_speed",
    "area",
    "span",
  ], oneOf("0", "0.0", "-0")),
  "a mark for nothing": cellFault(
    "empty-mark",
    ["end_speed", "drop", "depth", "wet_volume"],
    oneOf("-", "n/a", "?", "N/A", "–"),
  ),
  "an unknown word where some may stand": cellFault(
    "unknown-choice",
    ["ended", "section"],
    oneOf("staled?", "crashed", "yes", "3"),
  ),
  "a day that is none": cellFault(
    "not-a-date",
    ["date"],
    oneOf("yesterday", "31.02.2031", "2031-13-01", "14 June", "45000"),
  ),
  "a day that may be two": cellFault(
    "ambiguous-date",
    ["date"],
    oneOf("05/06/2031", "1/2/2031", "11-12-2031"),
  ),
  "a number that can be read two ways": cellFault(
    "ambiguous-number",
    NUMBERS,
    oneOf("1,234", "12,500"),
  ),
  "another decimal mark": cellFault("other-decimal-mark", NUMBERS, oneOf("4,25", "0,5", "1.234,5")),
  "an empty needed cell": cellFault("empty-cell", ["run", "span", "area"], oneOf("", "  ")),
  "an empty measurement": cellFault(
    "not-measured",
    ["distance", "launch_speed"],
    oneOf("", " ", "\u00a0"),
  ),
  "an unknown design": cellFault(
    "unknown-design",
    ["design"],
    oneOf("cedar", "aldr", "<script>", "alder 2"),
  ),
  "an unnamed design": cellFault("empty-cell", ["design"], oneOf("", " ")),
};
