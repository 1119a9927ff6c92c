import { useQuery } from "@tanstack/react-query";
import { Select } from "../parts/Field.tsx";
import { countsQuery } from "../queries.ts";
import { say } from "../texts/say.ts";

export type Period = { count?: string | undefined; since?: string | undefined };

type Listed = { name: string; items: number; isSpot: boolean };

/** Chooses the closing count and the one to start from; unchosen, the last two that are no spot counts stand. */
export function PeriodPicker({ period, onPick }: { period: Period; onPick: (period: Period) => void }) {
  const { data: counts = [] } = useQuery(countsQuery);
  if (counts.length < 3) return null;
  const closing = period.count ?? lastWhole(counts)?.name ?? "";
  const earlier = counts.slice(counts.findIndex(({ name }) => name === closing) + 1);
  return (
    <div className="field-row">
      <Select
        label={say("variance.sinceCount")}
        value={period.since ?? lastWhole(earlier)?.name ?? ""}
        options={earlier.map(optionOf)}
        onChange={(event) => onPick({ count: closing, since: event.target.value })}
      />
      <Select
        label={say("variance.untilCount")}
        value={closing}
        // The oldest count has none before it to compare with.
        options={counts.slice(0, -1).map(optionOf)}
        onChange={(event) => onPick({ count: event.target.value })}
      />
    </div>
  );
}

/** Counts stand newest first. */
function lastWhole(counts: readonly Listed[]): Listed | undefined {
  return counts.find(({ isSpot }) => !isSpot);
}

function optionOf({ name, items, isSpot }: Listed) {
  return { value: name, label: isSpot ? say("variance.countOf", { name, items }) : name };
}
