import { currencyDigits } from "#engine/currency.ts";
import type { AsSafe } from "#engine/orders/replay.ts";
import type { ReplayFigures } from "#engine/orders/replay-policy.ts";
import { type Report, section } from "#server/cli/output.ts";
import type { CommonOptions } from "#server/cli/program.ts";
import { withWorld } from "#server/cli/session.ts";
import { numberText } from "#server/cli/table.ts";
import { readCount } from "#server/reading.ts";
import { type ReplayReport, replayFor } from "#server/reports/replay.ts";

/** `ullage order --replay`: what the settings would have done over the last weeks. */
export async function replayCommand(options: CommonOptions & { weeks?: string }) {
  const weeks = options.weeks === undefined ? undefined : readCount(options.weeks, "--weeks");
  return withWorld(options, async (world) => replayView(await replayFor(world, { weeks })));
}

type Row = { way: string } & ReplayFigures;

function replayView(report: ReplayReport): Report {
  const { currency, planned, handSet, twoWeeks } = report;
  const digits = currencyDigits(currency);
  const rows: Row[] = [
    { way: "as the book is set", ...planned },
    ...(handSet === null ? [] : [{ way: `with ${handSet.given} pars set by hand`, ...handSet }]),
    { way: "pars of two weeks' use", ...twoWeeks },
    ...report.curve.map((point) => ({
      way: `all at ${numberText(point.serviceLevel * 100, 1)} %`,
      ...point,
    })),
    ...report.worthCurve.map((point) => ({
      way: `a night out worth ${numberText(point.nightWorth, digits)} ${currency}`,
      ...point,
    })),
  ];
  return {
    json: report,
    head: [
      `Ordered anew from ${report.from} to ${report.to}, ${report.items} items, each order knowing only the weeks before it.`,
      `With these settings over these weeks: ${figures(planned, report)}; ${
        handSet === null ? "" : `with your hand-set pars: ${figures(handSet, report)}; `
      }with pars of two weeks' use: ${figures(twoWeeks, report)}.`,
      asSafeWords(report),
    ],
    sections: [
      section<Row>({
        columns: [
          { head: "way of ordering", cell: (row) => row.way },
          { head: "item-nights out", cell: (row) => row.itemNightsOut, digits: 0 },
          { head: `${currency} in stock`, cell: (row) => row.stockMoney, digits },
          { head: `${currency} past date`, cell: (row) => row.spoiltMoney, digits },
          { head: "ran out most", cell: (row) => outWords(row) },
        ],
        rows,
        notes: [
          "An item-night out is a night on which one item did not last. Supplier minimums are left aside, and deliveries come on their day.",
          "Two weeks' use is that of these very weeks, which nobody knew beforehand; dates on what spoils are looked at in all the other ways.",
        ],
      }),
    ],
  };
}

function figures({ itemNightsOut, stockMoney }: ReplayFigures, { currency }: ReplayReport): string {
  const nights = `${itemNightsOut} ${itemNightsOut === 1 ? "item-night" : "item-nights"} out`;
  return `${nights}, ${numberText(stockMoney, 0)} ${currency} in stock on average`;
}

function asSafeWords(report: ReplayReport): string {
  const { asSafe } = report;
  if (asSafe === null)
    return "Too few weeks to choose a level on the earlier ones and try it on the later, or none is as safe as two weeks' use.";
  return (
    `The least money for as few nights out as two weeks' use, chosen before ${asSafe.triedFrom}: ${wayWords(asSafe, report.currency)}. ` +
    `Tried from then on: ${figures(asSafe.tried, report)}; with these settings: ${figures(asSafe.planned, report)}; ` +
    `two weeks' use: ${figures(asSafe.twoWeeks, report)}.`
  );
}

function wayWords({ serviceLevel, nightWorth }: AsSafe, currency: string): string {
  if (serviceLevel !== null) return `all items at ${numberText(serviceLevel * 100, 1)} %`;
  return `each item at its own level (--json lists them), a night out being worth ${nightWorth} ${currency}`;
}

function outWords({ out }: ReplayFigures): string {
  return out
    .slice(0, 2)
    .map(({ item, nights }) => `${item} (${nights})`)
    .join(", ");
}
