import Papa from "papaparse";
import { dateAfter } from "./calendar.ts";
import type { Catalogue, Day } from "./catalogue.ts";
import {
  areaRows,
  cutRows,
  drinkRows,
  itemRows,
  packRows,
  prepRows,
  ringRows,
  specRows,
  supplierDayRows,
} from "./catalogue-rows.ts";
import type { Noise, Records, Row } from "./state.ts";

/** Sheets of a book by file name. */
export type Sheets = Record<string, string>;

/** The catalogue as stated and what was written down, as the sheets of a book; a sheet without rows is left out. */
export function writeSheets({
  book,
  records,
  firstMonday,
  noise,
  weeks,
}: {
  book: Catalogue;
  records: Records;
  firstMonday: string;
  noise: Noise;
  weeks: number;
}): Sheets {
  const date = (day: Day | undefined) => (day === undefined ? "" : dateAfter(firstMonday, day));
  const sheets = {
    "venue.json": venueJson(book, noise),
    "items.csv": sheet(itemRows(book)),
    "packs.csv": sheet(packRows(book, date)),
    "suppliers.csv": sheet(
      book.suppliers.map(({ supplier, email, minimumValue = "", minimumCases = "" }) => ({
        supplier,
        email,
        minimum_value: minimumValue,
        minimum_cases: minimumCases,
      })),
    ),
    "supplier-days.csv": sheet(supplierDayRows(book)),
    "closures.csv": sheet(
      book.closures.map(({ supplier, fromDay, toDay }) => ({
        supplier,
        from: date(fromDay),
        to: date(toDay),
      })),
    ),
    "areas.csv": sheet(areaRows(book)),
    "drinks.csv": sheet(drinkRows(book, date)),
    "preps.csv": sheet(prepRows(book, date)),
    "specs.csv": sheet(specRows(book, date)),
    "cuts.csv": sheet(cutRows(book, date)),
    "ring-names.csv": sheet(ringRows(book)),
    "modifiers.csv": sheet(
      book.modifiers.map((row) => ({
        modifier: row.modifier,
        effect: row.effect,
        item: row.item ?? "",
        with: row.with ?? "",
        amount: row.amount ?? "",
        unit: row.unit ?? "",
        factor: row.factor ?? "",
      })),
    ),
    "counts.csv": sheet(records.counts, [
      "count",
      "at",
      "area",
      "item",
      "pack",
      "full",
      "part",
      "gross_g",
      "amount",
      "unit",
      "by",
    ]),
    "deliveries.csv": sheet(records.deliveries),
    "batches.csv": sheet(records.batches),
    "losses.csv": sheet(records.losses),
    "transfers.csv": sheet(records.transfers, ["at", "direction", "place", "item", "amount", "unit"]),
    "events.csv": sheet(
      book.events.map(({ day, event, factor }) => ({ date: date(day), event, factor })),
      ["date", "event", "factor"],
    ),
    "plans.csv": sheet(
      book.plans.map(({ day, drink, serves }) => ({ date: date(day), drink, serves })),
      ["date", "drink", "serves"],
    ),
    "orders.csv": sheet(recentOrders(records, date(weeks * 7 - 14)), [
      "order",
      "placed",
      "supplier",
      "item",
      "pack",
      "quantity",
      "of",
      "expected",
    ]),
  };
  return Object.fromEntries(Object.entries(sheets).filter(([, text]) => text.trim() !== ""));
}

/** Old orders are long delivered; the last two weeks hold all that can be open. */
function recentOrders(records: Records, since: string): Row[] {
  return records.orders.filter(({ expected = "" }) => String(expected) >= since);
}

function sheet(rows: readonly Row[], columns?: string[]): string {
  const fields = columns ?? Object.keys(rows[0] ?? {});
  const text = Papa.unparse(
    { fields, data: rows.map((row) => fields.map((field) => row[field] ?? "")) },
    { newline: "\n" },
  );
  return `${text}\n`;
}

function venueJson(book: Catalogue, noise: Noise): string {
  const venue = {
    name: book.venue,
    currency: "USD",
    timeZone: "America/New_York",
    dayEnds: "04:00",
    oz: "us",
    show: "oz",
    houseMl: { dash: 0.92, barspoon: 5, drop: 0.05, splash: 7.4 },
    uncertainty: noise,
  };
  return `${JSON.stringify(venue, null, 2)}\n`;
}
