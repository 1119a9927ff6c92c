import { shownWord } from "../book-words.ts";
import type { Measuring } from "../format.ts";
import { fileCell } from "../parts/table-text.ts";
import { say } from "../texts/say.ts";
import { settledWords } from "../variance/cause-words.ts";
import { checkSentence, rivalWords } from "./check-words.ts";
import type { OwnerReport } from "./query.ts";

/** The page as rows of a file: section, what, amount, ±, note. Money in major units. */
export function reportRows(report: OwnerReport, venue: Measuring): string[][] {
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
    ...checks.map((one) => {
      const others = one.rivals.length === 0 ? "" : ` ${rivalWords(one.rivals)}`;
      const note = `${one.check}${others}`;
      return row(say("report.toCheck"), checkSentence(one, venue), one.cost, null, note);
    }),
    ...settled.map((one) =>
      row(say("report.settled"), settledWords(one, venue), null, null, one.settledAt.slice(0, 10)),
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
