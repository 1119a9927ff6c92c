import { shortageCost, type Wanted } from "#engine/orders/budget.ts";
import { MOST_DAYS_BOUGHT } from "#engine/orders/purchase.ts";

/** A solver of integer programmes in CPLEX LP text, as HiGHS; handed in, for loading one is not arithmetic. */
export type Solver = {
  solve(
    problem: string,
    options?: { mip_rel_gap?: number; time_limit?: number },
  ): { Status: string; Columns: Record<string, { Index: number; Primal?: number }> };
};

/** The least a supplier delivers, in major units and cases. */
export type Minimum = { value: number; cases: number };

/** More units of one line than this are not looked at beyond what par asks for. */
const MOST_EXTRA_UNITS = 12;
const SECONDS = 10;

/**
 * Spends a budget at the least expected cost of running short, each supplier's order at or above its minimum or
 * not placed at all: an integer programme, one yes or no a unit and a supplier.
 *
 * Units beyond par may fill a minimum where they would be used within two months. Units without a price count
 * nothing against the budget. Undefined when the solver finds no answer in its time.
 */
export function solveBudget(
  wanted: readonly Wanted[],
  {
    budget,
    minimums,
    keepsDays,
    solver,
  }: {
    budget: number;
    minimums: ReadonlyMap<string, Minimum>;
    keepsDays: (item: string) => number;
    solver: Solver;
  },
): number[] | undefined {
  const units = wanted.flatMap((want, line) => unitsOf(want, line, keepsDays(want.position.item)));
  if (units.length === 0) return wanted.map(() => 0);
  const { Status, Columns } = solver.solve(problemText(units, budget, minimums), {
    mip_rel_gap: 0,
    time_limit: SECONDS,
  });
  if (Status !== "Optimal") return undefined;
  const quantities = wanted.map(() => 0);
  for (const { name, line } of units) {
    if ((Columns[name]?.Primal ?? 0) > 0.5) quantities[line] = (quantities[line] ?? 0) + 1;
  }
  return quantities;
}

/** The next unit of a line: what it costs, and what shortage it saves on top of those before it. */
type Unit = { name: string; line: number; supplier: string; price: number; cases: number; saved: number };

function unitsOf(want: Wanted, line: number, keepsDays: number): Unit[] {
  const { position, unit, quantity, perDay } = want;
  const room = perDay * Math.min(MOST_DAYS_BOUGHT, keepsDays) - position.onHand - position.onOrder;
  const extra = Math.min(MOST_EXTRA_UNITS, Math.floor(room / unit.size) - quantity);
  const most = quantity + (unit.price === null ? 0 : Math.max(0, extra));
  let savedBefore = Number.POSITIVE_INFINITY;
  return Array.from({ length: most }, (_, index) => {
    const saved = shortageCost(want, index) - shortageCost(want, index + 1);
    // Held from rising, so that the first units of a line are the first to be bought.
    savedBefore = Math.min(savedBefore, Math.max(0, saved));
    return {
      name: `x${line}_${index}`,
      line,
      supplier: unit.pack.supplier ?? "",
      price: unit.price ?? 0,
      cases: unit.cases,
      saved: savedBefore,
    };
  });
}

function problemText(units: readonly Unit[], budget: number, minimums: ReadonlyMap<string, Minimum>): string {
  const suppliers = [...new Set(units.map(({ supplier }) => supplier))];
  const most = Math.max(1e-12, ...units.map(({ saved }) => saved));
  // A unit that saves nothing is bought only to reach a minimum.
  const worth = units.map(({ name, saved, price }) => term((saved / most) * 1000 - price * 1e-6, name));
  const rules = suppliers.flatMap((supplier, index) => {
    const own = units.filter((unit) => unit.supplier === supplier);
    const { value, cases } = minimums.get(supplier) ?? { value: 0, cases: 0 };
    const placed = `y${index}`;
    return [
      `${own.map(({ name }) => term(1, name)).join(" ")} ${term(-own.length, placed)} <= 0`,
      ...(value > 0
        ? [`${own.map((u) => term(u.price, u.name)).join(" ")} ${term(-value, placed)} >= 0`]
        : []),
      ...(cases > 0
        ? [`${own.map((u) => term(u.cases, u.name)).join(" ")} ${term(-cases, placed)} >= 0`]
        : []),
    ];
  });
  return [
    "Maximize",
    ` worth: ${worth.join(" ")}`,
    "Subject To",
    ` budget: ${units.map(({ name, price }) => term(price, name)).join(" ")} <= ${budget.toFixed(6)}`,
    ...rules.map((rule, index) => ` rule${index}: ${rule}`),
    "Binary",
    ` ${[...units.map(({ name }) => name), ...suppliers.map((_, index) => `y${index}`)].join(" ")}`,
    "End",
  ].join("\n");
}

function term(factor: number, name: string): string {
  return `${factor < 0 ? "-" : "+"} ${Math.abs(factor).toFixed(9)} ${name}`;
}
