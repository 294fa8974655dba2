/**
 * Reads the data sets with certified answers.
 *
 * @module
 */
import type {
  CertifiedParameter,
  LinearCertifiedSet,
  NonlinearCertifiedSet,
} from "../base/certified-set.ts";
import { numberIn, readSharedTable, textIn, type TextRow } from "./shared-table.ts";

const ofSet = (rows: readonly TextRow[], set: string) => rows.filter((row) => row.set === set);

function dataOf(rows: readonly TextRow[]) {
  const predictors = ["x1", "x2", "x3", "x4", "x5", "x6"];
  return {
    observed: rows.map((row) => numberIn(row, "y")),
    predictors: rows.map((row) =>
      predictors.filter((name) => (row[name] ?? "") !== "").map((name) => numberIn(row, name))
    ),
  };
}

function parametersOf(rows: readonly TextRow[]): CertifiedParameter[] {
  return rows.map((row) => ({
    name: textIn(row, "parameter"),
    value: numberIn(row, "value"),
    standardError: numberIn(row, "standard_error"),
  }));
}

/**
 * The eleven linear sets of NIST's Statistical Reference Datasets.
 *
 * @returns sets in the order of `nist-linear-sets.csv`
 * @throws Error when a table is not there or a cell does not hold what its column promises
 */
export function readLinearCertifiedSets(): LinearCertifiedSet[] {
  const data = readSharedTable("nist-linear-data.csv");
  const certified = readSharedTable("nist-linear-certified.csv");
  return readSharedTable("nist-linear-sets.csv").map((row) => {
    const set = textIn(row, "set");
    const form = textIn(row, "form");
    if (form !== "polynomial" && form !== "through origin" && form !== "plane") {
      throw new Error(`Cannot read the certified sets as the form is unknown: ${form}`);
    }
    return {
      set,
      form,
      ...dataOf(ofSet(data, set)),
      parameters: parametersOf(ofSet(certified, set)),
      residualStandardDeviation: numberIn(row, "residual_standard_deviation"),
    };
  });
}

/**
 * The 27 nonlinear sets of NIST's Statistical Reference Datasets.
 *
 * @returns sets in the order of `nist-nonlinear-sets.csv`
 * @throws Error when a table is not there or a cell does not hold what its column promises
 */
export function readNonlinearCertifiedSets(): NonlinearCertifiedSet[] {
  const data = readSharedTable("nist-nonlinear-data.csv");
  const certified = readSharedTable("nist-nonlinear-certified.csv");
  return readSharedTable("nist-nonlinear-sets.csv").map((row) => {
    const set = textIn(row, "set");
    const response = textIn(row, "response");
    if (response !== "y" && response !== "ln(y)") {
      throw new Error(`Cannot read the certified sets as the response is unknown: ${response}`);
    }
    const rows = ofSet(certified, set);
    return {
      set,
      level: textIn(row, "level"),
      model: textIn(row, "model"),
      response,
      ...dataOf(ofSet(data, set)),
      parameters: parametersOf(rows),
      starts: [
        rows.map((one) => numberIn(one, "start1")),
        rows.map((one) => numberIn(one, "start2")),
      ],
      residualStandardDeviation: numberIn(row, "residual_standard_deviation"),
    };
  });
}
