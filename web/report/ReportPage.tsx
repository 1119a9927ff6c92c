import "../variance/variance.css";
import "./report.css";
import { useQuery } from "@tanstack/react-query";
import { useNavigate, useSearch } from "@tanstack/react-router";
import { formatLocal, formatNumber } from "../format.ts";
import { ClosingLine } from "../history/ClosingLine.tsx";
import { formatMoney } from "../money.ts";
import { Busy } from "../parts/Busy.tsx";
import { Button } from "../parts/Button.tsx";
import { Page } from "../parts/Page.tsx";
import { Problems } from "../parts/Problems.tsx";
import { saveCsv } from "../parts/save-file.ts";
import { useVenue } from "../shell/venue.tsx";
import { say } from "../texts/say.ts";
import { CountedSince } from "../variance/CountedSince.tsx";
import { settledWords } from "../variance/cause-words.ts";
import { MissingSales, OnceSalesAreIn } from "../variance/MissingSales.tsx";
import { NoAccusation } from "../variance/NoAccusation.tsx";
import { PeriodPicker } from "../variance/PeriodPicker.tsx";
import { WhereItIs } from "../variance/WhereItIs.tsx";
import { Checks } from "./Checks.tsx";
import { Figures } from "./Figures.tsx";
import { Periods } from "./Periods.tsx";
import { type OwnerReport, ownerReportQuery } from "./query.ts";
import { reportRows } from "./report-rows.ts";

/** The owner's ten minutes on one page: what was used, what is unexplained, what to check, what was settled. */
export function ReportPage() {
  const venue = useVenue();
  const period = useSearch({ from: "/report" });
  const navigate = useNavigate({ from: "/report" });
  const { data: report, error, refetch } = useQuery(ownerReportQuery(period));
  return (
    <Page
      title={say("report.title")}
      next={report === undefined ? undefined : spanOf(report)}
      actions={
        <div className="report-acts">
          <PeriodPicker period={period} onPick={(search) => void navigate({ search })} />
          {report === undefined ? null : (
            <Button onClick={() => void saveCsv(`report ${report.closing}`, reportRows(report, venue))}>
              CSV
            </Button>
          )}
          <Button onClick={() => window.print()}>{say("report.print")}</Button>
        </div>
      }
    >
      {report !== undefined ? <Report report={report} /> : null}
      {report === undefined && error === null ? <Busy what={say("report.writing")} /> : null}
      {error === null ? null : <Problems error={error} onRetry={() => void refetch()} />}
    </Page>
  );
}

function spanOf({ venue, from, to }: OwnerReport): string {
  return say("report.span", { venue, from: formatLocal(from), to: formatLocal(to) });
}

const MOST = { settled: 5, parts: 6 } as const;

function Report({ report }: { report: OwnerReport }) {
  return (
    <div className="owner-report">
      <MissingSales to={report.to} />
      <OnceSalesAreIn to={report.to} what={say("report.early")}>
        <Compared report={report} />
      </OnceSalesAreIn>
      <NoAccusation />
      <NotCounted report={report} />
      <ClosingLine />
    </div>
  );
}

/** What the two counts and the sales between them come to. */
function Compared({ report }: { report: OwnerReport }) {
  return (
    <>
      {report.compared === 0 ? null : <Figures report={report} />}
      <CountedSince
        isOfFew={report.isOfFew}
        closing={report.closing}
        compared={report.compared}
        page="/report"
      />
      {report.compared === 0 ? null : <Checks report={report} />}
      <div className="report-columns">
        <Periods report={report} />
        <Settled report={report} />
      </div>
      {report.compared === 0 ? null : (
        <section>
          <h2>{say("variance.whereItIs")}</h2>
          <WhereItIs where={report.where} most={MOST.parts} />
        </section>
      )}
    </>
  );
}

function Settled({ report: { settled } }: { report: OwnerReport }) {
  const venue = useVenue();
  return (
    <section>
      <h2>{say("report.settled")}</h2>
      {settled.length === 0 ? <p>{say("report.nothingSettled")}</p> : null}
      <ul className="ruled">
        {settled.slice(0, MOST.settled).map((one) => (
          <li key={one.id}>{settledWords(one, venue)}</li>
        ))}
      </ul>
      {settled.length <= MOST.settled ? null : (
        <p className="soft">
          {say("report.andMore", { count: formatNumber(settled.length - MOST.settled) })}
        </p>
      )}
    </section>
  );
}

function NotCounted({ report: { notCounted, totals } }: { report: OwnerReport }) {
  const { currency } = useVenue();
  return (
    <p className="soft">
      {say("report.notes", { sales: formatMoney(totals.sales, currency, { whole: true }) })}
      {notCounted === 0 ? "" : ` ${say("report.notCounted", { count: notCounted })}`}
    </p>
  );
}
