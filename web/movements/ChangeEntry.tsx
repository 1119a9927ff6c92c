import { useMutation, useQueryClient } from "@tanstack/react-query";
import { useEffect, useRef, useState } from "react";
import { Button } from "../parts/Button.tsx";
import { Field } from "../parts/Field.tsx";
import { focusIfLost } from "../parts/focus-if-lost.ts";
import { useNotify } from "../parts/Notice.tsx";
import { Problems } from "../parts/Problems.tsx";
import { useVenue } from "../shell/venue.tsx";
import { say } from "../texts/say.ts";
import { type AnyFact, correctEntry, type Entry, type Kind, withdrawEntry } from "./entries.ts";
import { FactForm } from "./FactForm.tsx";
import { factWords } from "./fact-words.ts";

type Props = { kind: Kind; entry: Entry<AnyFact>; way: "correct" | "withdraw"; onClose: () => void };

/** Corrects an entry or takes it back; either way it says why and stays in the history. */
export function ChangeEntry({ kind, entry: { id, fact }, way, onClose }: Props) {
  const venue = useVenue();
  const queryClient = useQueryClient();
  const notify = useNotify();
  const heading = useRef<HTMLHeadingElement>(null);
  const [reason, setReason] = useState("");
  useEffect(() => {
    heading.current?.focus();
    heading.current?.scrollIntoView({ block: "center" });
  }, []);
  const save = useMutation({
    mutationFn: (facts: AnyFact | null) => {
      const change = { kind, id, reason: reason.trim() };
      return facts === null ? withdrawEntry(change) : correctEntry({ ...change, facts });
    },
    onSuccess: async (_, facts) => {
      notify({
        text: facts === null ? say("movements.takenBack") : say("movements.corrected"),
      });
      onClose();
      await queryClient.invalidateQueries();
      // The button it was asked by went with its entry.
      focusIfLost();
    },
  });
  const { what, amount } = factWords(kind, fact, venue);
  const hasReason = reason.trim() !== "";
  const why = (
    <Field
      label={say("movements.why")}
      required
      value={reason}
      placeholder={say(way === "correct" ? "movements.whyCorrect" : "movements.whyTakeBack")}
      onChange={(event) => setReason(event.target.value)}
    />
  );
  const title = say(way === "correct" ? "movements.correctTitle" : "movements.takeBackTitle", {
    what,
    amount,
  });
  return (
    // No modal dialog: the lists of names open beside the form, where a dialog of the browser would cover them.
    <section className="enter-facts change-entry" aria-label={title}>
      <h2 ref={heading} tabIndex={-1}>
        {title}
      </h2>
      {why}
      {way === "correct" ? (
        <FactForm
          kind={kind}
          initial={fact}
          act={say("movements.saveCorrection")}
          isBusy={save.isPending || !hasReason}
          onSubmit={([facts]) => {
            if (facts !== undefined) save.mutate(facts);
          }}
          onLeave={onClose}
        />
      ) : (
        <div className="form-acts">
          <Button kind="main" disabled={!hasReason || save.isPending} onClick={() => save.mutate(null)}>
            {say("movements.takeItBack")}
          </Button>
          <Button onClick={onClose}>{say("movements.leave")}</Button>
        </div>
      )}
      <Problems error={save.error} />
    </section>
  );
}
