import { useMutation, useQueryClient } from "@tanstack/react-query";
import { type FormEvent, useState } from "react";
import { formatDate } from "../format.ts";
import { Button } from "../parts/Button.tsx";
import { Field } from "../parts/Field.tsx";
import { useNotify } from "../parts/Notice.tsx";
import { Problems } from "../parts/Problems.tsx";
import { reopenWeek } from "./history-queries.ts";

/** Reopens the week that was closed last; the owner says why. */
export function Reopen({ through }: { through: string }) {
  const [isOpen, setOpen] = useState(false);
  const [reason, setReason] = useState("");
  const queryClient = useQueryClient();
  const notify = useNotify();
  const reopen = useMutation({
    mutationFn: () => reopenWeek(reason.trim()),
    onSuccess: async () => {
      setOpen(false);
      setReason("");
      notify({ text: `The week to ${formatDate(through)} is open again.` });
      await queryClient.invalidateQueries();
    },
  });
  const send = (event: FormEvent) => {
    event.preventDefault();
    reopen.mutate();
  };
  if (!isOpen) return <Button onClick={() => setOpen(true)}>Reopen the week to {formatDate(through)}</Button>;
  return (
    <form className="reopen" onSubmit={send}>
      <Field
        label={`Why the week to ${formatDate(through)} is reopened`}
        required
        autoFocus
        value={reason}
        placeholder="as: invoice Q-130 came late"
        hint="It stays in the history."
        onChange={(event) => setReason(event.target.value)}
      />
      <div className="form-acts">
        <Button type="submit" kind="main" disabled={reason.trim() === "" || reopen.isPending}>
          Reopen it
        </Button>
        <Button onClick={() => setOpen(false)}>Leave it closed</Button>
      </div>
      <Problems error={reopen.error} />
    </form>
  );
}
