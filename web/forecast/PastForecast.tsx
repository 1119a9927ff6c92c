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
import { say } from "../texts/say.ts";
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
      <h2>{say("forecast.past")}</h2>
      <div className="forecast-of">
        <Combobox
          label={say("forecast.of")}
          choices={drinks.map((value) => ({ value }))}
          value={what}
          onChange={setWhat}
          placeholder={say("forecast.allTogether")}
        />
      </div>
      {error === null ? null : <Problems error={error} onRetry={() => void refetch()} />}
      {days === undefined && error === null ? <Busy what={say("forecast.forecasting")} /> : null}
      {days === undefined || days.length === 0 ? null : (
        <Chart
          caption={say("forecast.pastCaption", {
            what: what ?? say("forecast.allDrinks"),
            inside: days.filter(({ isInside }) => isInside).length,
            days: days.length,
          })}
          draw={draw}
          table={
            <DataTable
              caption={say("forecast.pastTable")}
              columns={columns()}
              rows={days}
              rowKey={({ date }) => date}
              fileName="forecast against fact"
              isPlain
            />
          }
        />
      )}
      {days?.length === 0 ? <p>{say("forecast.pastTooShort")}</p> : null}
    </section>
  );
}

function bandPlot(plot: PlotModule, width: number, days: readonly PastDay[]): PlotOptions {
  const at = ({ date }: PastDay) => new Date(`${date}T00:00:00Z`);
  return {
    height: 280,
    marginLeft: 44,
    marginRight: 16,
    marginBottom: 32,
    x: { type: "utc", label: null, ticks: width < 520 ? 4 : 8, insetLeft: 6, insetRight: 6 },
    y: { label: say("forecast.servesAxis"), labelArrow: "none", ticks: 5, nice: true, zero: true },
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

function columns(): Column<PastDay>[] {
  return [
    {
      key: "date",
      head: say("forecast.day"),
      kind: "text",
      onPhone: "lead",
      value: ({ date }) => date,
      show: ({ date }) => formatDate(date),
    },
    {
      key: "sold",
      head: say("forecast.sold"),
      kind: "number",
      onPhone: "main",
      value: ({ sold }) => sold,
      show: ({ sold }) => formatNumber(sold),
    },
    serves("mean", say("forecast.forecast")),
    serves("q05", "5 %"),
    serves("q95", "95 %"),
    {
      key: "isInside",
      head: say("forecast.inside"),
      kind: "text",
      value: ({ isInside }) => say(isInside ? "forecast.yes" : "forecast.no"),
    },
  ];
}

function serves(key: "mean" | "q05" | "q95", head: string): Column<PastDay> {
  return { key, head, kind: "number", value: (day) => day[key], show: (day) => formatNumber(day[key], 1) };
}
