import { useState } from "react";
import type { RingName } from "#engine/sales/ring.ts";
import { formatMoney } from "../money.ts";
import { Button } from "../parts/Button.tsx";
import { ConfirmDialog } from "../parts/ConfirmDialog.tsx";
import { Select } from "../parts/Field.tsx";
import { useVenue } from "../shell/venue.tsx";
import { say } from "../texts/say.ts";
import { acceptable, meaningWords } from "./meaning-of.ts";
import type { UnmappedName } from "./sales-queries.ts";

const SCORES = [
  { value: "96", text: "sales.score96" },
  { value: "90", text: "sales.score90" },
  { value: "80", text: "sales.score80" },
] as const;

type Props = {
  names: readonly UnmappedName[];
  onAccept: (rings: RingName[]) => void;
  isBusy: boolean;
};

/** Accepts all likely meanings from a score on, once they were seen. */
export function AcceptMany({ names, onAccept, isBusy }: Props) {
  const { currency } = useVenue();
  const [scoreLeast, setScoreLeast] = useState("90");
  const [isAsked, setAsked] = useState(false);
  if (acceptable(names, 80).length === 0) return null;
  const rings = acceptable(names, Number(scoreLeast));
  const taken = new Set(rings.map(({ ringName }) => ringName));
  const net = names.filter(({ ringName }) => taken.has(ringName)).reduce((sum, one) => sum + one.net, 0);
  return (
    <div className="accept-many">
      <Select
        label={say("sales.scoreFrom")}
        options={SCORES.map(({ value, text }) => ({ value, label: say(text) }))}
        value={scoreLeast}
        onChange={({ target }) => setScoreLeast(target.value)}
      />
      <Button disabled={rings.length === 0 || isBusy} onClick={() => setAsked(true)}>
        {say("sales.acceptLikely", { count: rings.length })}
      </Button>
      <ConfirmDialog
        isOpen={isAsked}
        title={say("sales.acceptManyTitle", { count: rings.length })}
        act={say("sales.acceptMany")}
        isBusy={isBusy}
        onConfirm={() => {
          setAsked(false);
          onAccept(rings);
        }}
        onCancel={() => setAsked(false)}
      >
        <p>{say("sales.acceptManyWhy", { money: formatMoney(net, currency) })}</p>
        <ul>
          {rings.map((ring) => (
            <li key={ring.ringName}>
              {say("sales.nameMeans", { name: ring.ringName, meaning: meaningWords(ring) })}
            </li>
          ))}
        </ul>
      </ConfirmDialog>
    </div>
  );
}
