import { useQuery } from "@tanstack/react-query";
import { useCallback, useId, useState } from "react";
import { formatShare } from "../figures.ts";
import { formatDate, formatNumber } from "../format.ts";
import { formatMoney } from "../money.ts";
import { Busy } from "../parts/Busy.tsx";
import { Chart } from "../parts/Chart.tsx";
import { DataTable } from "../parts/DataTable.tsx";
import { Problems } from "../parts/Problems.tsx";
import type { Column } from "../parts/table-column.ts";
import { useVenue } from "../shell/venue.tsx";
import { say } from "../texts/say.ts";
import { type ReplayAnswer, replayQuery } from "./plan-queries.ts";
import { riskPlot, type Way } from "./risk-plot.ts";

type PlotModule = typeof import("@observablehq/plot");

/** The last weeks ordered anew at other service levels: how much money buys how much safety. */
export function StockAgainstRisk() {
  const { data: replay, error, refetch } = useQuery(replayQuery);
  return (
    <section>
      <h2>{say("plan.stockRisk")}</h2>
      {error === null ? null : <Problems error={error} onRetry={() => void refetch()} />}
      {replay === undefined ? (
        error === null ? (
          <Busy what={say("plan.orderingAnew")} />
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
        caption={say("plan.riskCaption", { weeks: replay.weeks })}
        draw={draw}
        table={
          <DataTable
            caption={say("plan.waysCaption")}
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
  const said = { weeks, planned: figures(planned), twoWeeks: figures(twoWeeks) };
  return handSet === null
    ? say("plan.verdict", said)
    : say("plan.verdictByHand", { ...said, byHand: figures(handSet) });
}

function figuresIn(currency: string) {
  return ({ itemNightsOut, stockMoney }: { itemNightsOut: number; stockMoney: number }) =>
    say("plan.figures", {
      nights: itemNightsOut,
      money: formatMoney(stockMoney, currency, { whole: true }),
    });
}

/** What the earlier weeks would have chosen, tried on the later ones: a choice scored on its own weeks proves nothing. */
function chosenWords(asSafe: NonNullable<ReplayAnswer["asSafe"]>, currency: string): string {
  const figures = figuresIn(currency);
  const how =
    asSafe.serviceLevel === null
      ? say("plan.howEach")
      : say("plan.howAll", { level: formatNumber(asSafe.serviceLevel * 100, 1) });
  return say("plan.chosen", {
    from: formatDate(asSafe.triedFrom),
    how,
    tried: figures(asSafe.tried),
    planned: figures(asSafe.planned),
    twoWeeks: figures(asSafe.twoWeeks),
  });
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
  const level = formatNumber(point.serviceLevel * 100, 1);
  return (
    <div className="level-slider">
      <label htmlFor={id}>{say("plan.serviceLevel")}</label>
      <input
        id={id}
        type="range"
        min={0}
        max={curve.length - 1}
        step={1}
        value={index}
        aria-valuetext={say("plan.levelPercent", { level })}
        onChange={(event) => setIndex(event.target.valueAsNumber)}
      />
      <output htmlFor={id}>
        {say("plan.levelFigures", {
          level,
          nights: point.itemNightsOut,
          money: formatMoney(point.stockMoney, currency, { whole: true }),
        })}
      </output>
    </div>
  );
}

function Levels({ replay: { asSafe } }: { replay: ReplayAnswer }) {
  if (asSafe === null || asSafe.levels.length === 0) return null;
  return (
    <details>
      <summary>{say("plan.levelEach")}</summary>
      <DataTable
        caption={say("plan.levelEachCaption")}
        columns={levelColumns()}
        rows={asSafe.levels}
        rowKey={({ item }) => item}
        fileName="service levels"
      />
    </details>
  );
}

function levelColumns(): Column<{ item: string; serviceLevel: number }>[] {
  return [
    { key: "item", head: say("plan.item"), kind: "text", onPhone: "lead", value: ({ item }) => item },
    {
      key: "service_level",
      head: say("plan.serviceLevel"),
      kind: "number",
      onPhone: "main",
      value: ({ serviceLevel }) => serviceLevel,
      show: ({ serviceLevel }) => `${formatNumber(serviceLevel * 100, 1)} %`,
    },
  ];
}

function waysOf({ planned, handSet, twoWeeks, curve, worthCurve }: ReplayAnswer, currency: string): Way[] {
  return [
    { name: say("plan.asSet"), kind: "set", ...planned },
    ...(handSet === null ? [] : [{ name: say("plan.byHand"), kind: "hand" as const, ...handSet }]),
    { name: say("plan.twoWeeks"), kind: "hand", ...twoWeeks },
    ...curve.map((point) => ({
      name: say("plan.allAt", { level: formatShareOf(point.serviceLevel) }),
      kind: "level" as const,
      ...point,
    })),
    ...worthCurve.map((point) => ({
      name: say("plan.nightWorth", { money: formatMoney(point.nightWorth, currency) }),
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
    {
      key: "name",
      head: say("plan.wayOfOrdering"),
      kind: "text",
      onPhone: "lead",
      value: ({ name }) => name,
    },
    {
      key: "itemNightsOut",
      head: say("plan.nightsOut"),
      kind: "number",
      onPhone: "main",
      value: ({ itemNightsOut }) => itemNightsOut,
    },
    {
      key: "stockMoney",
      head: say("plan.inStock"),
      kind: "number",
      value: ({ stockMoney }) => stockMoney,
      show: ({ stockMoney }) => formatMoney(stockMoney, currency, { whole: true }),
    },
  ];
}
