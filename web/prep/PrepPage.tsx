import "./prep.css";
import { useQuery } from "@tanstack/react-query";
import { useNavigate, useSearch } from "@tanstack/react-router";
import { formatDate, listWords } from "../format.ts";
import { Busy } from "../parts/Busy.tsx";
import { Button } from "../parts/Button.tsx";
import { Empty } from "../parts/Empty.tsx";
import { Field } from "../parts/Field.tsx";
import { Page } from "../parts/Page.tsx";
import { Problems } from "../parts/Problems.tsx";
import { say } from "../texts/say.ts";
import { BatchLine } from "./BatchLine.tsx";
import { Cuts } from "./Cuts.tsx";
import { LabelSettings } from "./LabelSettings.tsx";
import { MadeToday } from "./MadeToday.tsx";
import { PastDate } from "./PastDate.tsx";
import { PickList } from "./PickList.tsx";
import { PrintPlanLabels } from "./PrintLabels.tsx";
import { type PrepReport, prepQuery } from "./prep-queries.ts";
import { RunningTimers } from "./RunningTimers.tsx";
import { usePlanDay } from "./use-plan-day.ts";
import { WorkTime } from "./WorkTime.tsx";

/** What to press, cook and batch on a day, in the order of the work. */
export function PrepPage() {
  const search = useSearch({ from: "/prep" });
  const navigate = useNavigate({ from: "/prep" });
  const { date, last, error: lastError } = usePlanDay(search.date);
  const { data, error, refetch } = useQuery({ ...prepQuery(date), enabled: date !== undefined });
  const report = date === last?.date ? (data ?? last) : data;
  const fault = error ?? lastError;
  return (
    <Page
      title={date === undefined ? say("prep.title") : say("prep.titleOf", { date: formatDate(date) })}
      next={report === undefined ? undefined : nextLine(report)}
      actions={
        <div className="field-row">
          <Field
            label={say("prep.day")}
            type="date"
            value={date ?? ""}
            onChange={(event) => {
              const picked = event.target.value;
              void navigate({ search: picked === "" ? {} : { date: picked }, replace: true });
            }}
          />
          <Button className="wet-key" onClick={() => window.print()}>
            {say("prep.printList")}
          </Button>
          {report === undefined ? null : <PrintPlanLabels batches={report.batches} date={report.date} />}
        </div>
      }
    >
      <RunningTimers />
      {report === undefined && fault === null ? <Busy what={say("prep.working")} /> : null}
      {fault === null ? null : <Problems error={fault} onRetry={() => void refetch()} />}
      {report === undefined ? null : <Plan report={report} />}
    </Page>
  );
}

function Plan({ report }: { report: PrepReport }) {
  const { batches, cuts, discard, pickList, enough, date, at } = report;
  const now = batches.filter(({ canWait }) => !canWait);
  const later = batches.filter(({ canWait }) => canWait);
  return (
    <div className="prep">
      <PastDate discard={discard} date={date} planAt={at} />
      {batches.length === 0 ? (
        <Empty title={say("prep.nothing")}>
          <p>{say("prep.nothingWhy")}</p>
        </Empty>
      ) : null}
      <WorkTime time={report.activeMinutes} />
      <nav className="wet-keys prep-parts no-print" aria-label={say("prep.parts")}>
        {pickList.length === 0 ? null : (
          <a className="button wet-key" href="#fetch">
            {say("prep.toFetchKey")}
          </a>
        )}
        {cuts.length === 0 ? null : (
          <a className="button wet-key" href="#cut">
            {say("prep.toCutKey")}
          </a>
        )}
      </nav>
      <Batches title={say("prep.makeToday")} batches={now} date={date} first={1} />
      <Batches title={say("prep.canWait")} batches={later} date={date} first={now.length + 1} />
      <MadeToday date={date} />
      <Cuts cuts={cuts} />
      <PickList lines={pickList} />
      {enough.length === 0 ? null : (
        <p className="soft">{say("prep.enough", { preps: listWords(enough.map(({ prep }) => prep)) })}</p>
      )}
      <LabelSettings />
      <p className="soft prep-care">{say("prep.care")}</p>
    </div>
  );
}

type BatchesProps = { title: string; batches: PrepReport["batches"]; date: string; first: number };

function Batches({ title, batches, date, first }: BatchesProps) {
  if (batches.length === 0) return null;
  return (
    <section>
      <h2>{title}</h2>
      <ol className="batch-lines">
        {batches.map((batch, index) => (
          <BatchLine key={batch.prep} batch={batch} date={date} place={first + index} />
        ))}
      </ol>
    </section>
  );
}

function nextLine({ batches, discard }: PrepReport): string {
  const past = discard.length === 0 ? [] : [say("prep.pastDate", { count: discard.length })];
  const first = batches.find(({ canWait }) => !canWait) ?? batches[0];
  const work =
    first === undefined
      ? say("prep.nothingElse")
      : say("prep.beginWith", { count: batches.length, prep: first.prep });
  return [...past, work].join(" ");
}
