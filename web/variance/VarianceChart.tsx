import { useCallback, useMemo } from "react";
import type { VarianceRow } from "../answers.ts";
import { formatMoney } from "../money.ts";
import { Chart, type PlotOptions } from "../parts/Chart.tsx";
import { useVenue } from "../shell/venue.tsx";
import { say } from "../texts/say.ts";
import { type MoneyRow, moneyRows } from "./money-error.ts";

const MOST = 12;

type Plot = Parameters<Parameters<typeof Chart>[0]["draw"]>[0];

/** The largest unexplained amounts in money, each with the reach of twice its uncertainty either way. */
export function VarianceChart({ rows }: { rows: readonly VarianceRow[] }) {
  const { currency } = useVenue();
  const shown = useMemo(() => moneyRows(rows).slice(0, MOST), [rows]);
  const draw = useCallback(
    (plot: Plot, width: number) => errorBars(plot, shown, { width, currency }),
    [shown, currency],
  );
  if (shown.length === 0) return null;
  return <Chart caption={say("variance.chart", { count: shown.length })} draw={draw} />;
}

function errorBars(
  plot: Plot,
  rows: readonly MoneyRow[],
  { width, currency }: { width: number; currency: string },
): PlotOptions {
  const isNarrow = width < 520;
  const ends = {
    x1: (row: MoneyRow) => row.cost - 2 * row.costSd,
    x2: (row: MoneyRow) => row.cost + 2 * row.costSd,
  };
  const name = isNarrow
    ? { dy: -12, frameAnchor: "left" as const, textAnchor: "start" as const }
    : { dx: -12, frameAnchor: "left" as const, textAnchor: "end" as const };
  return {
    height: rows.length * (isNarrow ? 40 : 28) + 56,
    marginLeft: isNarrow ? 20 : 240,
    marginRight: 20,
    marginTop: 8,
    marginBottom: 48,
    x: {
      label: say("variance.chartAxis"),
      labelAnchor: "center",
      labelArrow: "none",
      labelOffset: 42,
      tickFormat: (money: number) => formatMoney(money, currency, { whole: true }),
      ticks: isNarrow ? 4 : 8,
      grid: false,
      nice: true,
    },
    y: { axis: null, domain: rows.map(({ item }) => item) },
    marks: [
      plot.gridX({ stroke: "var(--rule)", strokeOpacity: 1, ticks: isNarrow ? 4 : 8 }),
      plot.ruleX([0], { stroke: "var(--ink)" }),
      plot.ruleY(rows, { y: "item", ...ends, stroke: "var(--rule-strong)", strokeWidth: 1.5 }),
      plot.tickX(rows, { y: "item", x: ends.x1, stroke: "var(--rule-strong)", insetTop: 7, insetBottom: 7 }),
      plot.tickX(rows, { y: "item", x: ends.x2, stroke: "var(--rule-strong)", insetTop: 7, insetBottom: 7 }),
      plot.dot(rows, {
        y: "item",
        x: "cost",
        r: 5,
        symbol: "diamond",
        fill: (row: MoneyRow) => (row.verdict === "chase" ? "var(--brass-fill)" : "var(--paper)"),
        stroke: (row: MoneyRow) => (row.verdict === "quiet" ? "var(--rule-strong)" : "var(--brass-fill)"),
        strokeWidth: 1.75,
      }),
      plot.text(rows, { y: "item", text: "item", fill: "var(--ink)", fontSize: 13, ...name }),
    ],
  };
}
