import { useQuery } from "@tanstack/react-query";
import { Busy } from "../parts/Busy.tsx";
import { Empty } from "../parts/Empty.tsx";
import { Page } from "../parts/Page.tsx";
import { Problems } from "../parts/Problems.tsx";
import { backtestWords } from "./backtest-words.ts";
import { ForecastTable } from "./ForecastTable.tsx";
import { forecastQuery } from "./forecast-queries.ts";
import { PastForecast } from "./PastForecast.tsx";

/** What the days to come will sell, beside what such forecasts were worth. */
export function ForecastPage() {
  const { data: forecast, error, refetch } = useQuery(forecastQuery);
  if (forecast === undefined) {
    return (
      <Page title="Forecast">
        {error === null ? (
          <Busy what="Reading the venue's past" />
        ) : (
          <Problems error={error} onRetry={() => void refetch()} />
        )}
      </Page>
    );
  }
  const { backtest, days, noHistory, stopped } = forecast;
  return (
    <Page title="Forecast" next={backtestWords(backtest)}>
      {days.length === 0 ? (
        <Empty title="Nothing to forecast from">
          <p>Read in sales files: after three weeks of sales a forecast begins to be worth something.</p>
        </Empty>
      ) : (
        <>
          <PastForecast drinks={[...new Set(days.map(({ what }) => what))].sort()} />
          <ForecastTable days={days} />
        </>
      )}
      <Unknown title="On the menu, but neither sold nor planned" names={noHistory} />
      <Unknown title="Not sold for weeks, and so left out" names={stopped} />
    </Page>
  );
}

function Unknown({ title, names }: { title: string; names: readonly string[] }) {
  if (names.length === 0) return null;
  return (
    <p className="soft">
      {title}: {names.join(", ")}.
    </p>
  );
}
