import { useQuery } from "@tanstack/react-query";
import { Link } from "@tanstack/react-router";
import type { Stock } from "../answers.ts";
import { formatMoment } from "../format.ts";
import { ChangedBy } from "../history/ChangedBy.tsx";
import { Busy } from "../parts/Busy.tsx";
import { Empty } from "../parts/Empty.tsx";
import { Page } from "../parts/Page.tsx";
import { Problems } from "../parts/Problems.tsx";
import { useMay } from "../people/signed-in.ts";
import { stockQuery } from "../queries.ts";
import { useVenue } from "../shell/venue.tsx";
import { say, sayWith } from "../texts/say.ts";
import { StockTable } from "./StockTable.tsx";

/** What stands on the shelves by the last count and all that moved since. */
export function StockPage() {
  const { data: stock, error, refetch } = useQuery(stockQuery);
  const runsBar = useMay("runBar");
  const mayCount = useMay("count");
  if (stock === undefined) {
    return (
      <Page title={say("stock.title")}>
        {error === null ? (
          <Busy what={say("stock.busy")} />
        ) : (
          <Problems error={error} onRetry={() => void refetch()} />
        )}
      </Page>
    );
  }
  return (
    <Page
      title={say("stock.title")}
      next={<Standing stock={stock} />}
      actions={
        <>
          {runsBar ? (
            <Link to="/prices" className="button button-plain">
              {say("prices.title")}
            </Link>
          ) : null}
          {mayCount ? (
            <Link to="/count" className="button button-plain">
              {say("shell.count")}
            </Link>
          ) : null}
        </>
      }
    >
      <StockTable stock={stock} empty={<NoItems />} />
      <ChangedBy />
    </Page>
  );
}

function Standing({ stock: { at, items } }: { stock: Stock }) {
  const venue = useVenue();
  const runsBar = useMay("runBar");
  const short = items.filter(
    ({ quantity, par }) => quantity !== null && par !== null && quantity < par,
  ).length;
  const standing = say("stock.asOf", { moment: formatMoment(at, venue) });
  if (short === 0) return `${standing} ${say("stock.noneBelow")}`;
  return (
    <>
      {standing}{" "}
      {runsBar
        ? sayWith("stock.belowOrder", {
            count: short,
            link: <Link to="/order">{say("stock.orderLink")}</Link>,
          })
        : say("stock.below", { count: short })}
    </>
  );
}

function NoItems() {
  return (
    <Empty title={say("stock.noItems")}>
      <p>{sayWith("stock.noItemsNext", { file: <code>items.csv</code> })}</p>
    </Empty>
  );
}
