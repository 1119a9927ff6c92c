import { unitFactor } from "#engine/measure/unit-factor.ts";
import type { BaseUnit, Unit } from "#engine/measure/units.ts";
import { formatAmount, formatNumber, withUnit } from "../format.ts";
import { useVenue } from "../shell/venue.tsx";
import { say, sayWith } from "../texts/say.ts";
import type { Surprise } from "./reckon.ts";
import type { SheetPack } from "./sheet.ts";

const TEXTS = {
  all: "steps.lookAgain",
  already: "steps.lookAgainAlready",
  here: "steps.lookAgainHere",
} as const;

/** A kind word when an entry is far from the book. The entry is saved; the person at the shelf is right. */
export function LookAgain({
  surprise,
  base,
  unit,
  pack,
}: {
  surprise: Surprise;
  base: BaseUnit;
  /** In which the person counted; null for containers. */
  unit: Unit | null;
  /** The containers that were counted, if any. */
  pack: SheetPack | undefined;
}) {
  const venue = useVenue();
  const words = (quantity: number) => {
    if (unit === null && pack !== undefined) {
      const containers = quantity / pack.size;
      return say("steps.ofContainers", {
        amount: formatNumber(containers, containers % 1 === 0 ? 0 : 1),
        pack: pack.pack,
      });
    }
    if (unit === null || base === "each") return formatAmount(quantity, base, venue);
    const { factor } = unitFactor(unit, venue);
    return withUnit(formatNumber(quantity / factor, factor < 2 ? 0 : 1), unit);
  };
  return (
    <p className="look-again">
      {sayWith(TEXTS[surprise.kind], {
        saved: <strong>{say("steps.lookAgainSaved")}</strong>,
        found: words(surprise.found),
        expected: words(surprise.expected),
      })}
    </p>
  );
}
