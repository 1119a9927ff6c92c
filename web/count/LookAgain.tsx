import type { BaseUnit } from "#engine/measure/units.ts";
import { formatAmount } from "../format.ts";
import { useVenue } from "../shell/venue.tsx";
import type { Surprise } from "./reckon.ts";

/** A kind word when an entry is far from the book. The entry is saved; the person at the shelf is right. */
export function LookAgain({ surprise, base }: { surprise: Surprise | null; base: BaseUnit }) {
  const venue = useVenue();
  return (
    <div role="status">
      {surprise === null ? null : (
        <p className="look-again">
          <strong>Saved. Please look again:</strong> {formatAmount(surprise.found, base, venue)} here in all,
          where the book expects about {formatAmount(surprise.expected, base, venue)}. If it is right, press
          Next; the book may be wrong.
        </p>
      )}
    </div>
  );
}
