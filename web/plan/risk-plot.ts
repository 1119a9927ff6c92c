import type { PlotOptions } from "../parts/Chart.tsx";
import { say } from "../texts/say.ts";

type PlotModule = typeof import("@observablehq/plot");

/** One way of ordering the last weeks: how often it ran out, and the money it kept in stock. */
export type Way = {
  name: string;
  kind: "level" | "worth" | "set" | "hand";
  itemNightsOut: number;
  stockMoney: number;
};

/** Item-nights out against money in stock: the curve of one level, the levels by item, and the ones as they are. */
export function riskPlot(
  plot: PlotModule,
  width: number,
  ways: readonly Way[],
  currency: string,
): PlotOptions {
  const of = (kind: Way["kind"]) => ways.filter((way) => way.kind === kind);
  const place = { x: "stockMoney", y: "itemNightsOut" } as const;
  const fixed = [...of("set"), ...of("hand")];
  const named = { ...place, text: "name", fill: "var(--ink)" } as const;
  const dearest = Math.max(...ways.map(({ stockMoney }) => stockMoney));
  const cheapest = Math.min(...ways.map(({ stockMoney }) => stockMoney));
  // A name is written towards the middle, where there is room for it.
  const isRight = ({ stockMoney }: Way) => stockMoney > (cheapest + dearest) / 2;
  const nameOf = (list: readonly Way[], dy: number) => [
    plot.text(list.filter(isRight), { ...named, dy, dx: 8, textAnchor: "end" }),
    plot.text(
      list.filter((way) => !isRight(way)),
      { ...named, dy, dx: 8, textAnchor: "start" },
    ),
  ];
  return {
    height: 292,
    marginTop: 32,
    marginLeft: 44,
    marginRight: 24,
    marginBottom: 40,
    x: {
      label: say("plan.inStockAxis", { currency }),
      labelArrow: "none",
      ticks: width < 520 ? 3 : 6,
      nice: true,
    },
    y: { label: say("plan.nightsOutAxis"), labelArrow: "none", ticks: 5, nice: true, zero: true },
    marks: [
      plot.gridY({ stroke: "var(--rule)", strokeOpacity: 1, ticks: 5 }),
      plot.line(of("level"), { ...place, stroke: "var(--stock)", strokeWidth: 1.5 }),
      plot.dot(of("level"), { ...place, r: 3.5, fill: "var(--stock)" }),
      plot.dot(of("worth"), {
        ...place,
        r: 3.5,
        symbol: "square",
        stroke: "var(--ink)",
        fill: "var(--paper)",
      }),
      plot.dot(fixed, { ...place, r: 5, symbol: "diamond", fill: "var(--brass-fill)" }),
      // The settings and the hand-set pars often lie close together: one is named above its mark, the others higher.
      ...nameOf(of("set"), -8),
      ...nameOf(of("hand"), -26),
      plot.ruleY([0], { stroke: "var(--ink)" }),
    ],
  };
}
