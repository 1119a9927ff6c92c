import { Link } from "@tanstack/react-router";
import { shownWord } from "../book-words.ts";
import { formatDate, formatLocal, listWords } from "../format.ts";
import { useVenue } from "../shell/venue.tsx";
import { say } from "../texts/say.ts";
import { benchAmount, benchBase } from "./amounts.ts";
import { otherCautions } from "./other-cautions.ts";
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
  const allergens = [...batch.allergens, ...batch.mayContain].map(({ allergen }) =>
    shownWord("allergen", allergen),
  );
  const others = otherCautions(cautions, { contains: batch.allergens, mayContain: batch.mayContain });
  const notes = [
    ...(allergens.length === 0 ? [] : [say("prep.allergensOf", { allergens: listWords(allergens) })]),
    ...(others.length === 0 ? [] : [say("prep.readCautions")]),
  ];
  // Number and unit stay together where the line breaks.
  const amount = (value: number) => benchAmount(value, unit, venue).replaceAll(" ", "\u00A0");
  const dates = [
    useBy === null ? say("prep.noShelfLife") : say("prep.useBy", { date: formatDate(useBy) }),
    ...((standingHours ?? 0) >= 1 ? [say("prep.ready", { moment: formatLocal(readyAt) })] : []),
  ];
  const stock = [
    say("prep.onHand", { amount: amount(batch.onHand) }),
    ...(batch.usable < batch.onHand - 1e-6 ? [say("prep.inTime", { amount: amount(batch.usable) })] : []),
    say("prep.needed", { amount: amount(batch.need) }),
  ];
  return (
    <li className="batch-line keep-whole">
      <span className="batch-order">{place}</span>
      <div className="batch-main">
        <strong className="batch-name">{prep}</strong>
        <span className="batch-make">{amount(make)}</span>
        {batch.batches > 1 ? (
          <span className="soft">{say("prep.inVessels", { count: batch.batches })}</span>
        ) : null}
      </div>
      <p className="batch-when">{say("prep.when", { dates: dates.join(", "), stock: stock.join(", ") })}</p>
      {missing.length === 0 ? null : (
        <p className="batch-short">
          {say("prep.short", {
            items: listWords(
              missing.map(({ item, base, available, wanted }) =>
                say("prep.shortItem", {
                  item,
                  available: benchBase(available, base),
                  wanted: benchBase(wanted, base),
                }),
              ),
            ),
            amount: amount(canMake),
          })}
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
        aria-label={say("prep.makeThis", { prep })}
      >
        {say("prep.make")}
      </Link>
    </li>
  );
}
