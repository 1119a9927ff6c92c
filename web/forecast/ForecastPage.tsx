import { useQuery } from "@tanstack/react-query";
import { formatDate } from "../format.ts";
import { Busy } from "../parts/Busy.tsx";
import { Empty } from "../parts/Empty.tsx";
import { Page } from "../parts/Page.tsx";
import { Problems } from "../parts/Problems.tsx";
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
      <Page title="Forecast">
        {error === null ? (
          <Busy what="Reading the venue's past" />
        ) : (
          <Problems error={error} onRetry={() => void refetch()} />
        )}
      </Page>
    );
  }
  const { backtest, days, holidays, out, noHistory, stopped } = forecast;
  return (
    <Page title="Forecast" next={backtestWords(backtest)}>
      {days.length === 0 ? (
        <Empty title="Nothing to forecast from">
          <p>Read in sales files: after three weeks of sales a forecast begins to be worth something.</p>
        </Empty>
      ) : (
        <>
          <PastForecast drinks={[...new Set(days.map(({ what }) => what))].sort()} />
          <HolidaysAhead holidays={holidays} />
          <ForecastTable days={days} />
        </>
      )}
      <OutDays out={out} />
      <Unknown title="On the menu, but neither sold nor planned" names={noHistory} />
      <Unknown title="Not sold for weeks, and so left out" names={stopped} />
    </Page>
  );
}

/** What did not sell because it could not be made is no sign that nobody wanted it. */
function OutDays({ out }: { out: ForecastAnswer["out"] }) {
  if (out.length === 0) return null;
  return (
    <section>
      <h2>Could not be made</h2>
      <ul>
        {out.map(({ item, from, until, drinks }) => (
          <li key={`${item} ${from}`}>
            {item} was out by the count from {formatDate(from)} until {formatDate(until)}: that{" "}
            {drinks.join(", ")} did not sell says nothing of what was wanted, and those days are left out.
          </li>
        ))}
      </ul>
    </section>
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
