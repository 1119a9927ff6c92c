import type { BaseUnit } from "#engine/measure/units.ts";
import { formatSigned } from "../figures.ts";
import { formatAmount, formatAmountBare } from "../format.ts";
import { formatMoney } from "../money.ts";
import { useVenue } from "../shell/venue.tsx";

type Props = { amount: number; sd: number; base: BaseUnit; signed?: boolean };

/** A value with its standard uncertainty: "−420 ml ± 60". */
export function Uncertain({ amount, sd, base, signed = false }: Props) {
  const venue = useVenue();
  return (
    <span className="number">
      {signed ? formatSigned(amount, base, venue) : formatAmount(amount, base, venue)}{" "}
      <span className="soft">± {formatAmountBare(sd, base, venue)}</span>
    </span>
  );
}

/** Money with its standard uncertainty: "€84 ± 12"; whole units, as the rest is not known anyway. */
export function UncertainMoney({ amount, sd }: { amount: number; sd: number }) {
  const { currency } = useVenue();
  return (
    <span className="number">
      {formatMoney(amount, currency, { whole: true })}{" "}
      <span className="soft">± {formatMoney(sd, currency, { whole: true })}</span>
    </span>
  );
}
