/**
 * Tables of a tow's further views: the robust one beside the answer, and uncertainty by two ways.
 *
 * @module
 */
import type { Quantity } from "../base/quantity.ts";
import type { TableCell, TableRecord } from "../base/records.ts";
import { formatInterval, formatNumber, formatPercent, formatQuantity } from "../base/rounding.ts";
import { listInWords } from "../base/sentence-words.ts";
import type { TowBothWays, TowRobust } from "../base/tow-views.ts";
import type { TowEvidence } from "../decide/compare-tows.ts";
import { designCell, EMPTY_CELL, formattedCell, textCell } from "./table-cells.ts";
import { left, right } from "./table-columns.ts";

/** Value and interval in one cell, or the one end that is known. */
function wholeCell(q: Quantity | null): TableCell {
  if (q === null) return EMPTY_CELL;
  const interval = formatInterval(q, { unit: false });
  const text = q.kind === "interval"
    ? `${formatQuantity(q, { unit: false })} (${interval})`
    : interval;
  return formattedCell(text, q.value);
}

/**
 * The answer beside the robust view.
 *
 * @param evidence with `robust` asked for
 * @param name names the files; "tow-robust" unless said otherwise
 * @returns two rows a design that has both; none where it was not asked for
 */
export function towRobustTable({ designs }: TowEvidence, name = "tow-robust"): TableRecord {
  return {
    name,
    caption:
      "The answer, in which every reading counts as stated, beside the robust view, in which those far off the law count " +
      "for little. No reading is taken out of either.",
    columns: [
      left("design"),
      left("view"),
      right("best lift-to-drag"),
      right("at", "m/s"),
      left("counts for little (weight)"),
    ],
    rows: designs.flatMap(({ answer, name: own, place }) => {
      const { robust } = answer;
      if (robust === null) return [];
      const head = designCell(own, place);
      const down = robust.weightedDown.map((one) =>
        `${one.point} (${formatNumber(one.weight, 2)})`
      );
      const row = (
        view: string,
        one: Pick<TowRobust, "bestLiftToDrag" | "speedOfBestLiftToDrag">,
      ) => [
        head,
        textCell(view),
        wholeCell(one.bestLiftToDrag),
        wholeCell(one.speedOfBestLiftToDrag),
      ];
      return [
        [...row("answer", answer), textCell("")],
        [...row("robust", robust), textCell(down.length === 0 ? "none" : listInWords(down))],
      ];
    }),
  };
}

/**
 * Uncertainty by first order and by drawing every input, side by side.
 *
 * @param evidence with `draws` asked for
 * @param name names the files; "tow-two-ways" unless said otherwise
 * @returns two rows a design whose best speed was towed; none where it was not asked for
 */
export function towDrawnTable({ designs }: TowEvidence, name = "tow-two-ways"): TableRecord {
  const drawn = designs.flatMap(({ answer, name: own, place }) =>
    answer.byDrawing === null ? [] : [{ design: own, place, ...answer.byDrawing }]
  );
  const tolerances = drawn.map((one) => one.tolerance);
  const tolerance = tolerances.length === 0
    ? ""
    : ` They agree where the widths differ by no more than ${
      [
        ...new Set(
          [Math.min(...tolerances), Math.max(...tolerances)].map((one) => formatPercent(one)),
        ),
      ]
        .join(" to ")
    }, by the number of readings.`;
  const row = (
    { design, place }: { readonly design: string; readonly place: number },
    what: string,
    { firstOrder, drawn: other, widthRatio, agree }: TowBothWays,
  ): TableCell[] => {
    // Both to the decimals of the first, so that they can be compared.
    const like = { ...other, standardUncertainty: firstOrder.standardUncertainty };
    return [
      designCell(design, place),
      textCell(what),
      wholeCell(firstOrder),
      formattedCell(formatInterval(like, { unit: false }), other.high! - other.low!),
      formattedCell(formatNumber(widthRatio, 2), widthRatio),
      textCell(agree ? "yes" : "no"),
    ];
  };
  return {
    name,
    caption:
      `95\u00a0% intervals by first order and by ${
        drawn[0]?.draws ?? 0
      } draws of every input, without what single sweeps had of ` +
      `their own.${tolerance}`,
    columns: [
      left("design"),
      left("what"),
      right("first order"),
      right("by drawing"),
      right("width, times"),
      left("agree"),
    ],
    rows: drawn.flatMap((one) => [
      row(one, "best lift-to-drag", one.bestLiftToDrag),
      row(one, "its speed (m/s)", one.speedOfBestLiftToDrag),
    ]),
  };
}
