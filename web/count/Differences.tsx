import { formatMoment } from "../format.ts";
import { nowInstant } from "../now.ts";
import { Button } from "../parts/Button.tsx";
import { useVenue } from "../shell/venue.tsx";
import { say, sayWith } from "../texts/say.ts";
import { choiceRows } from "./choice-rows.ts";
import { counter } from "./counter.ts";
import { bare, type Difference } from "./differences.ts";
import { foundWords } from "./found-words.ts";
import type { ServedRow } from "./sheet.ts";
import { enter, placeOf } from "./waiting.ts";

type Props = { differences: readonly Difference[]; rows: readonly ServedRow[] };

/** Where two people found different things on one shelf: both are kept, and a person says which one stands. */
export function Differences({ differences, rows }: Props) {
  if (differences.length === 0) return null;
  return (
    <section aria-label={say("steps.twoPeople")}>
      <h2>{say("steps.twoPeople")}</h2>
      <p>{say("steps.twoPeopleNext")}</p>
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
      {kind === "two-ways" ? (
        sayWith("steps.twoWays", { item: <strong>{item}</strong>, area })
      ) : (
        <>
          <strong>{item}</strong>, {area}
        </>
      )}
      <div className="count-choices">
        {findings.map((found, place) => (
          <Button key={JSON.stringify([found.at, found.by, found.pack])} onClick={() => choose(found)}>
            {foundWords(found)}{" "}
            <span className="soft">
              {say(place === 0 && kind === "counted-twice" ? "steps.foundByStands" : "steps.foundBy", {
                by: found.by === "" ? say("steps.noName") : found.by,
                at: formatMoment(found.at, venue),
              })}
            </span>
          </Button>
        ))}
      </div>
    </>
  );
}
