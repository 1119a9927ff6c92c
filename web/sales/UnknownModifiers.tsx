import { useQuery } from "@tanstack/react-query";
import { lazyRouteComponent } from "@tanstack/react-router";
import { Suspense, useState } from "react";
import { formatNumber } from "../format.ts";
import { Busy } from "../parts/Busy.tsx";
import { Button } from "../parts/Button.tsx";
import { say } from "../texts/say.ts";
import { unmappedQuery } from "./sales-queries.ts";

const ModifierForm = lazyRouteComponent(() => import("./ModifierForm.tsx"), "ModifierForm");

/** Modifiers the book does not know; until then they change nothing in a drink. */
export function UnknownModifiers() {
  const { data: sold } = useQuery(unmappedQuery);
  if (sold === undefined || sold.modifiers.length === 0) return null;
  return (
    <section>
      <h2>{say("sales.modifiersTitle")}</h2>
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
        <span>{say("sales.modifierOn", { quantity: formatNumber(quantity) })}</span>
        <Button aria-expanded={isOpen} onClick={() => setOpen(!isOpen)}>
          {say(isOpen ? "parts.close" : "sales.sayEffect")}
        </Button>
      </div>
      {isOpen ? (
        <Suspense fallback={<Busy what={say("sales.openingForm")} />}>
          <ModifierForm modifier={modifier} onDone={() => setOpen(false)} />
        </Suspense>
      ) : null}
    </li>
  );
}
