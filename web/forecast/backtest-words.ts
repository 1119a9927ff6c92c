import { formatNumber } from "../format.ts";
import type { ForecastAnswer } from "./forecast-queries.ts";

/** What forecasts of the last weeks were worth, in a sentence or two. */
export function backtestWords({
  wape,
  wapeSameWeekday,
  wapeSmoothing,
  scaledError,
  coverage90,
  days,
}: ForecastAnswer["backtest"]): string {
  if (wape === null || wapeSameWeekday === null || scaledError === null || coverage90 === null)
    return "Too few days of sales to say how good such a forecast is.";
  const smoothing = wapeSmoothing === null ? "" : `, smoothing by ${percent(wapeSmoothing)}`;
  const verdict =
    scaledError < 1
      ? `${percent(1 - scaledError)} better than the mean of the last four same weekdays`
      : `no better than the mean of the last four same weekdays`;
  return (
    `Tried on the last ${days} open days, drink by drink, it was off by ${percent(wape)} ` +
    `(the same-weekday mean by ${percent(wapeSameWeekday)}${smoothing}): ${verdict}. ` +
    `What was sold lay inside the 90 % band ${percent(coverage90)} of the time.`
  );
}

function percent(share: number): string {
  return `${formatNumber(share * 100)} %`;
}
