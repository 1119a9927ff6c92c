import { formatMoment } from "../format.ts";
import { nowInstant } from "../now.ts";
import { Button } from "../parts/Button.tsx";
import { useVenue } from "../shell/venue.tsx";
import { counter } from "./counter.ts";
import { bare, choiceRows, type Difference } from "./differences.ts";
import { foundWords } from "./found-words.ts";
import type { ServedRow } from "./sheet.ts";
import { enter, placeOf } from "./waiting.ts";

type Props = { differences: readonly Difference[]; rows: readonly ServedRow[] };

/** Where two people found different things on one shelf: both are kept, and a person says which one stands. */
export function Differences({ differences, rows }: Props) {
  if (differences.length === 0) return null;
  return (
    <section aria-label="Counted by two people">
      <h2>Counted by two people</h2>
      <p>
        Nothing is lost: both entries are kept. Look once more if you can, then choose the one that is right.
      </p>
      <ul className="count-refused">
        {differences.map((difference) => (
          <li key={JSON.stringify([difference.area, difference.item, difference.kind])}>
            <OneDifference difference={difference} rows={rows} />
          </li>
        ))}
      </ul>
    </section>
  );
}

function OneDifference({ difference, rows }: { difference: Difference; rows: readonly ServedRow[] }) {
  const venue = useVenue();
  const { area, item, findings, kind } = difference;
  const choose = (chosen: ServedRow) => {
    for (const row of choiceRows(difference, bare(chosen), { at: nowInstant(), by: counter() })) {
      enter(row, rows.find((held) => placeOf(held) === placeOf(row))?.id ?? null);
    }
  };
  return (
    <>
      <strong>{item}</strong>, {area}
      {kind === "two-ways" ? ": counted in two ways, which would count twice." : null}
      <div className="count-choices">
        {findings.map((found, place) => (
          <Button key={JSON.stringify([found.at, found.by, found.pack])} onClick={() => choose(found)}>
            {foundWords(found)}{" "}
            <span className="soft">
              {found.by === "" ? "no name" : found.by}, {formatMoment(found.at, venue)}
              {place === 0 && kind === "counted-twice" ? ", stands now" : ""}
            </span>
          </Button>
        ))}
      </div>
    </>
  );
}
