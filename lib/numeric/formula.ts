/**
 * Reads an arithmetic formula from text, so that a published model can stand in a table and still be computed with.
 *
 * Plain arithmetic: `+ - * / **`, brackets, numbers, `pi`, the functions exp, log, sqrt, sin, cos, atan, and the names it is
 * told. `-x**2` is `-(x**2)`.
 *
 * @module
 */
import type { Arithmetic } from "./dual.ts";

/** A formula that can be computed in any arithmetic. */
export type Formula = <N>(n: Arithmetic<N>, values: readonly N[]) => N;

const FUNCTIONS = ["exp", "log", "sqrt", "sin", "cos", "atan"] as const;
type FunctionName = typeof FUNCTIONS[number];
type Operation = "add" | "subtract" | "multiply" | "divide" | "power";

const binary = (operation: Operation, a: Formula, b: Formula): Formula => (n, values) =>
  n[operation](a(n, values), b(n, values));

/**
 * Reads a formula.
 *
 * @param text such as `b1*(1 - exp(-b2*x))`
 * @param names the variables, in the order in which values will be given
 * @returns the formula
 * @throws SyntaxError when the text is not a formula in these names
 * @example
 * ```ts
 * import { parseFormula } from "lakeproof/numeric/formula.ts";
 * import { PLAIN } from "lakeproof/numeric/dual.ts";
 * const square = parseFormula("-(a - x)**2", ["a", "x"]);
 * if (square(PLAIN, [1, 4]) !== -9) throw new Error("misread");
 * ```
 */
export function parseFormula(text: string, names: readonly string[]): Formula {
  const tokens = text.match(/\d+\.?\d*(?:[eE][-+]?\d+)?|[A-Za-z]\w*|\*\*|\S/g) ?? [];
  let at = 0;
  const wrong = (): never => {
    const found = tokens[at] ?? "its end";
    throw new SyntaxError(`Cannot read the formula "${text}" at part ${at + 1}: ${found}`);
  };
  const take = (token: string): boolean => {
    if (tokens[at] !== token) return false;
    at++;
    return true;
  };

  const atom = (): Formula => {
    if (take("(")) {
      const inner = sum();
      if (!take(")")) wrong();
      return inner;
    }
    const token = tokens[at] ?? wrong();
    if (/^\d/.test(token)) {
      at++;
      const value = Number(token);
      return (n) => n.constant(value);
    }
    const name = FUNCTIONS.find((one): one is FunctionName => one === token);
    if (name !== undefined) {
      at++;
      if (tokens[at] !== "(") wrong();
      const inner = atom();
      return (n, values) => n[name](inner(n, values));
    }
    if (take("pi")) return (n) => n.constant(Math.PI);
    const index = names.indexOf(token);
    if (index < 0) wrong();
    at++;
    return (_n, values) => values[index]!;
  };
  const power = (): Formula => {
    const base = atom();
    return take("**") ? binary("power", base, signed()) : base;
  };
  const signed = (): Formula => {
    if (!take("-")) return power();
    const inner = signed();
    return (n, values) => n.subtract(n.constant(0), inner(n, values));
  };
  const product = (): Formula => {
    let left = signed();
    for (;;) {
      if (take("*")) left = binary("multiply", left, signed());
      else if (take("/")) left = binary("divide", left, signed());
      else return left;
    }
  };
  const sum = (): Formula => {
    let left = product();
    for (;;) {
      if (take("+")) left = binary("add", left, product());
      else if (take("-")) left = binary("subtract", left, product());
      else return left;
    }
  };

  const formula = sum();
  if (at < tokens.length) wrong();
  return formula;
}
