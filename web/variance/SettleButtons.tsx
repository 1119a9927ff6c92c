import { useMutation, useQueryClient } from "@tanstack/react-query";
import type { Cause } from "../answers.ts";
import { answerOf, server } from "../api.ts";
import { listWords } from "../format.ts";
import { Button } from "../parts/Button.tsx";
import { focusIfLost } from "../parts/focus-if-lost.ts";
import { useNotify } from "../parts/Notice.tsx";
import { Problems } from "../parts/Problems.tsx";
import { say } from "../texts/say.ts";
import { afterColon } from "./after-colon.ts";
import { CAUSES_HEADING, takeSettlementBack } from "./settled.ts";

/** The two counts that a report lies between. */
export type Between = { opening: string; closing: string };

/** After the check: this was it, which posts the correction, or it was not. */
export function SettleButtons({ cause, between }: { cause: Cause; between: Between }) {
  const queryClient = useQueryClient();
  const notify = useNotify();
  const takeBack = useMutation({
    mutationFn: takeSettlementBack,
    onSuccess: async () => {
      notify({ text: say("variance.takenBack") });
      await queryClient.invalidateQueries();
      focusIfLost(CAUSES_HEADING);
    },
    onError: (error) => notify({ text: error.message }),
  });
  const settle = useMutation({
    mutationFn: (answer: "confirmed" | "refuted") => {
      const { kind, what, count } = cause;
      const named = { kind, what, ...(count === undefined ? {} : { count }) };
      return answerOf(
        server.causes.settle.$post({ json: { counts: between, cause: named, answer, by: "" } }),
      );
    },
    onSuccess: async ({ id, correction }, answer) => {
      notify({ text: doneWords(answer, correction), undo: () => takeBack.mutate(id) });
      await queryClient.invalidateQueries();
      focusIfLost(CAUSES_HEADING);
    },
  });
  const what = listWords([cause.what].flat());
  return (
    <div className="settle no-print">
      {cause.correction === null ? null : (
        <p className="soft">{say("variance.ifSo", { correction: afterColon(cause.correction.words) })}</p>
      )}
      <div className="settle-acts">
        <Button
          disabled={settle.isPending}
          onClick={() => settle.mutate("confirmed")}
          aria-label={say("variance.confirmOf", { what })}
        >
          {say("variance.confirm")}
        </Button>
        <Button
          kind="quiet"
          disabled={settle.isPending}
          onClick={() => settle.mutate("refuted")}
          aria-label={say("variance.refuteOf", { what })}
        >
          {say("variance.refute")}
        </Button>
      </div>
      {settle.error === null ? null : <Problems error={settle.error} />}
    </div>
  );
}

function doneWords(answer: "confirmed" | "refuted", correction: string | null): string {
  if (answer === "refuted") return say("variance.refuted");
  return correction === null ? say("variance.confirmed") : say("variance.corrected", { correction });
}
