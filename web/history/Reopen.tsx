import { useMutation, useQueryClient } from "@tanstack/react-query";
import { type FormEvent, useState } from "react";
import { formatDate } from "../format.ts";
import { Button } from "../parts/Button.tsx";
import { Field } from "../parts/Field.tsx";
import { focusIfLost } from "../parts/focus-if-lost.ts";
import { useNotify } from "../parts/Notice.tsx";
import { Problems } from "../parts/Problems.tsx";
import { say } from "../texts/say.ts";
import { CLOSED_WEEKS, reopenWeek } from "./history-queries.ts";

const REOPEN_BUTTON = "reopen-week";

/** Reopens the week that was closed last; the owner says why. */
export function Reopen({ through }: { through: string }) {
  const [isOpen, setOpen] = useState(false);
  const [reason, setReason] = useState("");
  const date = formatDate(through);
  const queryClient = useQueryClient();
  const notify = useNotify();
  const reopen = useMutation({
    mutationFn: () => reopenWeek(reason.trim()),
    onSuccess: async () => {
      setOpen(false);
      setReason("");
      notify({ text: say("history.reopened", { date }) });
      await queryClient.invalidateQueries();
      focusIfLost(CLOSED_WEEKS);
    },
  });
  const send = (event: FormEvent) => {
    event.preventDefault();
    reopen.mutate();
  };
  if (!isOpen) {
    return (
      <Button id={REOPEN_BUTTON} onClick={() => setOpen(true)}>
        {say("history.reopenTo", { date })}
      </Button>
    );
  }
  return (
    <form className="reopen" onSubmit={send}>
      <Field
        label={say("history.reopenWhy", { date })}
        required
        autoFocus
        value={reason}
        placeholder={say("history.reopenHint")}
        hint={say("history.reopenStays")}
        onChange={(event) => setReason(event.target.value)}
      />
      <div className="form-acts">
        <Button type="submit" kind="main" disabled={reason.trim() === "" || reopen.isPending}>
          {say("history.reopen")}
        </Button>
        <Button
          onClick={() => {
            setOpen(false);
            focusIfLost(REOPEN_BUTTON);
          }}
        >
          {say("history.leaveClosed")}
        </Button>
      </div>
      <Problems error={reopen.error} />
    </form>
  );
}
