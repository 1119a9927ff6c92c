import { type Catalogue, itemNamed } from "#engine/catalogue.ts";
import type { Unit } from "#engine/measure/units.ts";
import type { PrepNeed } from "#engine/prep/need.ts";
import type { BusinessDate, Instant } from "#engine/time.ts";

/** What is left of a batch past its date, proposed as a loss; `amount` in `unit`. */
export type Discard = {
  prep: string;
  amount: number;
  unit: Unit;
  /** When it was made; of stock older than any batch on record, the first time the book knew of it. */
  madeAt: Instant;
  /** Made then or before: no batch on record explains it. */
  orOlder: boolean;
  useBy: BusinessDate | null;
};

/** Rests of a prep past their date, oldest first. Less than can be read off a jug or a scale is not proposed. */
export function discardsOf(catalogue: Catalogue, { making, past }: PrepNeed): Discard[] {
  const { prep, unit, perUnit } = making;
  const { ml, each, scaleG } = catalogue.venue.uncertainty;
  const readable = { ml, each, g: scaleG }[itemNamed(catalogue, prep).base];
  return past
    .filter(({ quantity }) => quantity >= readable)
    .map(({ quantity, madeAt, orOlder, useBy }) => ({
      prep,
      amount: quantity / perUnit,
      unit,
      madeAt,
      orOlder,
      useBy,
    }));
}
