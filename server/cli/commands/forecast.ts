import type { Forecast, HolidayAhead } from "#engine/demand/forecast.ts";
import { holidayWords } from "#engine/demand/holiday-words.ts";
import { weekdayOf } from "#engine/time.ts";
import { type Report, section } from "#server/cli/output.ts";
import type { CommonOptions } from "#server/cli/program.ts";
import { withWorld } from "#server/cli/session.ts";
import { numberText } from "#server/cli/table.ts";
import { readCount, readDate } from "#server/reading.ts";
import { forecastFor } from "#server/reports/forecast.ts";

type ForecastOptions = CommonOptions & { from?: string; days?: string; asOf?: string; item?: boolean };

export async function forecastCommand(options: ForecastOptions) {
  const choice = {
    from: options.from === undefined ? undefined : readDate(options.from, "--from"),
    days: options.days === undefined ? undefined : readCount(options.days, "--days"),
    asOf: options.asOf === undefined ? undefined : readDate(options.asOf, "--as-of"),
    byItem: options.item ?? false,
  };
  return withWorld(options, async (world) => forecastView(await forecastFor(world, choice), choice.byItem));
}

function forecastView(report: Forecast, byItem: boolean): Report {
  const digits = byItem ? 0 : 1;
  return {
    json: report,
    head: [
      `Forecast as known before ${report.asOf}. ${backtestText(report)}`,
      ...report.holidays.map(holidayText),
      ...report.out.map(outText),
    ],
    sections: [
      section({
        columns: [
          { head: "date", cell: (row) => `${weekdayOf(row.date)} ${row.date}` },
          { head: byItem ? "item" : "drink", cell: (row) => row.what },
          { head: byItem ? "mean" : "serves", cell: (row) => row.mean, digits },
          { head: "±", cell: (row) => row.sd, digits },
          { head: "5 %", cell: (row) => row.q05, digits },
          { head: "10 %", cell: (row) => row.q10, digits },
          { head: "50 %", cell: (row) => row.q50, digits },
          { head: "90 %", cell: (row) => row.q90, digits },
          { head: "95 %", cell: (row) => row.q95, digits },
        ],
        rows: report.days,
        empty: "There are no sales to forecast from yet.",
      }),
    ],
  };
}

function outText({ item, from, until, drinks }: Forecast["out"][number]): string {
  return `${item} was out by the count from ${from} until ${until}: that ${drinks.join(", ")} did not sell says nothing of what was wanted.`;
}

function holidayText(day: HolidayAhead): string {
  return `${weekdayOf(day.date)} ${day.date}, ${holidayWords(day)}.`;
}

function backtestText({ backtest }: Forecast): string {
  const { wape, wapeSameWeekday, coverage90, days } = backtest;
  if (wape === null || wapeSameWeekday === null || coverage90 === null)
    return "Too few days to say how good such forecasts were.";
  return (
    `Over the last ${days} days such forecasts were off by ${numberText(wape * 100, 1)} % ` +
    `(the same-weekday mean: ${numberText(wapeSameWeekday * 100, 1)} %), and the 90 % band held ${numberText(coverage90 * 100, 0)} % of days.`
  );
}
