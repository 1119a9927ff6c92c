import { parseArgs } from "node:util";
import { fitDemand } from "#engine/demand/model.ts";
import { soldSeries } from "#engine/demand/series.ts";
import { replay } from "#engine/orders/replay.ts";
import type { ReplayFigures } from "#engine/orders/replay-policy.ts";
import { inventedBar, USUAL } from "#tests/demand/invented-bar.ts";
import { simulatedWeeks } from "#tests/demand/simulated.ts";
import { BARS, type BarName } from "#tests/variance/bars.ts";
import { BUDGETS } from "./budgets.ts";

const print = (text: string) => process.stdout.write(`${text}\n`);

/** The Monday after the thirteen weeks that a simulated bar has behind it. */
const AT = "2026-11-23T16:00:00Z";

/**
 * Measures pars and forecasts: `npm run bench -- orders [BAR…] [--seeds 1-4]`. What ten weeks of each bar would have been
 * like ordered as shipped against pars of twice the mean weekly use, what levels chosen on the first five weeks do in the
 * other five, and how long the demand of two years of 150 drinks takes to fit. Exit 1 where that takes too long.
 */
export function benchOrders(args: string[]): void {
  const { values, positionals } = parseArgs({
    args,
    allowPositionals: true,
    options: { seeds: { type: "string", default: "1-4" } },
  });
  const names = (
    positionals.length === 0 ? ["lantern", "pub", "tiki", "scales", "hotel"] : positionals
  ) as BarName[];
  const [from = 1, to = from] = values.seeds.split("-").map(Number);
  const seeds = Array.from({ length: to - from + 1 }, (_, index) => from + index);
  const ratios = names.flatMap((name) => seeds.map((seed) => replayed(name, seed)));
  print(
    `\n${ratios.filter(({ isSafer }) => isSafer).length} of ${ratios.length} bars with no more nights out, ` +
      `${percent(ratios.reduce((sum, { share }) => sum + share, 0) / ratios.length)} of the money on the average\n`,
  );
  process.exitCode = isFitFast() ? 0 : 1;
}

function replayed(name: BarName, seed: number): { isSafer: boolean; share: number } {
  const { catalogue } = BARS[name](seed).simulation;
  const { facts, sales } = simulatedWeeks(seed, catalogue);
  const tried = replay({ facts, sales, at: AT });
  if (tried === null) throw new Error(`${name} ${seed} has too short a past`);
  const { planned, twoWeeks, asSafe } = tried;
  const share = planned.stockMoney / twoWeeks.stockMoney;
  const later =
    asSafe === null
      ? "nothing chosen"
      : `chosen earlier ${words(asSafe.tried)} against ${words(asSafe.twoWeeks)}`;
  print(
    `${name.padEnd(8)} ${String(seed).padStart(2)}: as shipped ${words(planned)}, two weeks' use ${words(twoWeeks)} ` +
      `(${percent(share)} of the money); in the later weeks ${later}`,
  );
  return { isSafer: planned.itemNightsOut <= twoWeeks.itemNightsOut, share };
}

function words({ itemNightsOut, stockMoney }: ReplayFigures): string {
  return `${itemNightsOut} out, ${Math.round(stockMoney)}`;
}

function percent(share: number): string {
  return `${Math.round(share * 100)} %`;
}

function isFitFast(): boolean {
  const { facts, sales, after } = inventedBar({ ...USUAL, drinks: 150, perDay: 500, weeks: 104 }, 5);
  const started = process.cpuUsage();
  const model = fitDemand(facts, soldSeries(facts, sales, after), after);
  const drinks = model.on(after).length;
  const { user, system } = process.cpuUsage(started);
  const ms = (user + system) / 1000;
  print(`Demand of ${drinks} drinks fitted to two years: ${ms.toFixed(0)} ms of processor`);
  return ms <= BUDGETS.fitTwoYearsMostMs;
}
