import type { Solver } from "#engine/orders/solve-budget.ts";

let loading: Promise<Solver> | undefined;

/** HiGHS, loaded at the first need and once: its machine code takes longer to start than most orders to reckon. */
export function integerSolver(): Promise<Solver> {
  loading ??= load();
  return loading;
}

async function load(): Promise<Solver> {
  const { default: highs } = await import("highs");
  // The package's types are those of its CommonJS build, its import is the function itself.
  return (highs as unknown as typeof highs.default)();
}
