import { formatNumber } from "../format.ts";
import { say } from "../texts/say.ts";
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
    return say("forecast.tooFewDays");
  return say("forecast.backtest", {
    days,
    off: percent(wape),
    offSameWeekday: percent(wapeSameWeekday),
    smoothed: wapeSmoothing === null ? "no" : "yes",
    offSmoothing: wapeSmoothing === null ? "" : percent(wapeSmoothing),
    verdict: scaledError < 1 ? "better" : "noBetter",
    better: percent(1 - scaledError),
    inside: percent(coverage90),
  });
}

function percent(share: number): string {
  return `${formatNumber(share * 100)} %`;
}
