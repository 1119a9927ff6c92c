import { useMutation, useQuery, useQueryClient } from "@tanstack/react-query";
import { useState } from "react";
import { answerOf, server } from "../api.ts";
import { Button } from "../parts/Button.tsx";
import { ConfirmDialog } from "../parts/ConfirmDialog.tsx";
import { useNotify } from "../parts/Notice.tsx";
import { Problems } from "../parts/Problems.tsx";
import { useMay } from "../people/signed-in.ts";
import { say } from "../texts/say.ts";

/** The owner's switch: whether who rang a line is kept. Off, no name is read; what was kept before can be erased. */
export function KeepStaff() {
  const mayKeep = useMay("keepStaff");
  return mayKeep ? <Switch /> : null;
}

function Switch() {
  const queryClient = useQueryClient();
  const notify = useNotify();
  const [isAsked, setAsked] = useState(false);
  const { data: kept } = useQuery({
    queryKey: ["sales", "staff"],
    queryFn: () => answerOf(server.sales.staff.$get()),
  });
  const turn = useMutation({
    mutationFn: (keeps: boolean) => answerOf(server.sales.staff.$post({ json: { keeps } })),
    onSuccess: async ({ keeps, names }) => {
      notify({ text: say(keeps ? "sales.staffKept" : "sales.staffNotKept") });
      // What was kept until now is not silently left behind.
      if (!keeps && names > 0) setAsked(true);
      await queryClient.invalidateQueries();
    },
  });
  const erase = useMutation({
    mutationFn: () => answerOf(server.sales.staff.erase.$post()),
    onSuccess: async ({ names }) => {
      setAsked(false);
      notify({ text: say("sales.staffErased", { count: names }) });
      await queryClient.invalidateQueries();
    },
  });
  if (kept === undefined) return null;
  return (
    <section aria-label={say("sales.staffTitle")}>
      <label>
        <input
          type="checkbox"
          checked={kept.keeps}
          disabled={turn.isPending}
          onChange={({ target }) => turn.mutate(target.checked)}
        />{" "}
        {say("sales.staffKeep")}
      </label>
      <p className="soft">{say("sales.staffWhy")}</p>
      <Problems error={turn.error} />
      {kept.names === 0 ? null : (
        <p>
          {say("sales.staffHeld", { count: kept.names, days: kept.days })}{" "}
          <Button kind="quiet" onClick={() => setAsked(true)}>
            {say("sales.staffErase")}
          </Button>
        </p>
      )}
      <ConfirmDialog
        isOpen={isAsked}
        title={say("sales.staffEraseTitle", { count: kept.names })}
        act={say("sales.staffErase")}
        isBusy={erase.isPending}
        onConfirm={() => erase.mutate()}
        onCancel={() => setAsked(false)}
      >
        <p>{say("sales.staffEraseWhy")}</p>
        <Problems error={erase.error} />
      </ConfirmDialog>
    </section>
  );
}
