import { useQuery } from "@tanstack/react-query";
import { type KeyboardEvent, useRef, useState } from "react";
import { formatMoney, formatNumber, formatShare } from "../format.ts";
import { Button } from "../parts/Button.tsx";
import { Problems } from "../parts/Problems.tsx";
import { useVenue } from "../shell/venue.tsx";
import { AcceptMany } from "./AcceptMany.tsx";
import { MeaningForm } from "./MeaningForm.tsx";
import { asIgnored, asRingName } from "./meaning-of.ts";
import { type UnmappedName, unmappedQuery } from "./sales-queries.ts";
import { useAcceptNames } from "./use-accept-names.ts";

/** Ring names the book does not know, most money first: each is accepted with a key, said by hand, or ignored. */
export function UnknownNames() {
  const { data: sold } = useQuery(unmappedQuery);
  const accept = useAcceptNames();
  const list = useRef<HTMLUListElement>(null);
  if (sold === undefined || sold.unmapped.length === 0) return null;
  const { unmapped, coverage } = sold;
  const moveOn = (event: KeyboardEvent, step: number) => {
    const rows = [...(list.current?.children ?? [])] as HTMLElement[];
    const next = rows[rows.indexOf(event.currentTarget as HTMLElement) + step];
    next?.focus();
    event.preventDefault();
  };
  return (
    <section>
      <h2>What do these mean?</h2>
      <p className="soft">
        Sold, but unknown to the book; what they used counts as unexplained until then.{" "}
        {formatShare(coverage)} of all that was sold is known. In the list: arrows go from name to name,{" "}
        <kbd>a</kbd> accepts the likely meaning, <kbd>i</kbd> ignores the name, <kbd>Enter</kbd> opens it.
      </p>
      <AcceptMany names={unmapped} onAccept={(names) => accept.mutate(names)} isBusy={accept.isPending} />
      <Problems error={accept.error} />
      <ul className="unknown-names" ref={list}>
        {unmapped.map((name, place) => (
          <UnknownName
            key={name.ringName}
            name={name}
            isFirst={place === 0}
            onMove={moveOn}
            onAccept={(ring) => accept.mutate([ring])}
          />
        ))}
      </ul>
    </section>
  );
}

type Props = {
  name: UnmappedName;
  isFirst: boolean;
  onMove: (event: KeyboardEvent, step: number) => void;
  onAccept: (ring: NonNullable<ReturnType<typeof asRingName>>) => void;
};

function UnknownName({ name, isFirst, onMove, onAccept }: Props) {
  const { currency } = useVenue();
  const [isOpen, setOpen] = useState(false);
  const { ringName, quantity, net, reason, suggestions } = name;
  const [best] = suggestions;
  const likely = best === undefined || reason === "no-version" ? undefined : asRingName(name, best);
  const pressed = (event: KeyboardEvent) => {
    // Only on the row itself: in a form these letters are letters.
    if (event.target !== event.currentTarget || event.ctrlKey || event.metaKey || event.altKey) return;
    if (event.key === "ArrowDown") onMove(event, 1);
    else if (event.key === "ArrowUp") onMove(event, -1);
    else if (event.key === "Enter") setOpen(!isOpen);
    else if (event.key === "a" && likely !== undefined) {
      onMove(event, 1);
      onAccept(likely);
    } else if (event.key === "i") {
      onMove(event, 1);
      onAccept(asIgnored(name));
    }
  };
  return (
    <li
      aria-label={`${ringName}, ${formatNumber(quantity)} sold`}
      tabIndex={isFirst ? 0 : -1}
      onKeyDown={pressed}
    >
      <div className="unknown-head">
        <strong>{ringName}</strong>
        <span>
          {formatNumber(quantity)} sold, {formatMoney(net, currency)}
        </span>
        {best === undefined || likely === undefined ? null : (
          <Button onClick={() => onAccept(likely)} aria-label={`Accept ${ringName} as ${best.name}`}>
            Accept
          </Button>
        )}
        <Button aria-expanded={isOpen} onClick={() => setOpen(!isOpen)}>
          {isOpen ? "Close" : "Say what it is"}
        </Button>
      </div>
      {best === undefined ? null : (
        <p className="soft">
          Likely <strong>{best.name}</strong>
          {best.serves === null || best.serves === 1 ? "" : `, ${best.serves} serves`}: {best.score} of 100,{" "}
          {best.reason}.
        </p>
      )}
      {reason === "no-version" ? (
        <p className="soft">It is a drink of the book, but was sold before the first day of its spec.</p>
      ) : null}
      {isOpen ? <MeaningForm name={name} onDone={() => setOpen(false)} /> : null}
    </li>
  );
}
