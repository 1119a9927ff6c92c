import type { SupplierOrder } from "../answers.ts";
import { formatMoney, listWords } from "../format.ts";
import { useVenue } from "../shell/venue.tsx";

/** What could be done about an order too small for its supplier: what to add, or what waiting is worth. */
export function ReachMinimum({
  order: { minimumMet, toMinimum, shortageIfNotPlaced },
}: {
  order: SupplierOrder;
}) {
  const { currency } = useVenue();
  if (minimumMet) return null;
  const added = toMinimum.map(
    ({ item, pack, quantity, of }) =>
      `${quantity} ${of === "case" ? (quantity === 1 ? "case of " : "cases of ") : "× "}${pack} of ${item}`,
  );
  const cost = toMinimum.reduce((sum, one) => sum + one.cost, 0);
  return (
    <p className="soft no-print">
      {added.length === 0
        ? "Nothing that would be used within two months reaches the minimum."
        : `To reach it: ${listWords(added)}, ${formatMoney(cost, currency)}.`}{" "}
      Left for the next time, {formatMoney(shortageIfNotPlaced, currency)} is expected to be lost by running
      short.
    </p>
  );
}
