import { useMutation, useQueryClient } from "@tanstack/react-query";
import { useState } from "react";
import type { Loss } from "#engine/stock/movement.ts";
import { answerOf, server } from "../api.ts";
import { formatDate, formatLocal } from "../format.ts";
import { newEntryKey, withdrawEntry } from "../movements/entries.ts";
import { Button } from "../parts/Button.tsx";
import { focusIfLost } from "../parts/focus-if-lost.ts";
import { useNotify } from "../parts/Notice.tsx";
import { Problems } from "../parts/Problems.tsx";
import { useVenue } from "../shell/venue.tsx";
import { say } from "../texts/say.ts";
import { benchAmount } from "./amounts.ts";
import { entryMoment } from "./entry-moment.ts";
import type { Discard } from "./prep-queries.ts";

type Props = { discard: readonly Discard[]; date: string; planAt: string };

/** What is past its date; one key records that it was thrown out. */
export function PastDate({ discard, date, planAt }: Props) {
  const venue = useVenue();
  const queryClient = useQueryClient();
  const notify = useNotify();
  // Pressed again after a lost answer it is still one loss.
  const [key, setKey] = useState(newEntryKey);
  const renew = async () => {
    await queryClient.invalidateQueries();
    focusIfLost();
  };
  const takeBack = async (id: number, prep: string) => {
    await withdrawEntry({ kind: "losses", id, reason: say("prep.byMistake") });
    notify({ text: say("prep.thereAgain", { prep }) });
    await renew();
  };
  const throwOut = useMutation({
    mutationFn: (old: Discard) =>
      answerOf(
        server.losses.$post(
          { json: lossOf(old, entryMoment({ date, planAt, venue })) },
          { headers: { "idempotency-key": encodeURIComponent(`${key} ${old.prep} ${old.madeAt}`) } },
        ),
      ),
    onSuccess: async ({ id }, { prep }) => {
      setKey(newEntryKey());
      notify({ text: say("prep.thrownOutDone", { prep }), undo: () => void takeBack(id, prep) });
      await renew();
    },
  });
  if (discard.length === 0) return null;
  return (
    <section className="past-date">
      <h2>{say("prep.past")}</h2>
      <ul>
        {discard.map((old) => (
          <li key={`${old.prep} ${old.madeAt}`}>
            <div>
              <strong>{old.prep}</strong>{" "}
              <span className="batch-make">{benchAmount(old.amount, old.unit, venue)}</span>
              <span className="soft">{datesText(old)}</span>
            </div>
            <Button
              className="wet-key no-print"
              disabled={throwOut.isPending}
              aria-label={say("prep.thrownOutThis", { prep: old.prep })}
              onClick={() => throwOut.mutate(old)}
            >
              {say("prep.thrownOut")}
            </Button>
          </li>
        ))}
      </ul>
      <Problems error={throwOut.error} />
    </section>
  );
}

function datesText({ madeAt, orOlder, useBy }: Discard): string {
  const moment = formatLocal(madeAt);
  return [
    say(orOlder ? "prep.madeAtOrBefore" : "prep.madeAt", { moment }),
    ...(useBy === null ? [] : [say("prep.useByLine", { date: formatDate(useBy) })]),
  ].join(", ");
}

function lossOf({ prep, amount, unit, useBy }: Discard, at: string): Loss {
  const note = useBy === null ? say("prep.pastNote") : say("prep.useByNote", { date: useBy });
  // Tenths of a ml are not read off a jug.
  return { at, kind: "expired", what: prep, amount: Math.round(amount * 10) / 10, unit, by: "", note };
}
