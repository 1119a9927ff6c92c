import { fileCell } from "../parts/table-text.ts";
import { rivalWords } from "./check-words.ts";
import type { OwnerReport } from "./query.ts";

/** The page as rows of a file: section, what, amount, ±, note. Money in major units. */
export function reportRows(report: OwnerReport): string[][] {
  const { totals, periods, checks, settled, where } = report;
  const row = (section: string, what: string, amount: number | null, sd: number | null, note = "") => [
    fileCell("text", section),
    fileCell("text", what),
    fileCell("number", amount),
    fileCell("number", sd),
    fileCell("text", note),
  ];
  return [
    ["Section", "What", "Amount", "Standard uncertainty", "Note"],
    row("Period", `${report.from} to ${report.to}`, null, null, report.caution),
    row("Figures", "Cost of drink used", totals.usedCost, null),
    row("Figures", "Cost by the specs", totals.expectedCost, null),
    row("Figures", "Unexplained", totals.unexplainedCost, totals.unexplainedCostSd),
    row("Figures", "Sales", totals.sales, null),
    row("Figures", "Pour cost, % of sales", totals.pourCostPct, null),
    row("Figures", "Spec cost, % of sales", report.specCostPct, null),
    ...periods.map(({ to, cost, sd }) => row("Unexplained so far", to, cost, sd)),
    ...checks.map(({ kind, what, items, cost, check, rivals }) => {
      const names = items.length > 0 ? items : [what].flat();
      const others = rivals.length === 0 ? "" : ` ${rivalWords(rivals)}`;
      return row("To check", `${kind}: ${names.join(", ")}`, cost, null, `${check}${others}`);
    }),
    ...settled.map(({ answer, cause, words, settledAt }) =>
      row(
        answer === "confirmed" ? "Settled" : "It was not",
        `${cause.kind}: ${[cause.what].flat().join(", ")}`,
        cause.size,
        null,
        `${settledAt.slice(0, 10)} ${cause.unit}. ${words ?? ""}`.trim(),
      ),
    ),
    ...where.categories.map(({ name, cost, sd }) => row("By category", name, cost, sd)),
    ...where.areas.map(({ name, cost, sd }) => row("By area", name, cost, sd)),
    ...where.drinks.map(({ drink, serves, sd }) =>
      row("Drinks that do not fit", drink, serves, sd, "serves"),
    ),
  ];
}
