import { Link } from "@tanstack/react-router";
import { formatDate, formatLocal, listWords } from "../format.ts";
import { useVenue } from "../shell/venue.tsx";
import { benchAmount, benchBase } from "./amounts.ts";
import type { PlannedBatch } from "./prep-queries.ts";

type Props = {
  batch: PlannedBatch;
  date: string;
  /** Its place in the day's work, from 1. */
  place: number;
};

/** One prep to make: how much, ready when, good until when, what it takes, and what is short. */
export function BatchLine({ batch, date, place }: Props) {
  const venue = useVenue();
  const { prep, make, unit, useBy, readyAt, standingHours, inputs, missing, canMake, cautions } = batch;
  const allergens = [...batch.allergens, ...batch.mayContain].map(({ allergen }) => allergen);
  const notes = [
    ...(allergens.length === 0 ? [] : [`Allergens: ${listWords(allergens)}.`]),
    ...(cautions.some((caution) => !caution.startsWith("Allergens."))
      ? ["Read the cautions on its card."]
      : []),
  ];
  const amount = (value: number) => benchAmount(value, unit, venue);
  return (
    <li className="batch-line keep-whole">
      <span className="batch-order">{place}</span>
      <div className="batch-main">
        <strong className="batch-name">{prep}</strong>
        <span className="batch-make">{amount(make)}</span>
        {batch.batches > 1 ? <span className="soft">in {batch.batches} vessels</span> : null}
      </div>
      <p className="batch-when">
        {useBy === null ? "No shelf life on record" : `Use by ${formatDate(useBy)}`}
        {(standingHours ?? 0) >= 1 ? `, ready ${formatLocal(readyAt)}` : ""}. {amount(batch.onHand)} on hand
        {batch.usable < batch.onHand - 1e-6 ? `, ${amount(batch.usable)} of it in time` : ""},{" "}
        {amount(batch.need)} needed.
      </p>
      {missing.length === 0 ? null : (
        <p className="batch-short">
          Short of{" "}
          {listWords(
            missing.map(
              ({ item, base, available, wanted }) =>
                `${item} (${benchBase(available, base)} of ${benchBase(wanted, base)})`,
            ),
          )}
          : enough for {amount(canMake)}.
        </p>
      )}
      <p className="batch-inputs">
        {inputs.map(({ item, amount: wanted, base }) => (
          <span key={item} className="batch-input">
            {item} <strong>{benchBase(wanted, base)}</strong>
          </span>
        ))}
      </p>
      {notes.length === 0 ? null : <p className="batch-caution">{notes.join(" ")}</p>}
      <Link
        to="/prep/$prep"
        params={{ prep }}
        search={{ date, make }}
        className="button wet-key batch-open no-print"
        aria-label={`Make it: ${prep}`}
      >
        Make it
      </Link>
    </li>
  );
}
