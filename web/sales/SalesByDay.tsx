import { useQuery } from "@tanstack/react-query";
import { useCallback, useState } from "react";
import { formatDate, formatNumber } from "../format.ts";
import { formatMoney } from "../money.ts";
import { Chart, type PlotOptions } from "../parts/Chart.tsx";
import { DataTable } from "../parts/DataTable.tsx";
import { Select } from "../parts/Field.tsx";
import type { Column } from "../parts/table-column.ts";
import { useVenue } from "../shell/venue.tsx";
import { say } from "../texts/say.ts";
import { daysQuery, type SalesDay } from "./sales-queries.ts";

type PlotModule = typeof import("@observablehq/plot");

const SPANS = [
  { value: "28", text: "sales.fourWeeks" },
  { value: "91", text: "sales.thirteenWeeks" },
  { value: "100000", text: "sales.allDays" },
] as const;

/** What was sold by business day, as bars and as a table. */
export function SalesByDay() {
  const { currency } = useVenue();
  const { data: all } = useQuery(daysQuery);
  const [span, setSpan] = useState("28");
  const days = all?.slice(-Number(span)) ?? [];
  const key = `${span} ${all?.length} ${all?.at(-1)?.date}`;
  // biome-ignore lint/correctness/useExhaustiveDependencies: the key stands for the days, which are cut anew at each render
  const draw = useCallback(
    (plot: PlotModule, width: number) => bars(plot, width, days, currency),
    [key, currency],
  );
  if (all === undefined || all.length === 0) return null;
  const net = days.reduce((sum, day) => sum + day.net, 0);
  return (
    <section>
      <div className="days-head">
        <h2>{say("sales.byDay")}</h2>
        <Select
          label={say("sales.shown")}
          options={SPANS.map(({ value, text }) => ({ value, label: say(text) }))}
          value={span}
          onChange={(event) => setSpan(event.target.value)}
        />
      </div>
      <Chart
        caption={say("sales.chart", {
          money: formatMoney(net, currency, { whole: true }),
          count: days.length,
        })}
        draw={draw}
        table={
          <DataTable
            caption={say("sales.dayTable")}
            columns={dayColumns(currency)}
            rows={days}
            rowKey={({ date }) => date}
            fileName="sales by day"
            initialSort={{ key: "date", isDescending: true }}
          />
        }
      />
    </section>
  );
}

function bars(plot: PlotModule, width: number, days: readonly SalesDay[], currency: string): PlotOptions {
  const rows = days.map((day) => ({ ...day, day: new Date(`${day.date}T00:00:00Z`) }));
  const isWeekend = ({ day }: { day: Date }) => [0, 5, 6].includes(day.getUTCDay());
  return {
    height: Math.min(240, Math.max(160, width / 3)),
    marginLeft: 52,
    x: { label: null, type: "utc", domain: domainOf(rows.map(({ day }) => day)) },
    y: {
      label: null,
      grid: true,
      ticks: 4,
      tickFormat: (net: number) => formatMoney(net, currency, { whole: true }),
    },
    marks: [
      plot.rectY(rows, {
        x: "day",
        interval: "day",
        y: "net",
        insetLeft: 0.5,
        insetRight: 0.5,
        fill: (row: (typeof rows)[number]) => (isWeekend(row) ? "var(--stock)" : "var(--stock-band)"),
        title: (row: (typeof rows)[number]) =>
          say("sales.daySold", {
            date: formatDate(row.date),
            money: formatMoney(row.net, currency),
            quantity: formatNumber(row.quantity),
          }),
      }),
      plot.ruleY([0], { stroke: "var(--rule-strong)" }),
    ],
  };
}

const DAY_MS = 86_400_000;
const FEWEST_DAYS = 14;

/** From the first day to the end of the last; a young book's few days stand at the end of two weeks, as bars and not as a wall. */
function domainOf(days: readonly Date[]): [Date, Date] {
  const end = (days.at(-1)?.getTime() ?? 0) + DAY_MS;
  const begin = Math.min(days[0]?.getTime() ?? 0, end - FEWEST_DAYS * DAY_MS);
  return [new Date(begin), new Date(end)];
}

function dayColumns(currency: string): Column<SalesDay>[] {
  return [
    {
      key: "date",
      head: say("sales.businessDay"),
      kind: "text",
      onPhone: "lead",
      value: ({ date }) => date,
      show: ({ date }) => formatDate(date),
    },
    { key: "quantity", head: say("sales.sold"), kind: "number", value: ({ quantity }) => quantity },
    {
      key: "net",
      head: say("sales.net"),
      kind: "number",
      onPhone: "main",
      value: ({ net }) => net,
      show: ({ net }) => formatMoney(net, currency),
    },
  ];
}
