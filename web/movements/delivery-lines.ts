import { currencyDigits } from "#engine/currency.ts";
import { readAmount } from "#engine/measure/amount.ts";
import { unitFactor } from "#engine/measure/unit-factor.ts";
import type { Measures } from "#engine/measure/units.ts";
import type { Pack } from "#engine/stock/item.ts";
import type { Delivery, Of } from "#engine/stock/movement.ts";

/** A line of a delivery as it is being typed. */
export type LineDraft = {
  key: number;
  item: string | null;
  pack: string;
  quantity: string;
  of: Of;
  /** Price of the whole line in major units; empty when the invoice does not say. */
  price: string;
  /** Deposits charged on the line, in major units, and empties handed back; empty when nobody wrote them. */
  deposit: string;
  empties: string;
};

export function emptyLine(key: number): LineDraft {
  return { key, item: null, pack: "", quantity: "", of: "container", price: "", deposit: "", empties: "" };
}

export function draftOf(
  { item, pack, quantity, of, priceTotalMinor, depositMinor, empties }: Delivery,
  currency: string,
): LineDraft {
  const major = (minor: number | null) =>
    minor === null ? "" : String(minor / 10 ** currencyDigits(currency));
  return {
    key: 0,
    item,
    pack,
    quantity: String(quantity),
    of,
    price: major(priceTotalMinor),
    deposit: major(depositMinor),
    empties: empties === null ? "" : String(empties),
  };
}

/** The names of an item's packs, those of a supplier first. */
export function packNames(
  packs: readonly Pack[],
  { item, supplier }: { item: string; supplier: string },
): string[] {
  const own = packs.filter((pack) => pack.item === item);
  const sorted = [...own.filter((pack) => pack.supplier === supplier), ...own];
  return [...new Set(sorted.map(({ pack }) => pack))];
}

/** What a line should cost by the newest price in the packs, in major units; null where none is known. */
export function usualPrice(
  packs: readonly Pack[],
  line: LineDraft,
  { supplier, date }: { supplier: string; date: string },
): number | null {
  const quantity = readAmount(line.quantity, { decimalComma: true });
  const begun = packs.filter(
    ({ item, pack, from, price }) =>
      item === line.item && pack === line.pack && price !== null && (from === null || from <= date),
  );
  const own = begun.filter((pack) => pack.supplier === supplier);
  const newest = (own.length > 0 ? own : begun)
    .sort((a, b) => (a.from ?? "").localeCompare(b.from ?? ""))
    .at(-1);
  if (newest === undefined || newest.price === null || quantity === undefined) return null;
  const containers = line.of === "case" ? quantity * newest.perCase : quantity;
  return (newest.pricePer === "case" ? newest.price / newest.perCase : newest.price) * containers;
}

type Ordered = { supplier: string; item: string; quantity: number };

/** What is on order from a supplier as lines in whole or part containers of the pack it sells the item in. */
export function orderedLines(
  orders: readonly Ordered[],
  { supplier, packs, venue }: { supplier: string; packs: readonly Pack[]; venue: Measures },
): LineDraft[] {
  return orders
    .filter((order) => order.supplier === supplier)
    .flatMap(({ item, quantity }, key) => {
      const pack = packs.find((one) => one.item === item && one.supplier === supplier);
      if (pack === undefined) return [];
      const size = pack.amount * unitFactor(pack.unit, venue).factor;
      const containers = Math.round((quantity / size) * 100) / 100;
      return [{ ...emptyLine(key), item, pack: pack.pack, quantity: String(containers) }];
    });
}

type Head = { at: string; supplier: string; invoice: string; by: string };

/** The facts of a delivery's lines; undefined while one of them is not whole. */
export function factsOf(lines: readonly LineDraft[], head: Head, currency: string): Delivery[] | undefined {
  const facts = lines.map((line) => factOf(line, head, currency));
  return facts.every((fact) => fact !== undefined) && facts.length > 0 ? (facts as Delivery[]) : undefined;
}

function factOf(
  { item, pack, quantity: typed, of, price, deposit, empties: returned }: LineDraft,
  head: Head,
  currency: string,
): Delivery | undefined {
  const quantity = readAmount(typed, { decimalComma: true });
  const paid = orNone(price);
  const charged = orNone(deposit);
  const empties = orNone(returned);
  if (item === null || pack === "" || quantity === undefined || quantity < 0) return undefined;
  if (paid === undefined || charged === undefined || empties === undefined) return undefined;
  const minor = (major: number | null) =>
    major === null ? null : Math.round(major * 10 ** currencyDigits(currency));
  return {
    ...head,
    item,
    pack,
    quantity,
    of,
    priceTotalMinor: minor(paid),
    depositMinor: minor(charged),
    empties,
  };
}

/** What was typed, 0 or more; null for nothing, undefined for what is no such number. */
function orNone(typed: string): number | null | undefined {
  if (typed.trim() === "") return null;
  const number = readAmount(typed, { decimalComma: true });
  return number !== undefined && number >= 0 ? number : undefined;
}
