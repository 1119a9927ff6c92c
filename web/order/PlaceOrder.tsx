import { useMutation, useQueryClient } from "@tanstack/react-query";
import { useId, useState } from "react";
import type { OrderLine } from "#engine/orders/supplier.ts";
import { localToInstant } from "#engine/sales/read/clock.ts";
import type { SupplierOrder } from "../answers.ts";
import { answerOf, server } from "../api.ts";
import { formatMoney } from "../money.ts";
import { ConfirmDialog } from "../parts/ConfirmDialog.tsx";
import { Field } from "../parts/Field.tsx";
import { focusIfLost } from "../parts/focus-if-lost.ts";
import { useNotify } from "../parts/Notice.tsx";
import { Problems } from "../parts/Problems.tsx";
import { useVenue } from "../shell/venue.tsx";
import { say } from "../texts/say.ts";
import { type DraftLine, type Minimum, quantityWords } from "./order-draft.ts";

type Props = {
  order: SupplierOrder;
  lines: readonly DraftLine[];
  total: number;
  minimum: Minimum;
  /** The local moment the order was reckoned for; it is placed as of then. */
  at: string;
  isOpen: boolean;
  onClose: () => void;
};

/** Asks once more, then records the order as placed. Sending it to the supplier stays with the person. */
export function PlaceOrder({ order, lines, total, minimum, at, isOpen, onClose }: Props) {
  const venue = useVenue();
  const notify = useNotify();
  const queryClient = useQueryClient();
  const hintId = useId();
  const [expected, setExpected] = useState(order.arrives?.slice(0, 10) ?? "");
  const wanted = lines.filter(({ quantity }) => quantity > 0);
  const place = useMutation({
    mutationFn: () =>
      answerOf(
        server.orders.$post({
          json: orderLines(wanted, {
            supplier: order.supplier,
            at,
            placed: localToInstant(at, venue),
            expected,
          }),
        }),
      ),
    onSuccess: async () => {
      onClose();
      notify({ text: say("order.placed", { supplier: order.supplier, count: wanted.length }) });
      await queryClient.invalidateQueries();
      // The supplier has nothing left to order, so its part of the page is gone.
      focusIfLost();
    },
  });
  return (
    <ConfirmDialog
      isOpen={isOpen}
      title={say("order.placeTitle", { supplier: order.supplier })}
      act={say("order.placeAct")}
      isBusy={place.isPending}
      isOff={wanted.length === 0 || expected === ""}
      onConfirm={() => place.mutate()}
      onCancel={onClose}
    >
      <p id={hintId}>{say("order.placeWhy")}</p>
      <ul className="place-lines">
        {wanted.map((line) => (
          <li key={`${line.item} ${line.pack}`}>
            {line.item} <span className="number">{quantityWords(line)}</span>
          </li>
        ))}
      </ul>
      <p>
        {say("order.placeSum", {
          count: wanted.length,
          money: formatMoney(total, venue.currency),
          minimum: minimum.words,
        })}
      </p>
      <Field
        label={say("order.expectedOn")}
        type="date"
        required
        value={expected}
        onChange={(event) => setExpected(event.target.value)}
      />
      <Problems error={place.error} />
    </ConfirmDialog>
  );
}

function orderLines(
  lines: readonly DraftLine[],
  { supplier, at, placed, expected }: { supplier: string; at: string; placed: string; expected: string },
): OrderLine[] {
  return lines.map(({ item, pack, quantity, of }) => ({
    // By the clock of the bar, as it is shown.
    order: `${supplier} ${at.slice(0, 16).replace("T", " ")}`,
    placed,
    supplier,
    item,
    pack,
    quantity,
    of,
    expected,
  }));
}
