import "./forecast.css";
import { useQuery } from "@tanstack/react-query";
import { useCallback, useState } from "react";
import { formatDate, formatNumber } from "../format.ts";
import { Busy } from "../parts/Busy.tsx";
import { Chart, type PlotOptions } from "../parts/Chart.tsx";
import { Combobox } from "../parts/Combobox.tsx";
import { DataTable } from "../parts/DataTable.tsx";
import { Problems } from "../parts/Problems.tsx";
import type { Column } from "../parts/table-column.ts";
import { type PastDay, pastForecastQuery } from "./forecast-queries.ts";

type PlotModule = typeof import("@observablehq/plot");

/** Forecast against fact, of all drinks together or of one. */
export function PastForecast({ drinks }: { drinks: readonly string[] }) {
  const [what, setWhat] = useState<string | null>(null);
  const { data, error, refetch } = useQuery(pastForecastQuery(what));
  const days = data?.days;
  const draw = useCallback((plot: PlotModule, width: number) => bandPlot(plot, width, days ?? []), [days]);
  return (
    <section>
      <h2>Forecast against fact</h2>
      <div className="forecast-of">
        <Combobox
          label="Of"
          choices={drinks.map((value) => ({ value }))}
          value={what}
          onChange={setWhat}
          placeholder="All drinks together"
        />
      </div>
      {error === null ? null : <Problems error={error} onRetry={() => void refetch()} />}
      {days === undefined && error === null ? <Busy what="Forecasting the last weeks anew" /> : null}
      {days === undefined || days.length === 0 ? null : (
        <Chart
          caption={`${what ?? "All drinks"}, serves a day: ${insideWords(days)}. Each day was forecast from the days before its week; the band should hold nine in ten.`}
          draw={draw}
          table={
            <DataTable
              caption="Serves forecast and sold"
              columns={COLUMNS}
              rows={days}
              rowKey={({ date }) => date}
              fileName="forecast against fact"
              isPlain
            />
          }
        />
      )}
      {days?.length === 0 ? <p>It takes more than three weeks of sales to look back on a forecast.</p> : null}
    </section>
  );
}

function insideWords(days: readonly PastDay[]): string {
  const inside = days.filter(({ isInside }) => isInside).length;
  return `${inside} of ${days.length} days lay inside the band`;
}

function bandPlot(plot: PlotModule, width: number, days: readonly PastDay[]): PlotOptions {
  const at = ({ date }: PastDay) => new Date(`${date}T00:00:00Z`);
  return {
    height: 280,
    marginLeft: 44,
    marginRight: 16,
    marginBottom: 32,
    x: { type: "utc", label: null, ticks: width < 520 ? 4 : 8, insetLeft: 6, insetRight: 6 },
    y: { label: "serves", labelArrow: "none", ticks: 5, nice: true, zero: true },
    marks: [
      plot.gridY({ stroke: "var(--rule)", strokeOpacity: 1, ticks: 5 }),
      plot.ruleX(days, { x: at, y1: "q05", y2: "q95", stroke: "var(--stock-band)", strokeWidth: 6 }),
      plot.line(days, { x: at, y: "mean", stroke: "var(--stock)", strokeWidth: 1.25 }),
      plot.dot(days, {
        x: at,
        y: "sold",
        r: 3.5,
        symbol: ({ isInside }: PastDay) => (isInside ? "circle" : "diamond"),
        fill: ({ isInside }: PastDay) => (isInside ? "var(--ink)" : "var(--brass-fill)"),
      }),
      plot.ruleY([0], { stroke: "var(--ink)" }),
    ],
  };
}

const COLUMNS: Column<PastDay>[] = [
  {
    key: "date",
    head: "Day",
    kind: "text",
    onPhone: "lead",
    value: ({ date }) => date,
    show: ({ date }) => formatDate(date),
  },
  {
    key: "sold",
    head: "Sold",
    kind: "number",
    onPhone: "main",
    value: ({ sold }) => sold,
    show: ({ sold }) => formatNumber(sold),
  },
  serves("mean", "Forecast"),
  serves("q05", "5 %"),
  serves("q95", "95 %"),
  {
    key: "isInside",
    head: "Inside",
    kind: "text",
    value: ({ isInside }) => (isInside ? "yes" : "no"),
  },
];

function serves(key: "mean" | "q05" | "q95", head: string): Column<PastDay> {
  return { key, head, kind: "number", value: (day) => day[key], show: (day) => formatNumber(day[key], 1) };
}
