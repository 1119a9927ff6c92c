import { useMutation, useQueryClient } from "@tanstack/react-query";
import type { ClientResponse } from "hono/client";
import { useState } from "react";
import { answerOf, server } from "../api.ts";
import { formatNumber, plural } from "../format.ts";
import { Busy } from "../parts/Busy.tsx";
import { useNotify } from "../parts/Notice.tsx";
import { Problems } from "../parts/Problems.tsx";
import { DropFiles } from "./DropFiles.tsx";
import { Preview } from "./Preview.tsx";
import type { ImportAnswer, SalesPreview } from "./sales-queries.ts";

/** Files are looked at one by one, each read in only on a person's word. */
export function ReadFiles() {
  const [files, setFiles] = useState<readonly File[]>([]);
  const [outcome, setOutcome] = useState<ImportAnswer | null>(null);
  const queryClient = useQueryClient();
  const notify = useNotify();
  const [file] = files;
  const look = useMutation({
    mutationFn: async (file: File): Promise<SalesPreview> =>
      // Typed by the server as one of two shapes; what they share is all the screen needs.
      answerOf(server.sales.preview.$post({ form: { file } }) as Promise<ClientResponse<SalesPreview>>),
  });
  const turnTo = (rest: readonly File[]) => {
    setFiles(rest);
    look.reset();
    if (rest[0] !== undefined) look.mutate(rest[0]);
  };
  const take = useMutation({
    mutationFn: async (file: File): Promise<ImportAnswer> =>
      answerOf(server.sales.import.$post({ form: { file } })),
    onSuccess: async (answer, { name }) => {
      setOutcome(answer);
      notify({
        text: `${name}: ${plural(answer.new, "new line")}, ${formatNumber(answer.known)} known before.`,
      });
      turnTo(files.slice(1));
      await queryClient.invalidateQueries();
    },
  });
  return (
    <section className="read-files">
      <DropFiles
        onFiles={(chosen) => {
          setOutcome(null);
          take.reset();
          turnTo(chosen);
        }}
      />
      {look.isPending ? <Busy what={`Looking at ${file?.name ?? "the file"}`} /> : null}
      <Problems error={look.error} />
      {file === undefined || look.data === undefined ? null : (
        <Preview
          preview={look.data}
          filesLeft={files.length - 1}
          isBusy={take.isPending}
          onTake={() => take.mutate(file)}
          onLeave={() => turnTo(files.slice(1))}
        />
      )}
      <Problems error={take.error} />
      {outcome === null ? null : <Refused outcome={outcome} />}
    </section>
  );
}

function Refused({ outcome: { refused } }: { outcome: ImportAnswer }) {
  if (refused.length === 0) return null;
  return (
    <div className="refused" role="status">
      <h3>{plural(refused.length, "row")} could not be read</h3>
      <RefusedRows refused={refused} />
    </div>
  );
}

const SHOWN = 20;

/** Rows that were left out, by their number in the file, each with its reason. */
export function RefusedRows({ refused }: { refused: ImportAnswer["refused"] }) {
  return (
    <ul className="refused-rows">
      {refused.slice(0, SHOWN).map(({ row, reason }) => (
        <li key={`${row} ${reason}`}>
          Row {row}: {reason}
        </li>
      ))}
      {refused.length > SHOWN ? <li>and {formatNumber(refused.length - SHOWN)} more.</li> : null}
    </ul>
  );
}
