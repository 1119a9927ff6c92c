import { unitFactor } from "#engine/measure/unit-factor.ts";
import type { BaseUnit, Unit } from "#engine/measure/units.ts";
import { formatAmount, formatNumber } from "../format.ts";
import { useVenue } from "../shell/venue.tsx";
import { say, sayWith } from "../texts/say.ts";
import type { Surprise } from "./reckon.ts";

/** A kind word when an entry is far from the book. The entry is saved; the person at the shelf is right. */
export function LookAgain({
  surprise,
  base,
  unit,
}: {
  surprise: Surprise | null;
  base: BaseUnit;
  /** In which the person counted; null for containers. */
  unit: Unit | null;
}) {
  const venue = useVenue();
  const words = (quantity: number) => {
    if (unit === null || base === "each") return formatAmount(quantity, base, venue);
    const { factor } = unitFactor(unit, venue);
    return `${formatNumber(quantity / factor, factor < 2 ? 0 : 1)} ${unit}`;
  };
  return (
    <div role="status">
      {surprise === null ? null : (
        <p className="look-again">
          {sayWith("count.lookAgain", {
            saved: <strong>{say("count.lookAgainSaved")}</strong>,
            found: words(surprise.found),
            expected: words(surprise.expected),
          })}
        </p>
      )}
    </div>
  );
}
