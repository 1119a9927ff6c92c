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
import { StockTable } from "./StockTable.tsx";

/** What stands on the shelves by the last count and all that moved since. */
export function StockPage() {
  const { data: stock, error, refetch } = useQuery(stockQuery);
  const runsBar = useMay("runBar");
  const mayCount = useMay("count");
  if (stock === undefined) {
    return (
      <Page title="Stock">
        {error === null ? (
          <Busy what="Reckoning the stock" />
        ) : (
          <Problems error={error} onRetry={() => void refetch()} />
        )}
      </Page>
    );
  }
  return (
    <Page
      title="Stock"
      next={<Standing stock={stock} />}
      actions={
        <>
          {runsBar ? (
            <Link to="/prices" className="button button-plain">
              Price list
            </Link>
          ) : null}
          {mayCount ? (
            <Link to="/count" className="button button-plain">
              Count
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
  const standing = `As of ${formatMoment(at, venue)}.`;
  if (short === 0) return `${standing} Nothing stands below its par.`;
  return (
    <>
      {standing} {short === 1 ? "One item stands" : `${short} items stand`} below par
      {runsBar ? (
        <>
          : <Link to="/order">order</Link>
        </>
      ) : null}
      .
    </>
  );
}

function NoItems() {
  return (
    <Empty title="No items yet">
      <p>
        Items come with the book (<code>items.csv</code>) or are added under Specs. What has never been
        counted has no known stock.
      </p>
    </Empty>
  );
}
