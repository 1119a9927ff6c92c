import { formatMoney } from "../money.ts";
import { useVenue } from "../shell/venue.tsx";
import { say } from "../texts/say.ts";

type Props = {
  /** Major units; null is "no price". */
  amount: number | null;
  /** Leaves the minor unit out where only size matters. */
  whole?: boolean;
};

export function Money({ amount, whole = false }: Props) {
  const { currency } = useVenue();
  if (amount === null) return <span className="soft">{say("parts.noPrice")}</span>;
  return <span className="number">{formatMoney(amount, currency, { whole })}</span>;
}
