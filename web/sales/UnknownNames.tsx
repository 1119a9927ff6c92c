import { useQuery } from "@tanstack/react-query";
import { lazyRouteComponent } from "@tanstack/react-router";
import { type KeyboardEvent, type ReactNode, Suspense, useRef, useState } from "react";
import { formatShare } from "../figures.ts";
import { formatNumber } from "../format.ts";
import { formatMoney } from "../money.ts";
import { Busy } from "../parts/Busy.tsx";
import { Button } from "../parts/Button.tsx";
import { Problems } from "../parts/Problems.tsx";
import { useVenue } from "../shell/venue.tsx";
import { say, sayWith } from "../texts/say.ts";
import { AcceptMany } from "./AcceptMany.tsx";
import { asIgnored, asRingName } from "./meaning-of.ts";
import { type Meaning, type UnmappedName, unmappedQuery } from "./sales-queries.ts";
import { UNKNOWN_HEADING, useAcceptNames } from "./use-accept-names.ts";

/** Its search fields weigh as much as the rest of the screen, and are not needed where a name is known by its likeness. */
const MeaningForm = lazyRouteComponent(() => import("./MeaningForm.tsx"), "MeaningForm");

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
      <h2 id={UNKNOWN_HEADING} tabIndex={-1}>
        {say("sales.unknownTitle")}
      </h2>
      <p className="soft">
        {say("sales.unknownNext", { share: formatShare(coverage) })}{" "}
        <span className="by-keyboard">
          {sayWith("sales.unknownKeys", {
            accept: <kbd>a</kbd>,
            ignore: <kbd>i</kbd>,
            open: <kbd>Enter</kbd>,
          })}
        </span>
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
      aria-label={say("sales.nameSold", { name: ringName, quantity: formatNumber(quantity) })}
      tabIndex={isFirst ? 0 : -1}
      onKeyDown={pressed}
    >
      <div className="unknown-head">
        <strong>{ringName}</strong>
        <span>
          {say("sales.soldFor", { quantity: formatNumber(quantity), money: formatMoney(net, currency) })}
        </span>
        {best === undefined || likely === undefined ? null : (
          <Button
            onClick={() => onAccept(likely)}
            aria-label={say("sales.acceptAs", { name: ringName, meaning: best.name })}
          >
            {say("sales.accept")}
          </Button>
        )}
        <Button aria-expanded={isOpen} onClick={() => setOpen(!isOpen)}>
          {say(isOpen ? "parts.close" : "sales.sayMeaning")}
        </Button>
      </div>
      {best === undefined ? null : <p className="soft">{likelyWords(best)}</p>}
      {reason === "no-version" ? <p className="soft">{say("sales.beforeSpec")}</p> : null}
      {isOpen ? (
        <Suspense fallback={<Busy what={say("sales.openingForm")} />}>
          <MeaningForm name={name} onDone={() => setOpen(false)} />
        </Suspense>
      ) : null}
    </li>
  );
}

function likelyWords({ name, serves, score, reason }: Meaning): ReactNode {
  const meaning = <strong>{name}</strong>;
  return serves === null || serves === 1
    ? sayWith("sales.likely", { meaning, score, reason })
    : sayWith("sales.likelyServes", { meaning, serves, score, reason });
}
