import "./week.css";
import { useQuery } from "@tanstack/react-query";
import { Link } from "@tanstack/react-router";
import type { Week, WeekStep } from "../answers.ts";
import { ProblemError } from "../api.ts";
import { formatDate, formatMoment } from "../format.ts";
import { ChangedBy } from "../history/ChangedBy.tsx";
import { todayAt } from "../moment.ts";
import { Busy } from "../parts/Busy.tsx";
import { Page } from "../parts/Page.tsx";
import { Problems } from "../parts/Problems.tsx";
import { useMay, useSignedIn } from "../people/signed-in.ts";
import { weekQuery } from "../queries.ts";
import { useDestinations } from "../shell/nav.ts";
import { useVenue } from "../shell/venue.tsx";
import type { TextId } from "../texts/catalogues.ts";
import { say, sayWith } from "../texts/say.ts";
import { BeginBook } from "./BeginBook.tsx";
import { Doubts } from "./Doubts.tsx";
import { Expiring } from "./Expiring.tsx";
import { NextOrders } from "./NextOrders.tsx";
import { nextStep } from "./next-step.ts";
import { Steps } from "./Steps.tsx";
import { stepDetail } from "./step-detail.ts";
import { Warnings } from "./Warnings.tsx";

/** What is due, what is wrong, and on top the one thing to do next. */
export function WeekPage() {
  const { data: week, error, refetch } = useQuery(weekQuery);
  const runsBar = useMay("runBar");
  const seesCosts = useMay("seeCosts");
  const destinations = useDestinations();
  if (week === undefined) {
    return (
      <Page title={say("week.title")} next={error !== null && isYoung(error) ? say("week.young") : undefined}>
        {runsBar ? <BeginBook /> : null}
        {error === null ? (
          <Busy what={say("week.reckoning")} />
        ) : isYoung(error) ? null : (
          <Problems error={error} onRetry={() => void refetch()} />
        )}
      </Page>
    );
  }
  const steps = week.steps.filter(({ href }) => destinations.some(({ to }) => to === href));
  return (
    <Page title={say("week.title")} next={<Standing week={week} />}>
      {runsBar ? <BeginBook /> : null}
      <Warnings warnings={week.warnings} />
      <DoNext steps={steps} />
      <div className="week-columns">
        <div>
          <Steps steps={steps} />
          {runsBar ? <Loose week={week} /> : null}
        </div>
        <div>
          {seesCosts ? <Doubts totals={week.totals} top={week.top} isEarly={week.isEarly} /> : null}
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
  return error instanceof ProblemError && error.status === 404;
}

/** So long after the last entry nobody wonders that the week is reckoned for its day. */
const FRESH_MS = 2 * 24 * 3_600_000;

function Standing({ week: { now, latestCount } }: { week: Week }) {
  const venue = useVenue();
  const me = useSignedIn();
  const date = formatDate(now.businessDate);
  const counted =
    latestCount === null
      ? say("week.neverCounted", { date })
      : say("week.lastCounted", { date, when: formatMoment(latestCount.at, venue) });
  // The demo stands still on purpose.
  const isOld = me?.via !== "demo" && Date.parse(todayAt(venue)) - Date.parse(now.businessDate) > FRESH_MS;
  return isOld ? `${counted} ${say("week.nothingSince", { date })}` : counted;
}

const ACTS = {
  count: "week.actCount",
  sales: "week.actSales",
  "ring-names": "week.actRingNames",
  variance: "week.actVariance",
  close: "week.actClose",
  order: "week.actOrder",
  prep: "week.actPrep",
} as const satisfies Record<WeekStep["id"], TextId>;

function DoNext({ steps }: { steps: readonly WeekStep[] }) {
  const step = nextStep(steps);
  if (step === undefined) {
    return (
      <section className="do-next" aria-label={say("week.doNext")}>
        <p className="do-next-title">{say("week.nothingDue")}</p>
        <p>{say("week.nothingDueMore")}</p>
      </section>
    );
  }
  return (
    <section className="do-next" aria-label={say("week.doNext")}>
      <p className="do-next-label">{say("week.doNext")}</p>
      <p className="do-next-title">
        <Link to={step.href}>{say(ACTS[step.id])}</Link>
      </p>
      <p>{stepDetail(step)}</p>
    </section>
  );
}

/** Loose ends that make every other number less sure. */
function Loose({ week: { notCounted, unmapped } }: { week: Week }) {
  if (notCounted === 0 && unmapped.length === 0) return null;
  return (
    <section>
      <h2>{say("week.looseEnds")}</h2>
      <ul className="ruled">
        {notCounted === 0 ? null : (
          <li>
            {sayWith("week.notCounted", {
              link: <Link to="/variance">{say("week.notCountedLink", { count: notCounted })}</Link>,
            })}
          </li>
        )}
        {unmapped.length === 0 ? null : (
          <li>
            {sayWith("week.unmapped", {
              count: unmapped.length,
              link: <Link to="/sales">{say("week.unmappedLink", { count: unmapped.length })}</Link>,
            })}
          </li>
        )}
      </ul>
    </section>
  );
}
