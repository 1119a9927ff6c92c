import { useMutation, useQuery, useQueryClient } from "@tanstack/react-query";
import type { ClientResponse } from "hono/client";
import { useEffect, useRef, useState } from "react";
import type { SalesShape } from "#engine/sales/read/shape.ts";
import { answerOf, reach, server } from "../api.ts";
import { formatNumber } from "../format.ts";
import { Busy } from "../parts/Busy.tsx";
import { Button } from "../parts/Button.tsx";
import { useNotify } from "../parts/Notice.tsx";
import { Problems } from "../parts/Problems.tsx";
import { say } from "../texts/say.ts";
import { JobProgress } from "./JobProgress.tsx";
import { Preview } from "./Preview.tsx";
import { isUnderWay, jobQuery, type ReadingWish, type SalesJob, type SalesReport } from "./sales-queries.ts";

type Props = {
  file: File;
  filesLeft: number;
  /** Whether it is read in without a word where it leaves no question. */
  isForAll: boolean;
  onLeave: () => void;
  onDone: (report: SalesReport) => void;
};

/** One file from being sent to being read in or left: the server looks at it, a person corrects, the server reads it in. */
export function FileInHand({ file, filesLeft, isForAll, onLeave, onDone }: Props) {
  const queryClient = useQueryClient();
  const notify = useNotify();
  const send = useMutation({
    mutationFn: () => sendFile(file),
  });
  const { mutate: sendIt } = send;
  const isSent = useRef(false);
  useEffect(() => {
    if (isSent.current) return;
    isSent.current = true;
    sendIt();
  }, [sendIt]);
  const id = send.data?.id;
  const { data: job } = useQuery({ ...jobQuery(id ?? ""), enabled: id !== undefined });
  const [corrected, setCorrected] = useState<SalesShape>();
  const put = (found: SalesJob) => queryClient.setQueryData(jobQuery(found.id).queryKey, found);
  const look = useMutation({
    mutationFn: ({ wish, id }: { wish: ReadingWish; id: string }) =>
      answerOf<SalesJob>(server.sales.jobs[":id"].look.$post({ param: { id }, json: wish })),
    onSuccess: put,
  });
  const take = useMutation({
    mutationFn: ({ wish, id }: { wish: ReadingWish; id: string }) =>
      answerOf<SalesJob>(server.sales.jobs[":id"].import.$post({ param: { id }, json: wish })),
    onSuccess: put,
  });
  const cancel = useMutation({
    mutationFn: (id: string) => answerOf<SalesJob>(server.sales.jobs[":id"].cancel.$post({ param: { id } })),
    onSuccess: put,
  });
  const leave = () => {
    if (job?.state === "looked") cancel.mutate(job.id);
    onLeave();
  };

  const report = job?.state === "done" ? job.report : null;
  const isTold = useRef(false);
  useEffect(() => {
    if (report === null || isTold.current) return;
    isTold.current = true;
    notify({ text: doneWords(file.name, report) });
    onDone(report);
    void queryClient.invalidateQueries();
  }, [report, file.name, notify, onDone, queryClient]);

  const isClear = job?.state === "looked" && job.look?.question === null && job.problems.length === 0;
  const { mutate: takeIt, isIdle } = take;
  useEffect(() => {
    if (isForAll && isClear && isIdle && id !== undefined) takeIt({ id, wish: {} });
  }, [isForAll, isClear, isIdle, id, takeIt]);

  const error = send.error ?? look.error ?? take.error ?? cancel.error;
  if (send.isPending) return <Busy what={say("sales.sending", { file: file.name })} />;
  if (job === undefined || job.state === "failed" || job.state === "cancelled")
    return (
      <Ended
        problems={job?.problems ?? []}
        isCancelled={job?.state === "cancelled"}
        {...{ file, error, filesLeft }}
        onLeave={onLeave}
      />
    );
  if (isUnderWay(job)) return <JobProgress job={job} onCancel={() => cancel.mutate(job.id)} />;
  if (job.look === null || job.state !== "looked") return null;
  return (
    <>
      <Preview
        file={job.file}
        look={job.look}
        filesLeft={filesLeft}
        corrected={corrected}
        onLook={(shape) => {
          setCorrected(shape);
          look.mutate({ id: job.id, wish: { shape } });
        }}
        onTake={(wish) => take.mutate({ id: job.id, wish })}
        onLeave={leave}
      />
      <ProblemList problems={job.problems} />
      <Problems error={error} />
    </>
  );
}

function doneWords(file: string, { new: fresh, known: before, changed }: SalesReport): string {
  const known = formatNumber(before);
  if (changed === 0) return say("sales.done", { file, fresh, known });
  return say("sales.doneChanged", { file, fresh, known, changed: formatNumber(changed) });
}

type EndedProps = {
  file: File;
  error: Error | null;
  problems: readonly string[];
  isCancelled: boolean;
  filesLeft: number;
  onLeave: () => void;
};

function Ended({ file, error, problems, isCancelled, filesLeft, onLeave }: EndedProps) {
  if (error === null && problems.length === 0 && !isCancelled) return null;
  return (
    <div className="preview">
      <h2>{file.name}</h2>
      {isCancelled ? <p role="status">{say("sales.stopped")}</p> : null}
      <ProblemList problems={problems} />
      <Problems error={error} />
      <Button onClick={onLeave}>
        {filesLeft > 0 ? say("sales.nextOf", { count: filesLeft }) : say("parts.close")}
      </Button>
    </div>
  );
}

function ProblemList({ problems }: { problems: readonly string[] }) {
  if (problems.length === 0) return null;
  return (
    <ul className="problems" role="alert">
      {problems.map((problem) => (
        <li key={problem}>{problem}</li>
      ))}
    </ul>
  );
}

/** Sends the file as it is, however long. Throws ProblemError when refused or out of reach. */
function sendFile(file: File): Promise<SalesJob> {
  const headers = { accept: "application/json", "content-type": "application/octet-stream" };
  const url = `/api/sales/jobs?look=yes&name=${encodeURIComponent(file.name)}`;
  const sent = reach(url, { method: "POST", headers, body: file });
  return answerOf(sent as Promise<ClientResponse<SalesJob>>);
}
