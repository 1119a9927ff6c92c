import { useMutation, useQuery, useQueryClient } from "@tanstack/react-query";
import { formatMoment } from "../format.ts";
import { Button } from "../parts/Button.tsx";
import { useNotify } from "../parts/Notice.tsx";
import { Problems } from "../parts/Problems.tsx";
import { useMay } from "../people/signed-in.ts";
import { useVenue } from "../shell/venue.tsx";
import { type AnyFact, type Entry, enterFacts, type Kind, newEntryKey, withdrawnQuery } from "./entries.ts";
import { factWords } from "./fact-words.ts";

/** What was taken back: it counts for nothing, stays readable, and can be entered once more. */
export function Withdrawn({ kind }: { kind: Kind }) {
  const { data, error, refetch } = useQuery(withdrawnQuery(kind));
  if (error !== null) return <Problems error={error} onRetry={() => void refetch()} />;
  const gone: Entry<AnyFact>[] = data ?? [];
  if (gone.length === 0) return null;
  return (
    <details className="withdrawn">
      <summary>Taken back: {gone.length}</summary>
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
  const { what, amount, about } = factWords(kind, fact, { currency });
  const again = useMutation({
    mutationFn: () => enterFacts(kind, [fact] as never, newEntryKey()),
    onSuccess: async () => {
      notify({ text: `${what} is entered again, with its own date.` });
      await queryClient.invalidateQueries();
    },
  });
  return (
    <li>
      <span>
        <strong>{what}</strong>, {amount}
        {about === "" ? "" : `, ${about}`}, {formatMoment(fact.at, venue)}
        <span className="entry-before">
          Taken back {formatMoment(stamp.enteredAt, venue)}
          {stamp.enteredBy === "" ? "" : ` by ${stamp.enteredBy}`}: {stamp.reason}
        </span>
      </span>
      {changesPast ? (
        <Button
          kind="quiet"
          aria-label={`Enter ${what} again`}
          disabled={again.isPending}
          onClick={() => again.mutate()}
        >
          Enter it again
        </Button>
      ) : null}
      <Problems error={again.error} />
    </li>
  );
}
