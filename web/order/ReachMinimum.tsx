import type { SupplierOrder } from "../answers.ts";
import { listWords } from "../format.ts";
import { formatMoney } from "../money.ts";
import { useVenue } from "../shell/venue.tsx";
import { say } from "../texts/say.ts";

/** What could be done about an order too small for its supplier: what to add, or what waiting is worth. */
export function ReachMinimum({
  order: { minimumMet, toMinimum, shortageIfNotPlaced },
}: {
  order: SupplierOrder;
}) {
  const { currency } = useVenue();
  if (minimumMet) return null;
  const added = toMinimum.map(({ item, pack, quantity, of }) =>
    say("order.reachItem", { packs: say("stock.packs", { quantity, of, pack }), item }),
  );
  const cost = toMinimum.reduce((sum, one) => sum + one.cost, 0);
  return (
    <p className="soft no-print">
      {added.length === 0
        ? say("order.reachNothing")
        : say("order.reach", { items: listWords(added), money: formatMoney(cost, currency) })}{" "}
      {say("order.waiting", { money: formatMoney(shortageIfNotPlaced, currency) })}
    </p>
  );
}
