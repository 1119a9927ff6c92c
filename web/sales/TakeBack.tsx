import { useMutation, useQueryClient } from "@tanstack/react-query";
import { useState } from "react";
import { answerOf, server } from "../api.ts";
import { plural } from "../format.ts";
import { Button } from "../parts/Button.tsx";
import { ConfirmDialog } from "../parts/ConfirmDialog.tsx";
import { useNotify } from "../parts/Notice.tsx";
import { Problems } from "../parts/Problems.tsx";

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
      notify({ text: `${file} is taken back. Reading the file in again brings it back.` });
      await queryClient.invalidateQueries();
    },
  });
  if (isDone) return <span className="soft">taken back</span>;
  return (
    <>
      <Button kind="quiet" aria-label={`Take back ${file}`} onClick={() => setAsked(true)}>
        Take back
      </Button>
      <ConfirmDialog
        isOpen={isAsked}
        title={`Take back ${file}?`}
        act="Take it back"
        isBusy={undo.isPending}
        onConfirm={() => undo.mutate()}
        onCancel={() => setAsked(false)}
      >
        <p>
          Its {plural(lines, "line")} no longer count, and the days are as if the file had never come. Lines
          that another file brings too stay.
        </p>
        <Problems error={undo.error} />
      </ConfirmDialog>
    </>
  );
}
