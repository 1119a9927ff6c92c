import { useState } from "react";
import { formatDate, formatNumber } from "../format.ts";
import { DataTable } from "../parts/DataTable.tsx";
import { Select } from "../parts/Field.tsx";
import type { Column } from "../parts/table-column.ts";
import { say } from "../texts/say.ts";
import type { ForecastRow } from "./forecast-queries.ts";

const WHOLE_WEEK = "";

/** The week to come: every drink over the week, or on one of its days. */
export function ForecastTable({ days }: { days: readonly ForecastRow[] }) {
  const dates = [...new Set(days.map(({ date }) => date))];
  const [date, setDate] = useState(dates[0] ?? WHOLE_WEEK);
  const rows = date === WHOLE_WEEK ? days : days.filter((day) => day.date === date);
  const total = rows.reduce((sum, { mean }) => sum + mean, 0);
  return (
    <section>
      <h2>{say("forecast.toCome")}</h2>
      <p>
        {date === WHOLE_WEEK
          ? say("forecast.expectedWeek", { serves: formatNumber(total), count: dates.length })
          : say("forecast.expectedOn", { serves: formatNumber(total), date: formatDate(date) })}
      </p>
      <DataTable
        caption={say("forecast.table")}
        columns={columns()}
        rows={rows}
        rowKey={(row) => `${row.date} ${row.what}`}
        fileName="forecast"
        initialSort={{ key: "mean", isDescending: true }}
        filters={
          <Select
            label={say("forecast.day")}
            value={date}
            options={[
              ...dates.map((value) => ({ value, label: formatDate(value) })),
              { value: WHOLE_WEEK, label: say("forecast.wholeWeek") },
            ]}
            onChange={(event) => setDate(event.target.value)}
          />
        }
      />
    </section>
  );
}

function columns(): Column<ForecastRow>[] {
  return [
    { key: "what", head: say("forecast.drink"), kind: "text", onPhone: "lead", value: ({ what }) => what },
    {
      key: "date",
      head: say("forecast.day"),
      kind: "text",
      value: ({ date }) => date,
      show: ({ date }) => formatDate(date),
    },
    number("mean", say("forecast.expected"), "main"),
    number("q05", "5 %", "detail"),
    number("q50", "50 %", "hidden"),
    number("q95", "95 %", "detail"),
  ];
}

function number(
  key: "mean" | "q05" | "q50" | "q95",
  head: string,
  onPhone: "main" | "detail" | "hidden",
): Column<ForecastRow> {
  return {
    key,
    head,
    kind: "number",
    onPhone,
    value: (row) => row[key],
    show: (row) => formatNumber(row[key], 1),
  };
}
