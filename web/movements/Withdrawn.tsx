import { useMutation, useQuery, useQueryClient } from "@tanstack/react-query";
import { formatMoment } from "../format.ts";
import { Button } from "../parts/Button.tsx";
import { useNotify } from "../parts/Notice.tsx";
import { Problems } from "../parts/Problems.tsx";
import { useMay } from "../people/signed-in.ts";
import { useVenue } from "../shell/venue.tsx";
import { say } from "../texts/say.ts";
import {
  type AnyFact,
  type Entry,
  enterFacts,
  entriesQuery,
  type Kind,
  newEntryKey,
  withdrawnQuery,
} from "./entries.ts";
import { factWords } from "./fact-words.ts";

/** What was taken back: it counts for nothing, stays readable, and can be entered once more. */
export function Withdrawn({ kind }: { kind: Kind }) {
  const { data, error, refetch } = useQuery(withdrawnQuery(kind));
  const { error: listError } = useQuery(entriesQuery(kind));
  // Out of reach for both, the list above says it once.
  if (error !== null && listError !== null) return null;
  if (error !== null) return <Problems error={error} onRetry={() => void refetch()} />;
  const gone: Entry<AnyFact>[] = data ?? [];
  if (gone.length === 0) return null;
  return (
    <details className="withdrawn">
      <summary>{say("movements.takenBackCount", { count: gone.length })}</summary>
      <ul>
        {gone.map((entry) => (
          <GoneEntry key={entry.id} kind={kind} entry={entry} />
        ))}
      </ul>
    </details>
  );
}

function GoneEntry({ kind, entry: { fact, stamp } }: { kind: Kind; entry: Entry<AnyFact> }) {
  const venue = useVenue();
  const queryClient = useQueryClient();
  const notify = useNotify();
  const changesPast = useMay("changePast");
  const currency = useMay("seeCosts") ? venue.currency : null;
  const { enteredBy: name, reason } = stamp;
  const moment = formatMoment(stamp.enteredAt, venue);
  const { what, amount, about } = factWords(kind, fact, { currency });
  const again = useMutation({
    mutationFn: () => enterFacts(kind, [fact] as never, newEntryKey()),
    onSuccess: async () => {
      notify({ text: say("movements.enteredAgain", { what }) });
      await queryClient.invalidateQueries();
    },
  });
  return (
    <li>
      <span>
        <strong>{what}</strong>, {amount}
        {about === "" ? "" : `, ${about}`}, {formatMoment(fact.at, venue)}
        <span className="entry-before">
          {name === ""
            ? say("movements.takenBackAt", { moment, reason })
            : say("movements.takenBackBy", { moment, name, reason })}
        </span>
      </span>
      {changesPast ? (
        <Button
          kind="quiet"
          aria-label={say("movements.enterOneAgain", { what })}
          disabled={again.isPending}
          onClick={() => again.mutate()}
        >
          {say("movements.enterAgain")}
        </Button>
      ) : null}
      <Problems error={again.error} />
    </li>
  );
}
