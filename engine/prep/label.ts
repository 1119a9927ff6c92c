import { type Catalogue, itemNamed } from "#engine/catalogue.ts";
import { allergensOf, allergensOnLabel } from "#engine/prep/allergens.ts";
import { shelfLifeDays, useBy } from "#engine/prep/use-by.ts";
import { type BusinessDate, weekdayOf } from "#engine/time.ts";

/** What stands on the container of a batch. The initials are left for the hand that made it. */
export type Label = {
  name: string;
  madeOn: BusinessDate;
  useBy: BusinessDate | null;
  batch: string;
  /** Whole % vol; null of what has no strength. */
  abvPct: number | null;
  allergens: string;
  initials: "";
  /** The same as lines of text to print. */
  lines: string[];
};

/**
 * The label of the n-th batch of a prep made on a business date, with its strength where it has one.
 *
 * Without a shelf life on record the use-by is left blank to be written in by what the local food code allows.
 * "Simple syrup", 2026-03-03, 21 days → made Tue 2026-03-03, use by Mon 2026-03-23, batch 260303-1.
 */
export function labelOf(
  catalogue: Catalogue,
  {
    prep,
    madeOn,
    number = 1,
    abv,
  }: { prep: string; madeOn: BusinessDate; number?: number; abv?: number | undefined },
): Label {
  const item = itemNamed(catalogue, prep);
  const last = useBy(madeOn, shelfLifeDays(catalogue, prep, madeOn));
  const allergens = allergensOnLabel(allergensOf(catalogue, prep, madeOn));
  return labelWords({ name: item.name, madeOn, useBy: last, number, abv: item.abv ?? abv, allergens });
}

/** A label from what stands on it; also of a prep that is not in the book yet. */
export function labelWords({
  name,
  madeOn,
  useBy: last,
  number,
  abv,
  allergens,
}: Pick<Label, "name" | "madeOn" | "useBy" | "allergens"> & {
  number: number;
  abv: number | null | undefined;
}): Label {
  const batch = `${madeOn.slice(2).replaceAll("-", "")}-${number}`;
  const abvPct = abv == null || abv <= 0 ? null : Math.round(abv);
  const lines = [
    name,
    `Made ${withWeekday(madeOn)}`,
    last === null ? "Use by ________ (no shelf life on record)" : `Use by ${withWeekday(last)}`,
    `Batch ${batch}${abvPct === null ? "" : `, about ${abvPct} % vol`}`,
    "Initials ____",
    allergens,
  ];
  return { name, madeOn, useBy: last, batch, abvPct, allergens, initials: "", lines };
}

function withWeekday(date: BusinessDate): string {
  return `${weekdayOf(date)} ${date}`;
}
