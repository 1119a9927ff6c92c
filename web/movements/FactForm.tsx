import type { BatchEntry, Delivery, Loss, Transfer } from "#engine/stock/movement.ts";
import { BatchForm } from "./BatchForm.tsx";
import { DeliveryForm } from "./DeliveryForm.tsx";
import type { AnyFact, Kind } from "./entries.ts";
import { LossForm } from "./LossForm.tsx";
import { TransferForm } from "./TransferForm.tsx";

/** What every form of a movement is given; `initial` when an entry is being corrected. */
export type FormProps<Fact> = {
  initial?: Fact | undefined;
  act: string;
  isBusy: boolean;
  onSubmit: (facts: Fact[]) => void;
  onLeave: () => void;
};

type Props = { kind: Kind; initial?: AnyFact | undefined } & Omit<FormProps<AnyFact>, "initial">;

/** The form that fits a kind of movement. */
export function FactForm({ kind, initial, ...rest }: Props) {
  switch (kind) {
    case "deliveries":
      return <DeliveryForm {...rest} initial={initial as Delivery | undefined} />;
    case "losses":
      return <LossForm {...rest} initial={initial as Loss | undefined} />;
    case "transfers":
      return <TransferForm {...rest} initial={initial as Transfer | undefined} />;
    case "batches":
      return <BatchForm {...rest} initial={initial as BatchEntry | undefined} />;
  }
}
