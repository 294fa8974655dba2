/**
 * Published values beside ours, as tables.
 *
 * @module
 */
import type { TableCell, TableRecord } from "../base/records.ts";
import { unitText } from "../base/rounding.ts";
import type { CheckResult } from "../decide/published-check.ts";
import { formattedCell, numberCell, textCell } from "./table-cells.ts";
import { left, right } from "./table-columns.ts";

/** A number with the digits that a reader can compare: as many as the tolerance leaves, and one more. */
function digits(value: number | null, tolerance: number): TableCell {
  if (value === null) return textCell("none");
  const size = Math.abs(value);
  const needed = size > 0 && tolerance > 0 ? Math.ceil(Math.log10(size / tolerance)) + 1 : 6;
  const text = String(Number(value.toPrecision(Math.min(12, Math.max(4, needed)))));
  return formattedCell(text.replace("-", "\u2212"), value);
}

/** Inputs as people read them: `degrees_of_freedom=5` as "degrees of freedom 5", a long list by its length. */
function inputWords(inputs: string): string[] {
  return inputs.split(";").map((part) => part.trim()).filter((part) => part !== "").map((part) => {
    const [name = "", value = ""] = part.split("=").map((one) => one.trim());
    const count = value.split(/\s+/).length;
    return `${name.replaceAll("_", " ")} ${
      count > 4 ? `of ${count} values` : value.replaceAll("-", "\u2212")
    }`;
  });
}

/**
 * The results of one topic.
 *
 * @param topic as in the published values
 * @param results of `runPublishedChecks`; only those of the topic are shown
 * @returns one row a value: what, published, ours, difference over tolerance, source
 */
export function publishedTable(topic: string, results: readonly CheckResult[]): TableRecord {
  const own = results.filter((one) => one.topic === topic);
  const agreeing = own.filter((one) => one.agrees).length;
  return {
    name: `published-${topic.replace(/\W+/g, "-")}`,
    caption:
      `${topic[0]!.toUpperCase()}${
        topic.slice(1)
      }: ${agreeing} of ${own.length} values agree within the ` +
      "tolerance that the source's digits leave. The last number is our difference over that tolerance: within one is agreement.",
    columns: [
      left("what"),
      right("published"),
      right("ours"),
      left("unit"),
      right("difference", "of tolerance"),
      left("source"),
    ],
    rows: own.map((one) => [
      textCell(
        [one.check.replaceAll("-", " "), one.quantity, ...inputWords(one.inputs)].filter((part) =>
          part !== ""
        )
          .join(", "),
      ),
      digits(one.published, one.tolerance),
      digits(one.ours, one.tolerance),
      textCell(unitText(one.unit)),
      one.difference === null
        ? textCell(one.reason ?? "refused")
        : numberCell(one.difference / one.tolerance, 2),
      textCell(
        one.certainty === "confirmed" || one.source.endsWith(`(${one.certainty})`)
          ? one.source
          : `${one.source} (${one.certainty})`,
      ),
    ]),
  };
}
