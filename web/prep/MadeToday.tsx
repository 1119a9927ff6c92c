import { useMutation, useQuery, useQueryClient } from "@tanstack/react-query";
import { localToInstant } from "#engine/sales/read/clock.ts";
import { numbered } from "#engine/stock/batch-inputs.ts";
import type { BatchEntry } from "#engine/stock/movement.ts";
import { addDays } from "#engine/time.ts";
import { formatMoment } from "../format.ts";
import { batchesQuery, withdrawEntry } from "../movements/entries.ts";
import { factWords } from "../movements/fact-words.ts";
import { Button } from "../parts/Button.tsx";
import { focusIfLost } from "../parts/focus-if-lost.ts";
import { useNotify } from "../parts/Notice.tsx";
import { Problems } from "../parts/Problems.tsx";
import { useVenue } from "../shell/venue.tsx";
import { say } from "../texts/say.ts";
import { PrintLabels } from "./PrintLabels.tsx";
import { cardQuery, renewAfterEntry } from "./prep-queries.ts";

/** What is recorded as made on a business day, each with its label and a way to take it back. */
export function MadeToday({ date }: { date: string }) {
  const venue = useVenue();
  const queryClient = useQueryClient();
  const notify = useNotify();
  const dayBegins = (day: string) => localToInstant(`${day} ${venue.dayEnds}`, venue);
  const { data: entries = [] } = useQuery(
    batchesQuery({ from: dayBegins(date), to: dayBegins(addDays(date, 1)) }),
  );
  const takeBack = useMutation({
    mutationFn: (id: number) => withdrawEntry({ kind: "batches", id, reason: say("prep.byMistake") }),
    onSuccess: async () => {
      notify({ text: say("prep.takenBack") });
      await renewAfterEntry(queryClient);
      focusIfLost();
    },
  });
  if (entries.length === 0) return null;
  const ofDay = numbered(entries.map(({ fact, id }) => ({ ...fact, at: date, madeAt: fact.at, id })));
  return (
    <section className="no-print">
      <h2>{say("prep.made")}</h2>
      <ul className="made-lines">
        {ofDay.map(({ batch: { madeAt, id, ...batch }, batchNo }) => {
          const { what, amount, about } = factWords("batches", batch, venue);
          return (
            <li key={id}>
              <div>
                <strong>{what}</strong> <span className="batch-make">{amount}</span>
                <span className="soft">
                  {[formatMoment(madeAt, venue), about, batch.by].filter(Boolean).join(", ")}
                </span>
              </div>
              <div className="wet-keys">
                <BatchLabel batch={batch} date={date} batchNo={batchNo} />
                <Button
                  className="wet-key"
                  aria-label={say("prep.takeBackThis", { prep: what })}
                  disabled={takeBack.isPending}
                  onClick={() => takeBack.mutate(id)}
                >
                  {say("prep.takeBack")}
                </Button>
              </div>
            </li>
          );
        })}
      </ul>
      <Problems error={takeBack.error} />
    </section>
  );
}

type LabelProps = { batch: BatchEntry; date: string; batchNo: number };

/** The labels of what was made, under the number it has among the day's batches. */
function BatchLabel({ batch: { prep, made }, date, batchNo }: LabelProps) {
  const { data: card } = useQuery(cardQuery({ prep, date, size: { way: "amount", make: made }, batchNo }));
  return card === undefined ? null : (
    <PrintLabels labels={card.labels} text={say("prep.label")} name={prep} />
  );
}
