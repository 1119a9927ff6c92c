import { useMutation, useQueryClient } from "@tanstack/react-query";
import { Link } from "@tanstack/react-router";
import { type ReactNode, useState } from "react";
import type { Label } from "#engine/prep/label.ts";
import type { BatchEntry } from "#engine/stock/movement.ts";
import { answerOf, server } from "../api.ts";
import { formatMoment, listWords, withUnit } from "../format.ts";
import { newEntryKey, withdrawEntry } from "../movements/entries.ts";
import { Button } from "../parts/Button.tsx";
import { focusIfLost } from "../parts/focus-if-lost.ts";
import { useNotify } from "../parts/Notice.tsx";
import { Problems } from "../parts/Problems.tsx";
import { useFocusFirst } from "../parts/use-focus-first.ts";
import { useVenue } from "../shell/venue.tsx";
import { say, sayWith } from "../texts/say.ts";
import { benchAmount, plainNumber, unitWord } from "./amounts.ts";
import { MadeForm } from "./MadeForm.tsx";
import { PrintLabels } from "./PrintLabels.tsx";
import { type BatchCard, renewAfterEntry } from "./prep-queries.ts";

type Props = { card: BatchCard };
type RecordedBatch = { id: number; batch: BatchEntry; labels: readonly Label[] };

/** Records the batch with what it really gave and took; that moves what the next one is expected to give. */
export function MadeIt({ card }: Props) {
  const queryClient = useQueryClient();
  const notify = useNotify();
  // Pressed again after a lost answer it is still one batch.
  const [key, setKey] = useState(newEntryKey);
  const [recorded, setRecorded] = useState<RecordedBatch | null>(null);
  const record = useMutation({
    mutationFn: (batch: BatchEntry) =>
      answerOf(server.batches.$post({ json: batch }, { headers: { "idempotency-key": key } })),
    onSuccess: async ({ id }, batch) => {
      // The labels as they were numbered before this batch was on record.
      setRecorded({ id, batch, labels: card.labels });
      setKey(newEntryKey());
      notify({ text: say("prep.recordedNow", { prep: card.prep }), undo: () => takeBack.mutate(id) });
      await renewAfterEntry(queryClient);
    },
  });
  const takeBack = useMutation({
    mutationFn: (id: number) => withdrawEntry({ kind: "batches", id, reason: say("prep.byMistake") }),
    onSuccess: async () => {
      setRecorded(null);
      notify({ text: say("prep.batchTakenBack", { prep: card.prep }) });
      await renewAfterEntry(queryClient);
      focusIfLost();
    },
  });
  return recorded === null ? (
    <MadeForm card={card} isBusy={record.isPending} error={record.error} onMade={record.mutate} />
  ) : (
    <Recorded
      recorded={recorded}
      date={card.date}
      error={takeBack.error}
      onTakeBack={() => takeBack.mutate(recorded.id)}
    />
  );
}

type RecordedProps = {
  recorded: RecordedBatch;
  date: string;
  error: Error | null;
  onTakeBack: () => void;
};

function Recorded({ recorded: { batch, labels }, date, error, onTakeBack }: RecordedProps) {
  const venue = useVenue();
  const used = batch.inputs ?? [];
  const recorded = {
    what: (
      <strong>
        {say("prep.recordedAmount", { amount: withUnit(plainNumber(batch.made), unitWord(batch.unit)) })}
      </strong>
    ),
    moment: formatMoment(batch.at, venue),
  };
  return (
    <FocusedSection>
      <p>
        {used.length === 0
          ? sayWith("prep.recorded", recorded)
          : sayWith("prep.recordedWith", {
              ...recorded,
              used: listWords(
                used.map(({ item, amount, unit }) => `${benchAmount(amount, unit, venue)} ${item}`),
              ),
            })}
      </p>
      <div className="wet-keys">
        <PrintLabels labels={labels} kind="main" />
        <Link to="/prep" search={{ date }} className="button wet-key">
          {say("prep.backToList")}
        </Link>
        <Button className="wet-key" onClick={onTakeBack}>
          {say("prep.takeBack")}
        </Button>
      </div>
      <Problems error={error} />
    </FocusedSection>
  );
}

/** Takes the place of the form, and of its focus. */
function FocusedSection({ children }: { children: ReactNode }) {
  const place = useFocusFirst<HTMLElement>();
  return (
    <section ref={place} className="made-it" role="status">
      {children}
    </section>
  );
}
