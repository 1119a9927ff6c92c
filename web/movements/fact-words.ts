import type { Unit } from "#engine/measure/units.ts";
import type { BatchEntry, Delivery, Loss, Transfer } from "#engine/stock/movement.ts";
import type { Venue } from "#engine/venue.ts";
import { formatNumber, withUnit } from "../format.ts";
import { formatMinor } from "../money.ts";
import { unitWord } from "../prep/amounts.ts";
import { say } from "../texts/say.ts";
import type { AnyFact, Kind } from "./entries.ts";

/** What each kind of loss is called. */
export const LOSS_WORDS = {
  waste: "movements.waste",
  spill: "movements.spill",
  breakage: "movements.breakage",
  staff: "movements.staff",
  tasting: "movements.tasting",
  comp: "movements.comp",
  expired: "movements.expired",
} as const;

export type FactWords = { what: string; amount: string; about: string };

/** A movement in words, for a row of the list; without a currency, without what it cost. */
export function factWords(
  kind: Kind,
  fact: AnyFact,
  { currency }: { currency: Venue["currency"] | null },
): FactWords {
  switch (kind) {
    case "deliveries":
      return deliveryWords(fact as Delivery, currency);
    case "losses":
      return lossWords(fact as Loss);
    case "transfers":
      return transferWords(fact as Transfer);
    case "batches":
      return batchWords(fact as BatchEntry);
  }
}

function deliveryWords(
  { item, pack, quantity, of, supplier, invoice, priceTotalMinor }: Delivery,
  currency: string | null,
): FactWords {
  const price =
    currency === null
      ? ""
      : priceTotalMinor === null
        ? say("parts.noPrice")
        : formatMinor(priceTotalMinor, currency);
  const amount = say("stock.packs", { quantity, of, pack });
  return { what: item, amount, about: [supplier, invoice, price].filter(Boolean).join(", ") };
}

function lossWords({ what, amount, unit, kind, note }: Loss): FactWords {
  const size = unit === "serve" ? say("movements.servesOf", { count: amount }) : amountWords(amount, unit);
  return { what, amount: size, about: [say(LOSS_WORDS[kind]), note].filter(Boolean).join(", ") };
}

function transferWords({ item, amount, unit, direction, place }: Transfer): FactWords {
  return {
    what: item,
    amount: amountWords(amount, unit),
    about: say(direction === "in" ? "movements.fromPlace" : "movements.toPlace", { place }),
  };
}

function batchWords({ prep, made, unit, note, inputs = [] }: BatchEntry): FactWords {
  const used = inputs.map((input) => `${amountWords(input.amount, input.unit)} ${input.item}`);
  const taken = used.length === 0 ? "" : say("movements.madeWith", { inputs: used.join(", ") });
  return { what: prep, amount: amountWords(made, unit), about: [taken, note].filter(Boolean).join("; ") };
}

function amountWords(amount: number, unit: Unit): string {
  const number = formatNumber(amount, amount % 1 === 0 ? 0 : 1);
  return unit === "each" || unit === "piece" ? number : withUnit(number, unitWord(unit));
}
