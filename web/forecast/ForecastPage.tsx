import { useQuery } from "@tanstack/react-query";
import { formatDate } from "../format.ts";
import { Busy } from "../parts/Busy.tsx";
import { Empty } from "../parts/Empty.tsx";
import { Page } from "../parts/Page.tsx";
import { Problems } from "../parts/Problems.tsx";
import { say } from "../texts/say.ts";
import { backtestWords } from "./backtest-words.ts";
import { ForecastTable } from "./ForecastTable.tsx";
import { type ForecastAnswer, forecastQuery } from "./forecast-queries.ts";
import { HolidaysAhead } from "./HolidaysAhead.tsx";
import { PastForecast } from "./PastForecast.tsx";

/** What the days to come will sell, beside what such forecasts were worth. */
export function ForecastPage() {
  const { data: forecast, error, refetch } = useQuery(forecastQuery);
  if (forecast === undefined) {
    return (
      <Page title={say("shell.forecast")}>
        {error === null ? (
          <Busy what={say("forecast.reading")} />
        ) : (
          <Problems error={error} onRetry={() => void refetch()} />
        )}
      </Page>
    );
  }
  const { backtest, days, holidays, out, noHistory, stopped } = forecast;
  return (
    <Page title={say("shell.forecast")} next={backtestWords(backtest)}>
      {days.length === 0 ? (
        <Empty title={say("forecast.none")}>
          <p>{say("forecast.noneMore")}</p>
        </Empty>
      ) : (
        <>
          <PastForecast drinks={[...new Set(days.map(({ what }) => what))].sort()} />
          <HolidaysAhead holidays={holidays} />
          <ForecastTable days={days} />
        </>
      )}
      <OutDays out={out} />
      <Unknown text="forecast.noHistory" names={noHistory} />
      <Unknown text="forecast.stopped" names={stopped} />
    </Page>
  );
}

/** What did not sell because it could not be made is no sign that nobody wanted it. */
function OutDays({ out }: { out: ForecastAnswer["out"] }) {
  if (out.length === 0) return null;
  return (
    <section>
      <h2>{say("forecast.outDays")}</h2>
      <ul>
        {out.map(({ item, from, until, drinks }) => (
          <li key={`${item} ${from}`}>
            {say("forecast.outDay", {
              item,
              from: formatDate(from),
              until: formatDate(until),
              drinks: drinks.join(", "),
            })}
          </li>
        ))}
      </ul>
    </section>
  );
}

type UnknownProps = { text: "forecast.noHistory" | "forecast.stopped"; names: readonly string[] };

function Unknown({ text, names }: UnknownProps) {
  if (names.length === 0) return null;
  return <p className="soft">{say(text, { names: names.join(", ") })}</p>;
}
