import { useQuery } from "@tanstack/react-query";
import { Select } from "../parts/Field.tsx";
import { countsQuery } from "../queries.ts";
import { say } from "../texts/say.ts";

export type Period = { count?: string | undefined; since?: string | undefined };

/** Chooses the closing count and the one to start from; unchosen, the last two stand. */
export function PeriodPicker({ period, onPick }: { period: Period; onPick: (period: Period) => void }) {
  const { data: counts = [] } = useQuery(countsQuery);
  if (counts.length < 3) return null;
  const names = counts.map(({ name }) => name);
  const closing = period.count ?? names[0] ?? "";
  const earlier = names.slice(names.indexOf(closing) + 1);
  return (
    <div className="field-row">
      <Select
        label={say("variance.sinceCount")}
        value={period.since ?? earlier[0] ?? ""}
        options={earlier}
        onChange={(event) => onPick({ count: closing, since: event.target.value })}
      />
      <Select
        label={say("variance.untilCount")}
        value={closing}
        // The oldest count has none before it to compare with.
        options={names.slice(0, -1)}
        onChange={(event) => onPick({ count: event.target.value })}
      />
    </div>
  );
}
