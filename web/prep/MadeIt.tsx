import { useMutation, useQueryClient } from "@tanstack/react-query";
import { type FormEvent, type ReactNode, useState } from "react";
import { readAmount } from "#engine/measure/amount.ts";
import { pressedNote } from "#engine/prep/fruit-yield.ts";
import type { Batch } from "#engine/stock/movement.ts";
import { answerOf, server } from "../api.ts";
import { formatMoment } from "../format.ts";
import { newEntryKey, withdrawEntry } from "../movements/entries.ts";
import { Button } from "../parts/Button.tsx";
import { Field } from "../parts/Field.tsx";
import { useNotify } from "../parts/Notice.tsx";
import { Problems } from "../parts/Problems.tsx";
import { useFocusFirst } from "../parts/use-focus-first.ts";
import { useVenue } from "../shell/venue.tsx";
import { entryMoment } from "./entry-moment.ts";
import type { BatchCard } from "./prep-queries.ts";

type Props = { card: BatchCard };

/** Takes the place of the form, and of its focus. */
function Recorded({ children }: { children: ReactNode }) {
  const place = useFocusFirst<HTMLElement>();
  return (
    <section ref={place} className="made-it" role="status">
      {children}
    </section>
  );
}

/** Records the batch with what it really gave; that moves what the next one is expected to give. */
export function MadeIt({ card: { prep, make, unit, date, inputs } }: Props) {
  const venue = useVenue();
  const queryClient = useQueryClient();
  const notify = useNotify();
  // Until something is typed it is what the card makes; what was recorded stays shown when the card is reckoned anew.
  const [typed, setTyped] = useState<string | null>(null);
  const made = typed ?? String(Math.round(make * 10) / 10);
  const [by, setBy] = useState("");
  const fruit = inputs.length === 1 && inputs[0]?.base === "each" ? inputs[0].item : null;
  const [pressed, setPressed] = useState("");
  const pieces = pressed.trim() === "" ? null : readAmount(pressed, { decimalComma: true });
  // Pressed again after a lost answer it is still one batch.
  const [key, setKey] = useState(newEntryKey);
  const [recorded, setRecorded] = useState<{ id: number; batch: Batch } | null>(null);
  const amount = readAmount(made, { decimalComma: true });
  const isPressedWrong = pieces === undefined || (pieces !== null && pieces <= 0);
  const isWrong = amount === undefined || amount <= 0 || isPressedWrong;
  const record = useMutation({
    mutationFn: (batch: Batch) =>
      answerOf(server.batches.$post({ json: batch }, { headers: { "idempotency-key": key } })),
    onSuccess: async ({ id }, batch) => {
      setRecorded({ id, batch });
      setKey(newEntryKey());
      notify({ text: `${prep}: ${batch.made} ${unit} recorded.`, undo: () => takeBack.mutate(id) });
      await queryClient.invalidateQueries();
    },
  });
  const takeBack = useMutation({
    mutationFn: (id: number) => withdrawEntry({ kind: "batches", id, reason: "entered by mistake" }),
    onSuccess: async () => {
      setRecorded(null);
      notify({ text: `The batch of ${prep} is taken back.` });
      await queryClient.invalidateQueries();
    },
  });
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (isWrong) return;
    const at = entryMoment({ date, planAt: `${date} 14:00`, venue });
    const note = fruit === null || pieces == null ? "" : pressedNote({ pieces, fruit });
    record.mutate({ at, prep, made: amount, unit, by: by.trim(), note });
  };
  if (recorded !== null) {
    const { id, batch } = recorded;
    return (
      <Recorded>
        <p>
          <strong>
            Recorded: {batch.made} {unit}
          </strong>
          , {formatMoment(batch.at, venue)}. Label it now.
        </p>
        <Button className="wet-key" onClick={() => takeBack.mutate(id)}>
          Take it back
        </Button>
        <Problems error={takeBack.error} />
      </Recorded>
    );
  }
  return (
    <form className="made-it" onSubmit={submit}>
      <div className="field-row">
        <Field
          label={`Really made, ${unit}`}
          inputMode="decimal"
          value={made}
          error={amount === undefined || amount <= 0 ? "write what came out, as 950" : undefined}
          onChange={(event) => setTyped(event.target.value)}
        />
        {fruit === null ? null : (
          <Field
            label={`${fruit} pressed, pieces`}
            inputMode="decimal"
            value={pressed}
            hint="If you counted: the next card knows your fruit."
            error={isPressedWrong ? "a number, as 92" : undefined}
            onChange={(event) => setPressed(event.target.value)}
          />
        )}
        <Field label="Made by" value={by} onChange={(event) => setBy(event.target.value)} />
        <Button kind="main" type="submit" className="wet-key" disabled={record.isPending}>
          Made it
        </Button>
      </div>
      <Problems error={record.error} />
    </form>
  );
}
