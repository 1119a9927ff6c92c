import { useQuery } from "@tanstack/react-query";
import { useState } from "react";
import { formatNumber } from "../format.ts";
import { Button } from "../parts/Button.tsx";
import { ModifierForm } from "./ModifierForm.tsx";
import { unmappedQuery } from "./sales-queries.ts";

/** Modifiers the book does not know; until then they change nothing in a drink. */
export function UnknownModifiers() {
  const { data: sold } = useQuery(unmappedQuery);
  if (sold === undefined || sold.modifiers.length === 0) return null;
  return (
    <section>
      <h2>Modifiers nobody explained</h2>
      <ul className="unknown-names">
        {sold.modifiers.map(({ modifier, quantity }) => (
          <UnknownModifier key={modifier} modifier={modifier} quantity={quantity} />
        ))}
      </ul>
    </section>
  );
}

function UnknownModifier({ modifier, quantity }: { modifier: string; quantity: number }) {
  const [isOpen, setOpen] = useState(false);
  return (
    <li>
      <div className="unknown-head">
        <strong>{modifier}</strong>
        <span>on {formatNumber(quantity)} sold</span>
        <Button aria-expanded={isOpen} onClick={() => setOpen(!isOpen)}>
          {isOpen ? "Close" : "Say what it does"}
        </Button>
      </div>
      {isOpen ? <ModifierForm modifier={modifier} onDone={() => setOpen(false)} /> : null}
    </li>
  );
}
