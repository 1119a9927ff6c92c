import type { BaseUnit } from "#engine/measure/units.ts";
import { formatAmount } from "../format.ts";
import { useVenue } from "../shell/venue.tsx";
import { say, sayWith } from "../texts/say.ts";
import type { Surprise } from "./reckon.ts";

/** A kind word when an entry is far from the book. The entry is saved; the person at the shelf is right. */
export function LookAgain({ surprise, base }: { surprise: Surprise | null; base: BaseUnit }) {
  const venue = useVenue();
  return (
    <div role="status">
      {surprise === null ? null : (
        <p className="look-again">
          {sayWith("count.lookAgain", {
            saved: <strong>{say("count.lookAgainSaved")}</strong>,
            found: formatAmount(surprise.found, base, venue),
            expected: formatAmount(surprise.expected, base, venue),
          })}
        </p>
      )}
    </div>
  );
}
