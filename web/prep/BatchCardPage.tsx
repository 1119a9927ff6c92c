import "./prep.css";
import { useQuery } from "@tanstack/react-query";
import { Link, useParams, useSearch } from "@tanstack/react-router";
import { useDeferredValue, useState } from "react";
import { readAmount } from "#engine/measure/amount.ts";
import { formatDate } from "../format.ts";
import { Busy } from "../parts/Busy.tsx";
import { Button } from "../parts/Button.tsx";
import { Field } from "../parts/Field.tsx";
import { Page } from "../parts/Page.tsx";
import { Problems } from "../parts/Problems.tsx";
import { useVenue } from "../shell/venue.tsx";
import { Awake } from "./Awake.tsx";
import { benchAmount } from "./amounts.ts";
import { CardInputs } from "./CardInputs.tsx";
import { CardSteps } from "./CardSteps.tsx";
import { MadeIt } from "./MadeIt.tsx";
import { PrintLabels } from "./PrintLabels.tsx";
import { type BatchCard, cardQuery } from "./prep-queries.ts";
import { Timer } from "./Timer.tsx";

/** One batch, to be read from an arm's length with both hands wet. */
export function BatchCardPage() {
  const { prep } = useParams({ from: "/prep/$prep" });
  const { date, make } = useSearch({ from: "/prep/$prep" });
  const [typed, setTyped] = useState("");
  const wanted = useDeferredValue(readAmount(typed, { decimalComma: true }));
  const size = wanted !== undefined && wanted > 0 ? wanted : make;
  const {
    data: card,
    error,
    refetch,
  } = useQuery({
    ...cardQuery({ prep, date, make: size }),
    placeholderData: (previous) => (previous?.prep === prep ? previous : undefined),
  });
  return (
    <Page
      title={card?.prep ?? prep}
      next={card === undefined ? undefined : <Standing card={card} />}
      actions={
        <div className="field-row">
          <Field
            label={`Amount wanted${card === undefined ? "" : `, ${card.unit}`}`}
            inputMode="decimal"
            className="card-wanted"
            value={typed}
            placeholder={card === undefined ? "" : String(Math.round(card.make * 10) / 10)}
            onChange={(event) => setTyped(event.target.value)}
          />
          <Button onClick={() => window.print()}>Print the card</Button>
          {card === undefined ? null : (
            <PrintLabels batches={[card]} date={card.date} label="Print the label" />
          )}
        </div>
      }
    >
      {card === undefined && error === null ? <Busy what="Writing the card" /> : null}
      {error === null ? null : <Problems error={error} onRetry={() => void refetch()} />}
      {card === undefined ? null : <Card card={card} />}
    </Page>
  );
}

function Standing({ card: { make, unit, date, useBy } }: { card: BatchCard }) {
  const venue = useVenue();
  const keeps =
    useBy === null
      ? "No shelf life on record: date it as your local food code asks."
      : `Use by ${formatDate(useBy)}.`;
  return `${benchAmount(make, unit, venue)}, made ${formatDate(date)}. ${keeps}`;
}

function Card({ card }: { card: BatchCard }) {
  const venue = useVenue();
  const { loads, unit, steps, activeMinutes, standingHours, cautions, allergens } = card;
  return (
    <div className="card">
      <Awake />
      {loads.length > 1 ? (
        <p className="card-loads">
          In {loads.length} vessels: {loads.map((load) => benchAmount(load, unit, venue)).join(" + ")}. Weigh
          each one's share.
        </p>
      ) : null}
      <div className="card-columns">
        <CardInputs card={card} />
        <CardSteps steps={steps} />
      </div>
      {cautions.length === 0 ? null : (
        <section className="card-cautions">
          <h2>Mind</h2>
          <ul>
            {cautions
              .filter((caution) => !caution.startsWith("Allergens."))
              .map((caution) => (
                <li key={caution}>{caution}</li>
              ))}
          </ul>
        </section>
      )}
      <p className="card-allergens">
        <strong>Allergens.</strong> {allergens.text} Follow your local food code.
      </p>
      <div className="no-print">
        <Timer minutes={activeMinutes} hours={standingHours} />
        <MadeIt key={card.prep} card={card} />
        <p>
          <Link to="/prep" search={{ date: card.date }}>
            Back to the list
          </Link>
        </p>
      </div>
    </div>
  );
}
