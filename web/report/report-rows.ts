import { shownWord } from "../book-words.ts";
import { fileCell } from "../parts/table-text.ts";
import { say } from "../texts/say.ts";
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
  const figures = say("report.figures");
  return [
    [
      say("report.section"),
      say("report.what"),
      say("report.amount"),
      say("variance.standardUncertainty"),
      say("report.note"),
    ],
    row(
      say("report.period"),
      say("report.fromTo", { from: report.from, to: report.to }),
      null,
      null,
      report.caution,
    ),
    row(figures, say("variance.usedCost"), totals.usedCost, null),
    row(figures, say("report.bySpecs"), totals.expectedCost, null),
    row(figures, say("variance.unexplained"), totals.unexplainedCost, totals.unexplainedCostSd),
    row(figures, say("variance.sales"), totals.sales, null),
    row(figures, say("report.pourCostPct"), totals.pourCostPct, null),
    row(figures, say("report.specCostPct"), report.specCostPct, null),
    ...periods.map(({ to, cost, sd }) => row(say("report.periods"), to, cost, sd)),
    ...checks.map(({ kind, what, items, cost, check, rivals }) => {
      const names = items.length > 0 ? items : [what].flat();
      const others = rivals.length === 0 ? "" : ` ${rivalWords(rivals)}`;
      return row(say("report.toCheck"), `${kind}: ${names.join(", ")}`, cost, null, `${check}${others}`);
    }),
    ...settled.map(({ answer, cause, words, settledAt }) =>
      row(
        answer === "confirmed" ? say("variance.settled") : say("variance.refute"),
        `${cause.kind}: ${[cause.what].flat().join(", ")}`,
        cause.size,
        null,
        `${settledAt.slice(0, 10)} ${cause.unit}. ${words ?? ""}`.trim(),
      ),
    ),
    ...where.categories.map(({ name, cost, sd }) =>
      row(say("variance.byCategory"), shownWord("category", name), cost, sd),
    ),
    ...where.areas.map(({ name, cost, sd }) => row(say("variance.byArea"), name, cost, sd)),
    ...where.drinks.map(({ drink, serves, sd }) =>
      row(say("report.misfits"), drink, serves, sd, say("report.serves")),
    ),
  ];
}
