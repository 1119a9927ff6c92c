import { useState } from "react";
import type { RingName } from "#engine/sales/ring.ts";
import { formatMoney, plural } from "../format.ts";
import { Button } from "../parts/Button.tsx";
import { ConfirmDialog } from "../parts/ConfirmDialog.tsx";
import { Select } from "../parts/Field.tsx";
import { useVenue } from "../shell/venue.tsx";
import { acceptable, meaningWords } from "./meaning-of.ts";
import type { UnmappedName } from "./sales-queries.ts";

const SCORES = [
  { value: "96", label: "96: the same but for writing" },
  { value: "90", label: "90: a letter or two, or shortened" },
  { value: "80", label: "80: alike, and like nothing else" },
];

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
        label="From a score of"
        options={SCORES}
        value={scoreLeast}
        onChange={({ target }) => setScoreLeast(target.value)}
      />
      <Button disabled={rings.length === 0 || isBusy} onClick={() => setAsked(true)}>
        Accept {plural(rings.length, "likely meaning")}
      </Button>
      <ConfirmDialog
        isOpen={isAsked}
        title={`Accept ${plural(rings.length, "meaning")}?`}
        act="Accept them"
        isBusy={isBusy}
        onConfirm={() => {
          setAsked(false);
          onAccept(rings);
        }}
        onCancel={() => setAsked(false)}
      >
        <p>{formatMoney(net, currency)} of sales, past ones too, then use what these drinks use.</p>
        <ul>
          {rings.map((ring) => (
            <li key={ring.ringName}>
              {ring.ringName} means {meaningWords(ring)}
            </li>
          ))}
        </ul>
      </ConfirmDialog>
    </div>
  );
}
