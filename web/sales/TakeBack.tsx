import { useMutation, useQueryClient } from "@tanstack/react-query";
import { useState } from "react";
import { answerOf, server } from "../api.ts";
import { Button } from "../parts/Button.tsx";
import { ConfirmDialog } from "../parts/ConfirmDialog.tsx";
import { focusIfLost } from "../parts/focus-if-lost.ts";
import { useNotify } from "../parts/Notice.tsx";
import { Problems } from "../parts/Problems.tsx";
import { say } from "../texts/say.ts";

type Props = { one: { importId: number; file: string; lines: number } };

/** Takes an import back, asked once: the days are as if its file had never come. */
export function TakeBack({ one: { importId, file, lines } }: Props) {
  const queryClient = useQueryClient();
  const notify = useNotify();
  const [isAsked, setAsked] = useState(false);
  const [isDone, setDone] = useState(false);
  const undo = useMutation({
    mutationFn: () => answerOf(server.sales.imports[":id"].undo.$post({ param: { id: String(importId) } })),
    onSuccess: async () => {
      setAsked(false);
      setDone(true);
      notify({ text: say("sales.fileTakenBack", { file }) });
      await queryClient.invalidateQueries();
      focusIfLost();
    },
  });
  if (isDone) return <span className="soft">{say("sales.takenBack")}</span>;
  return (
    <>
      <Button
        kind="quiet"
        aria-label={say("sales.takeBackOne", { name: file })}
        onClick={() => setAsked(true)}
      >
        {say("sales.takeBack")}
      </Button>
      <ConfirmDialog
        isOpen={isAsked}
        title={say("sales.takeBackTitle", { file })}
        act={say("sales.takeItBack")}
        isBusy={undo.isPending}
        onConfirm={() => undo.mutate()}
        onCancel={() => setAsked(false)}
      >
        <p>{say("sales.takeBackWhy", { count: lines })}</p>
        <Problems error={undo.error} />
      </ConfirmDialog>
    </>
  );
}
