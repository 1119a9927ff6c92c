import { useQuery } from "@tanstack/react-query";
import { useCallback, useId, useState } from "react";
import { formatDate, formatMoney, formatNumber, formatShare, plural } from "../format.ts";
import { Busy } from "../parts/Busy.tsx";
import { Chart } from "../parts/Chart.tsx";
import { DataTable } from "../parts/DataTable.tsx";
import { Problems } from "../parts/Problems.tsx";
import type { Column } from "../parts/table-column.ts";
import { useVenue } from "../shell/venue.tsx";
import { type ReplayAnswer, replayQuery } from "./plan-queries.ts";
import { riskPlot, type Way } from "./risk-plot.ts";

type PlotModule = typeof import("@observablehq/plot");

/** The last weeks ordered anew at other service levels: how much money buys how much safety. */
export function StockAgainstRisk() {
  const { data: replay, error, refetch } = useQuery(replayQuery);
  return (
    <section>
      <h2>Stock against risk</h2>
      {error === null ? null : <Problems error={error} onRetry={() => void refetch()} />}
      {replay === undefined ? (
        error === null ? (
          <Busy what="Ordering the last weeks anew" />
        ) : null
      ) : (
        <Ways replay={replay} />
      )}
    </section>
  );
}

function Ways({ replay }: { replay: ReplayAnswer }) {
  const { currency } = useVenue();
  const ways = waysOf(replay, currency);
  const key = `${replay.from} ${replay.to} ${replay.planned.stockMoney}`;
  // biome-ignore lint/correctness/useExhaustiveDependencies: the key stands for the ways, which are made anew at each render
  const draw = useCallback((plot: PlotModule, width: number) => riskPlot(plot, width, ways, currency), [key]);
  return (
    <>
      <p>{verdict(replay, currency)}</p>
      {replay.asSafe === null ? null : <p>{chosenWords(replay.asSafe, currency)}</p>}
      <LevelSlider curve={replay.curve} currency={currency} />
      <Chart
        caption={`Item-nights out over ${plural(replay.weeks, "week")} against the money in stock. Round: one level for all; square: a level for each item, by what a night out is worth; diamonds: the book's settings, pars set by hand, and pars of two weeks' use.`}
        draw={draw}
        table={
          <DataTable
            caption="Ways of ordering the last weeks"
            columns={wayColumns(currency)}
            rows={ways}
            rowKey={({ name }) => name}
            fileName="stock against risk"
            isPlain
          />
        }
      />
      <Levels replay={replay} />
    </>
  );
}

function verdict({ weeks, planned, handSet, twoWeeks }: ReplayAnswer, currency: string): string {
  const figures = figuresIn(currency);
  const byHand = handSet === null ? "" : ` with your hand-set pars: ${figures(handSet)};`;
  return `With these settings over the last ${plural(weeks, "week")}: ${figures(planned)};${byHand} with pars of two weeks' use: ${figures(twoWeeks)}.`;
}

function figuresIn(currency: string) {
  return ({ itemNightsOut, stockMoney }: { itemNightsOut: number; stockMoney: number }) =>
    `${plural(itemNightsOut, "item-night")} out, ${formatMoney(stockMoney, currency, { whole: true })} in stock on average`;
}

/** What the earlier weeks would have chosen, tried on the later ones: a choice scored on its own weeks proves nothing. */
function chosenWords(asSafe: NonNullable<ReplayAnswer["asSafe"]>, currency: string): string {
  const figures = figuresIn(currency);
  const how =
    asSafe.serviceLevel === null
      ? "a level of its own for each item, below"
      : `a service level of ${formatNumber(asSafe.serviceLevel * 100, 1)} % for all`;
  return `Least money for as few nights out as two weeks' use, chosen on the weeks before ${formatDate(asSafe.triedFrom)}: ${how}. Tried on the weeks since: ${figures(asSafe.tried)}; with these settings: ${figures(asSafe.planned)}; two weeks' use: ${figures(asSafe.twoWeeks)}.`;
}

/** One point of the curve at a time, by a slider that stops at each. */
function LevelSlider({ curve, currency }: { curve: ReplayAnswer["curve"]; currency: string }) {
  const [index, setIndex] = useState(
    Math.max(
      0,
      curve.findIndex(({ serviceLevel }) => serviceLevel >= 0.95),
    ),
  );
  const id = useId();
  const point = curve[index];
  if (point === undefined) return null;
  return (
    <div className="level-slider">
      <label htmlFor={id}>Service level</label>
      <input
        id={id}
        type="range"
        min={0}
        max={curve.length - 1}
        step={1}
        value={index}
        aria-valuetext={`${formatNumber(point.serviceLevel * 100, 1)} percent`}
        onChange={(event) => setIndex(event.target.valueAsNumber)}
      />
      <output htmlFor={id}>
        {formatNumber(point.serviceLevel * 100, 1)} %: {plural(point.itemNightsOut, "item-night")} out,{" "}
        {formatMoney(point.stockMoney, currency, { whole: true })} in stock
      </output>
    </div>
  );
}

function Levels({ replay: { asSafe } }: { replay: ReplayAnswer }) {
  if (asSafe === null || asSafe.levels.length === 0) return null;
  return (
    <details>
      <summary>A service level for each item</summary>
      <DataTable
        caption="To be set as the items' service level, where you want it so"
        columns={LEVEL_COLUMNS}
        rows={asSafe.levels}
        rowKey={({ item }) => item}
        fileName="service levels"
      />
    </details>
  );
}

const LEVEL_COLUMNS: Column<{ item: string; serviceLevel: number }>[] = [
  { key: "item", head: "Item", kind: "text", onPhone: "lead", value: ({ item }) => item },
  {
    key: "service_level",
    head: "Service level",
    kind: "number",
    onPhone: "main",
    value: ({ serviceLevel }) => serviceLevel,
    show: ({ serviceLevel }) => `${formatNumber(serviceLevel * 100, 1)} %`,
  },
];

function waysOf({ planned, handSet, twoWeeks, curve, worthCurve }: ReplayAnswer, currency: string): Way[] {
  return [
    { name: "As the book is set", kind: "set", ...planned },
    ...(handSet === null ? [] : [{ name: "With pars set by hand", kind: "hand" as const, ...handSet }]),
    { name: "Pars of two weeks' use", kind: "hand", ...twoWeeks },
    ...curve.map((point) => ({
      name: `All at ${formatShareOf(point.serviceLevel)}`,
      kind: "level" as const,
      ...point,
    })),
    ...worthCurve.map((point) => ({
      name: `A night out worth ${formatMoney(point.nightWorth, currency)}`,
      kind: "worth" as const,
      ...point,
    })),
  ];
}

function formatShareOf(level: number): string {
  return level > 0.99 ? `${formatNumber(level * 100, 1)} %` : formatShare(level);
}

function wayColumns(currency: string): Column<Way>[] {
  return [
    { key: "name", head: "Way of ordering", kind: "text", onPhone: "lead", value: ({ name }) => name },
    {
      key: "itemNightsOut",
      head: "Item-nights out",
      kind: "number",
      onPhone: "main",
      value: ({ itemNightsOut }) => itemNightsOut,
    },
    {
      key: "stockMoney",
      head: "In stock",
      kind: "number",
      value: ({ stockMoney }) => stockMoney,
      show: ({ stockMoney }) => formatMoney(stockMoney, currency, { whole: true }),
    },
  ];
}
