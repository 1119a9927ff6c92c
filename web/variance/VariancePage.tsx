import "./variance.css";
import { useQuery } from "@tanstack/react-query";
import { useNavigate, useSearch } from "@tanstack/react-router";
import { causesByMoney } from "#engine/variance/causes/by-money.ts";
import type { VarianceAnswer } from "../answers.ts";
import { formatLocal } from "../format.ts";
import { ChangedBy } from "../history/ChangedBy.tsx";
import { Busy } from "../parts/Busy.tsx";
import { Page } from "../parts/Page.tsx";
import { Problems } from "../parts/Problems.tsx";
import { varianceQuery } from "../queries.ts";
import { say } from "../texts/say.ts";
import { afterColon } from "./after-colon.ts";
import { Causes } from "./Causes.tsx";
import { CountedSince } from "./CountedSince.tsx";
import { Drifts } from "./Drifts.tsx";
import { MissingSales, OnceSalesAreIn, useMissingSales } from "./MissingSales.tsx";
import { NoAccusation } from "./NoAccusation.tsx";
import { NotCounted } from "./NotCounted.tsx";
import { PeriodPicker } from "./PeriodPicker.tsx";
import { SettledList } from "./SettledList.tsx";
import { SpotCount } from "./SpotCount.tsx";
import { TotalsLine } from "./TotalsLine.tsx";
import { VarianceChart } from "./VarianceChart.tsx";
import { VarianceTable } from "./VarianceTable.tsx";
import { WhereItIs } from "./WhereItIs.tsx";

/** Is money leaking, where, how sure, and what to check first. */
export function VariancePage() {
  const period = useSearch({ from: "/variance" });
  const navigate = useNavigate({ from: "/variance" });
  const { data: report, error, refetch } = useQuery(varianceQuery(period));
  return (
    <Page
      title={say("shell.variance")}
      next={report === undefined ? undefined : <NextLine report={report} />}
      actions={<PeriodPicker period={period} onPick={(search) => void navigate({ search })} />}
    >
      <NoAccusation />
      {report !== undefined ? <Report report={report} /> : null}
      {report === undefined && error === null ? <Busy what={say("variance.comparing")} /> : null}
      {error === null ? null : <Problems error={error} onRetry={() => void refetch()} />}
    </Page>
  );
}

function Report({ report }: { report: VarianceAnswer }) {
  const isEarly = useMissingSales(report.to) !== null;
  const baseOf = (item: string) => report.items.find((row) => row.item === item)?.base;
  return (
    <>
      <MissingSales to={report.to} />
      {report.items.length === 0 ? null : <TotalsLine totals={report.totals} isOfFew={report.isOfFew} />}
      <CountedSince
        isOfFew={report.isOfFew}
        closing={report.closing}
        compared={report.items.length}
        page="/variance"
      />
      <OnceSalesAreIn to={report.to} what={say("variance.causesEarly")}>
        <Causes causes={causesByMoney(report)} between={report} baseOf={baseOf} />
        <SpotCount spotCount={report.spotCount} />
      </OnceSalesAreIn>
      <SettledList />
      {report.items.length === 0 ? null : (
        <>
          <section>
            <h2>{say("variance.whereMoney")}</h2>
            <VarianceChart rows={report.items} />
            <VarianceTable rows={report.items} fileName={`variance ${report.closing}`} />
          </section>
          <section>
            <h2>{say("variance.whereItIs")}</h2>
            <WhereItIs where={report.where} />
          </section>
        </>
      )}
      {isEarly ? null : <Drifts />}
      <NotCounted items={report.notCounted} areasByItem={report.notCountedIn} />
      <ChangedBy subject={report.closing} />
    </>
  );
}

function NextLine({ report }: { report: VarianceAnswer }) {
  const isEarly = useMissingSales(report.to) !== null;
  const { from, to } = report;
  return isEarly
    ? say("variance.firstSales", { from: formatLocal(from), to: formatLocal(to) })
    : nextLine(report);
}

function nextLine(report: VarianceAnswer): string {
  const { items, from, to } = report;
  const [cause] = causesByMoney(report);
  const chased = items.filter(({ verdict }) => verdict === "chase");
  const span = { from: formatLocal(from), to: formatLocal(to) };
  if (cause !== undefined) return say("variance.firstCheck", { ...span, check: afterColon(cause.check) });
  if (chased[0] !== undefined) return say("variance.firstItem", { ...span, item: chased[0].item });
  return say(items.length === 0 ? "variance.nothingCompared" : "variance.nothingStandsOut", span);
}
