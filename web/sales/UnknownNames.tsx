import { useQuery } from "@tanstack/react-query";
import { useState } from "react";
import { formatMoney, formatNumber, formatShare } from "../format.ts";
import { Button } from "../parts/Button.tsx";
import { useVenue } from "../shell/venue.tsx";
import { MeaningForm } from "./MeaningForm.tsx";
import { type UnmappedName, unmappedQuery } from "./sales-queries.ts";

/** Ring names the book does not know, most money first: each is mapped or ignored. */
export function UnknownNames() {
  const { data: sold } = useQuery(unmappedQuery);
  if (sold === undefined || sold.unmapped.length === 0) return null;
  const { unmapped, coverage } = sold;
  return (
    <section>
      <h2>What do these mean?</h2>
      <p className="soft">
        Sold, but unknown to the book; what they used counts as unexplained until then.{" "}
        {formatShare(coverage)} of all that was sold is known.
      </p>
      <ul className="unknown-names">
        {unmapped.map((name) => (
          <UnknownName key={name.ringName} name={name} />
        ))}
      </ul>
    </section>
  );
}

function UnknownName({ name }: { name: UnmappedName }) {
  const { currency } = useVenue();
  const [isOpen, setOpen] = useState(false);
  const { ringName, quantity, net, reason } = name;
  return (
    <li>
      <div className="unknown-head">
        <strong>{ringName}</strong>
        <span>
          {formatNumber(quantity)} sold, {formatMoney(net, currency)}
        </span>
        <Button aria-expanded={isOpen} onClick={() => setOpen(!isOpen)}>
          {isOpen ? "Close" : "Say what it is"}
        </Button>
      </div>
      {reason === "no-version" ? (
        <p className="soft">It is a drink of the book, but was sold before the first day of its spec.</p>
      ) : null}
      {isOpen ? <MeaningForm name={name} onDone={() => setOpen(false)} /> : null}
    </li>
  );
}
