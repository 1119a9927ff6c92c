import "./week.css";
import { useQuery } from "@tanstack/react-query";
import { Link } from "@tanstack/react-router";
import type { Week, WeekStep } from "../answers.ts";
import { formatDate, formatMoment, plural } from "../format.ts";
import { ChangedBy } from "../history/ChangedBy.tsx";
import { Busy } from "../parts/Busy.tsx";
import { Page } from "../parts/Page.tsx";
import { Problems } from "../parts/Problems.tsx";
import { useMay } from "../people/signed-in.ts";
import { weekQuery } from "../queries.ts";
import { useDestinations } from "../shell/nav.ts";
import { useVenue } from "../shell/venue.tsx";
import { BeginBook } from "./BeginBook.tsx";
import { Doubts } from "./Doubts.tsx";
import { Expiring } from "./Expiring.tsx";
import { NextOrders } from "./NextOrders.tsx";
import { nextStep } from "./next-step.ts";
import { Steps } from "./Steps.tsx";

/** What is due, what is wrong, and on top the one thing to do next. */
export function WeekPage() {
  const { data: week, error, refetch } = useQuery(weekQuery);
  const runsBar = useMay("runBar");
  const seesCosts = useMay("seeCosts");
  const destinations = useDestinations();
  if (week === undefined) {
    return (
      <Page title="This week">
        {runsBar ? <BeginBook /> : null}
        {error === null ? (
          <Busy what="Reckoning the week" />
        ) : isYoung(error) ? (
          <p className="soft">There is no count, sale or delivery yet, so there is no week to show.</p>
        ) : (
          <Problems error={error} onRetry={() => void refetch()} />
        )}
      </Page>
    );
  }
  const steps = week.steps.filter(({ href }) => destinations.some(({ to }) => to === href));
  return (
    <Page title="This week" next={<Standing week={week} />}>
      {runsBar ? <BeginBook /> : null}
      <DoNext steps={steps} />
      <div className="week-columns">
        <div>
          <Steps steps={steps} />
          {runsBar ? <Loose week={week} /> : null}
        </div>
        <div>
          {seesCosts ? <Doubts totals={week.totals} top={week.top} /> : null}
          <NextOrders orders={week.nextOrders} />
          <Expiring batches={week.expiring} />
          <ChangedBy />
        </div>
      </div>
    </Page>
  );
}

/** A book in which nothing has happened has no moment to reckon from: a beginning, not a fault. */
function isYoung(error: Error): boolean {
  return /no count, sale or delivery yet/.test(error.message);
}

function Standing({ week: { now, latestCount } }: { week: Week }) {
  const venue = useVenue();
  const counted =
    latestCount === null ? "never counted yet" : `last counted ${formatMoment(latestCount.at, venue)}`;
  return `${formatDate(now.businessDate)}, ${counted}.`;
}

const ACTS: Record<WeekStep["id"], string> = {
  count: "Count the bar",
  sales: "Bring in the sales",
  "ring-names": "Say what the new ring names mean",
  variance: "Look into what does not meet",
  close: "Close the week",
  order: "Place the orders",
  prep: "Make the prep",
};

function DoNext({ steps }: { steps: readonly WeekStep[] }) {
  const step = nextStep(steps);
  if (step === undefined) {
    return (
      <section className="do-next" aria-label="Do this next">
        <p className="do-next-title">Nothing is due.</p>
        <p>The week is counted, explained, ordered and prepared.</p>
      </section>
    );
  }
  return (
    <section className="do-next" aria-label="Do this next">
      <p className="do-next-label">Do this next</p>
      <p className="do-next-title">
        <Link to={step.href}>{ACTS[step.id]}</Link>
      </p>
      <p>{step.detail}</p>
    </section>
  );
}

/** Loose ends that make every other number less sure. */
function Loose({ week: { notCounted, unmapped } }: { week: Week }) {
  if (notCounted === 0 && unmapped.length === 0) return null;
  return (
    <section>
      <h2>Loose ends</h2>
      <ul className="ruled">
        {notCounted === 0 ? null : (
          <li>
            <Link to="/variance">{plural(notCounted, "item was", "items were")} not counted</Link> in one of
            the last two counts. Not counted is not zero: they have no variance.
          </li>
        )}
        {unmapped.length === 0 ? null : (
          <li>
            <Link to="/sales">{plural(unmapped.length, "ring name")} without a meaning</Link>: what they sold
            is not in the expected use.
          </li>
        )}
      </ul>
    </section>
  );
}
