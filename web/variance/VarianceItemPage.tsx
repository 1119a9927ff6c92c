import "./variance.css";
import { useQuery } from "@tanstack/react-query";
import { Link, useParams, useSearch } from "@tanstack/react-router";
import type { VarianceOfItem } from "../answers.ts";
import { formatLocal, listWords } from "../format.ts";
import { ChangedBy } from "../history/ChangedBy.tsx";
import { Busy } from "../parts/Busy.tsx";
import { Empty } from "../parts/Empty.tsx";
import { Page } from "../parts/Page.tsx";
import { Problems } from "../parts/Problems.tsx";
import { Verdict } from "../parts/Verdict.tsx";
import { varianceItemQuery } from "../queries.ts";
import { say, sayWith } from "../texts/say.ts";
import { Causes } from "./Causes.tsx";
import { Ledger } from "./Ledger.tsx";
import { MissingSales } from "./MissingSales.tsx";
import { NoAccusation } from "./NoAccusation.tsx";
import { TrendChart } from "./TrendChart.tsx";
import { UncertaintyBudget } from "./UncertaintyBudget.tsx";
import { UsedBy } from "./UsedBy.tsx";

/** One item's variance, down to the drinks that used it and where the doubt comes from. */
export function VarianceItemPage() {
  const { item } = useParams({ from: "/variance/$item" });
  const period = useSearch({ from: "/variance/$item" });
  const { data: answer, error, refetch } = useQuery(varianceItemQuery({ item, ...period }));
  return (
    <Page
      title={item}
      next={answer === undefined ? undefined : <Standing answer={answer} />}
      actions={
        <Link to="/variance" search={period} className="button button-plain">
          {say("variance.allItems")}
        </Link>
      }
    >
      <NoAccusation />
      {answer === undefined && error === null ? <Busy what={say("variance.openingLedger")} /> : null}
      {error === null ? null : <Problems error={error} onRetry={() => void refetch()} />}
      {answer === undefined ? null : <Answer answer={answer} />}
      <ChangedBy subject={item} />
    </Page>
  );
}

function Standing({ answer: { balance, from, to } }: { answer: VarianceOfItem }) {
  if (balance === null) {
    return say("variance.notSeenWhole", { from: formatLocal(from), to: formatLocal(to) });
  }
  const span = { from: formatLocal(from), to: formatLocal(to) };
  const verdict = <Verdict verdict={balance.verdict} />;
  return balance.verdict === "quiet"
    ? sayWith("variance.itemQuiet", { ...span, verdict })
    : sayWith("variance.itemWent", { ...span, verdict, way: balance.unexplained > 0 ? "more" : "less" });
}

function Answer({ answer }: { answer: VarianceOfItem }) {
  const { balance, notCountedIn, budget, causes, bases, drinks, trend } = answer;
  return (
    <>
      {balance === null ? (
        <NotSeenWhole areas={notCountedIn} />
      ) : (
        <>
          <MissingSales to={answer.to} />
          <div className="item-columns">
            <section>
              <h2>{say("variance.ledger")}</h2>
              <Ledger row={balance} />
            </section>
            <section>
              <h2>{say("variance.whereFrom")}</h2>
              <UncertaintyBudget budget={budget} base={balance.base} />
            </section>
          </div>
          <Causes causes={causes} between={answer} baseOf={(name) => bases[name]} />
          <section>
            <h2>{say("variance.shouldHaveUsed")}</h2>
            <UsedBy drinks={drinks} base={balance.base} item={balance.item} />
          </section>
        </>
      )}
      {trend === null ? null : (
        <section>
          <h2>{say("variance.overCounts")}</h2>
          <TrendChart trend={trend} />
        </section>
      )}
    </>
  );
}

function NotSeenWhole({ areas }: { areas: readonly string[] }) {
  return (
    <Empty title={say("variance.noneBetween")}>
      <p>
        {areas.length === 0
          ? say("variance.notLookedAt")
          : say("variance.notCountedIn", { areas: listWords(areas) })}
      </p>
    </Empty>
  );
}
