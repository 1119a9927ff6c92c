import { useCallback, useMemo } from "react";
import type { BaseUnit } from "#engine/measure/units.ts";
import type { Drift, ItemTrend, TrendPoint } from "#engine/variance/trend.ts";
import type { Venue } from "#engine/venue.ts";
import { formatAmount, formatDate, formatNumber, inShownUnit, shownUnit } from "../format.ts";
import { formatMoney } from "../money.ts";
import { Chart, type PlotOptions } from "../parts/Chart.tsx";
import { DataTable } from "../parts/DataTable.tsx";
import { Empty } from "../parts/Empty.tsx";
import type { Column } from "../parts/table-column.ts";
import { useVenue } from "../shell/venue.tsx";
import { say, sayWith } from "../texts/say.ts";

type Plot = Parameters<Parameters<typeof Chart>[0]["draw"]>[0];
type Drawn = {
  closing: string;
  at: Date;
  value: number;
  low: number;
  high: number;
  mean: number;
  limit: number;
};

/** Unexplained use count by count: a small steady leak shows here before any single week does. */
export function TrendChart({ trend: { points: series, base, drift } }: { trend: ItemTrend }) {
  const venue = useVenue();
  const drawn = useMemo(() => series.map((point) => drawnPoint(point, base, venue)), [series, base, venue]);
  const unit = base === "each" ? say("variance.each") : shownUnit(base, venue);
  const draw = useCallback((plot: Plot, width: number) => trendPlot(plot, drawn, unit, width), [drawn, unit]);
  const drawMean = useCallback((plot: Plot, width: number) => meanPlot(plot, drawn, width), [drawn]);
  if (series.length < 2) {
    return (
      <Empty title={say("variance.tooFewCounts")}>
        <p>{say("variance.tooFewCountsMore")}</p>
      </Empty>
    );
  }
  return (
    <>
      <DriftLine drift={drift} base={base} />
      <Chart caption={say("variance.trendCaption", { unit })} draw={draw} />
      <Chart
        caption={say("variance.meanCaption")}
        draw={drawMean}
        table={<TrendTable series={series} base={base} venue={venue} />}
      />
    </>
  );
}

/** A steady drift in words, with its start; that there is none is worth saying too. */
function DriftLine({ drift, base }: { drift: Drift | null; base: BaseUnit }) {
  const venue = useVenue();
  if (drift === null) return <p>{say("variance.noDrift")}</p>;
  const { direction, perPeriod, costPerPeriod, sinceAt } = drift;
  const facts = {
    drift: <strong>{say("variance.drift")}</strong>,
    date: formatDate(sinceAt.slice(0, 10)),
    amount: formatAmount(Math.abs(perPeriod), base, venue),
    direction,
  };
  if (costPerPeriod === null) return <p>{sayWith("variance.driftLine", facts)}</p>;
  const money = formatMoney(Math.abs(costPerPeriod), venue.currency);
  return <p>{sayWith("variance.driftLineCost", { ...facts, money })}</p>;
}

function drawnPoint(point: TrendPoint, base: BaseUnit, venue: Venue): Drawn {
  const shown = (amount: number) => inShownUnit(amount, base, venue);
  return {
    closing: point.closing,
    at: new Date(`${point.to.replace(" ", "T")}:00Z`),
    value: shown(point.unexplained),
    low: shown(point.unexplained - 2 * point.sd),
    high: shown(point.unexplained + 2 * point.sd),
    mean: point.ewma,
    limit: point.ewmaLimit,
  };
}

function trendPlot(plot: Plot, points: readonly Drawn[], unit: string, width: number): PlotOptions {
  return {
    height: 268,
    marginTop: 28,
    marginLeft: 52,
    marginRight: 16,
    marginBottom: 32,
    x: { type: "utc", label: null, ticks: width < 520 ? 4 : 8, insetLeft: 12, insetRight: 12 },
    y: { label: say("variance.trendAxis", { unit }), labelArrow: "none", ticks: 5, nice: true },
    marks: [
      plot.gridY({ stroke: "var(--rule)", strokeOpacity: 1, ticks: 5 }),
      plot.ruleY([0], { stroke: "var(--ink)" }),
      plot.ruleX(points, { x: "at", y1: "low", y2: "high", stroke: "var(--rule-strong)", strokeWidth: 1.5 }),
      plot.dot(points, {
        x: "at",
        y: "value",
        r: 4,
        symbol: "diamond",
        fill: "var(--paper)",
        stroke: "var(--ink)",
        strokeWidth: 1.5,
      }),
    ],
  };
}

function meanPlot(plot: Plot, points: readonly Drawn[], width: number): PlotOptions {
  return {
    height: 182,
    marginTop: 32,
    marginLeft: 52,
    marginRight: 16,
    marginBottom: 32,
    x: { type: "utc", label: null, ticks: width < 520 ? 4 : 8, insetLeft: 12, insetRight: 12 },
    y: { label: say("variance.meanAxis"), labelArrow: "none", ticks: 4, nice: true },
    marks: [
      plot.areaY(points, {
        x: "at",
        y1: ({ limit }: Drawn) => -limit,
        y2: "limit",
        fill: "var(--leaf-pressed)",
      }),
      plot.ruleY([0], { stroke: "var(--ink)" }),
      plot.line(points, { x: "at", y: "mean", stroke: "var(--brass-fill)", strokeWidth: 2.5 }),
    ],
  };
}

function TrendTable({
  series,
  base,
  venue,
}: {
  series: readonly TrendPoint[];
  base: BaseUnit;
  venue: Venue;
}) {
  const columns: Column<TrendPoint>[] = [
    {
      key: "to",
      head: say("variance.until"),
      kind: "text",
      onPhone: "lead",
      value: ({ to }) => to,
      show: ({ to }) => formatDate(to.slice(0, 10)),
    },
    {
      key: "unexplained",
      head: say("variance.unexplained"),
      kind: "number",
      onPhone: "main",
      value: ({ unexplained }) => inShownUnit(unexplained, base, venue),
      show: ({ unexplained }) => formatAmount(unexplained, base, venue),
    },
    {
      key: "sd",
      head: "±",
      kind: "number",
      value: ({ sd }) => inShownUnit(sd, base, venue),
      show: ({ sd }) => formatAmount(sd, base, venue),
    },
    number("ratio", say("variance.inUncertainties"), ({ ratio }) => ratio),
    number("ewma", say("variance.runningMean"), ({ ewma }) => ewma),
    number("ewmaLimit", say("variance.itsLimit"), ({ ewmaLimit }) => ewmaLimit),
    number("cusumHigh", say("variance.sumAbove"), ({ cusumHigh }) => cusumHigh),
    number("cusumLow", say("variance.sumBelow"), ({ cusumLow }) => cusumLow),
  ];
  return (
    <DataTable
      caption={say("variance.trendTable")}
      columns={columns}
      rows={series}
      rowKey={({ opening, closing }) => `${opening} ${closing}`}
      fileName="trend"
      isPlain
    />
  );
}

function number(key: string, head: string, value: (point: TrendPoint) => number): Column<TrendPoint> {
  return { key, head, kind: "number", value, show: (point) => formatNumber(value(point), 2) };
}
