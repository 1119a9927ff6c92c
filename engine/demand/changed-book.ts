import { z } from "zod";
import type { Book } from "#engine/book.ts";
import { currencyDigits } from "#engine/currency.ts";
import type { DemandModel } from "#engine/demand/model.ts";
import { addDays, BusinessDate } from "#engine/time.ts";

const Share = z.number().gt(0).max(1);

/** A thing that might be done: a new menu, a price, a party, a closed day. */
export const Change = z.discriminatedUnion("kind", [
  z.strictObject({
    kind: z.literal("menu"),
    from: BusinessDate,
    off: z.array(z.string()),
    /** Share of the new menu's serves planned for a drink never sold yet; one that was goes by its own past. */
    on: z
      .array(z.strictObject({ drink: z.string(), share: Share }))
      .refine((on) => on.reduce((sum, { share }) => sum + share, 0) < 1, "leave a share to the other drinks"),
  }),
  z.strictObject({ kind: z.literal("price"), drink: z.string(), price: z.number().nonnegative() }),
  z.strictObject({
    kind: z.literal("party"),
    date: BusinessDate,
    guests: z.number().positive().max(100_000),
    drinksEach: z.number().positive().max(50),
    /** Empty: they drink as the other guests do. */
    drinks: z.array(z.strictObject({ drink: z.string(), share: Share })),
  }),
  z.strictObject({ kind: z.literal("closed"), date: BusinessDate }),
]);
export type Change = z.infer<typeof Change>;

/** The drinks that changes name, for a check against the book. */
export function drinksNamed(changes: readonly Change[]): string[] {
  return changes.flatMap((change) => {
    if (change.kind === "menu") return [...change.off, ...change.on.map(({ drink }) => drink)];
    if (change.kind === "price") return [change.drink];
    return change.kind === "party" ? change.drinks.map(({ drink }) => drink) : [];
  });
}

/** The first day on which any of the changes is felt; null where all are, from today on. */
export function firstFelt(changes: readonly Change[]): BusinessDate | null {
  const dates = changes.flatMap((change) =>
    change.kind === "price" ? [] : [change.kind === "menu" ? change.from : change.date],
  );
  return dates.sort()[0] ?? null;
}

type Usual = {
  model: DemandModel;
  /** The days to plan for: a new drink's share is planned on each of them. */
  dates: readonly BusinessDate[];
};

/**
 * The book as it would stand with the changes made; the book given is left as it is.
 *
 * A party of 120 at 3 drinks each whose guests drink as the others → 360 planned serves in the shares of the menu.
 * A price leaves the guests' choices as they are: what it does to them the book cannot know.
 */
export function changedBook(book: Book, changes: readonly Change[], usual: Usual): Book {
  return changes.reduce((changed, change) => withChange(changed, change, usual), book);
}

function withChange(book: Book, change: Change, usual: Usual): Book {
  if (change.kind === "closed")
    return { ...book, events: [...book.events, { date: change.date, event: "Closed", factor: 0 }] };
  if (change.kind === "price") return withPrice(book, change);
  if (change.kind === "party") return { ...book, plans: [...book.plans, ...partyPlans(book, change, usual)] };
  return withMenu(book, change, usual);
}

function withPrice(book: Book, { drink, price }: Extract<Change, { kind: "price" }>): Book {
  const priceMinor = Math.round(price * 10 ** currencyDigits(book.venue.currency));
  return {
    ...book,
    drinks: book.drinks.map((one) => (one.name === drink ? { ...one, priceMinor } : one)),
  };
}

function partyPlans(book: Book, change: Extract<Change, { kind: "party" }>, { model, dates }: Usual) {
  const { date, guests, drinksEach, drinks } = change;
  const shares = drinks.length > 0 ? drinks : usualShares(book, { model, dates });
  const total = shares.reduce((sum, { share }) => sum + share, 0);
  return shares.map(({ drink, share }) => ({ date, drink, serves: (guests * drinksEach * share) / total }));
}

function usualShares(book: Book, { model, dates }: Usual): { drink: string; share: number }[] {
  const names = new Set(book.drinks.map(({ name }) => name));
  const means = new Map<string, number>();
  for (const { what, mean } of dates.flatMap((date) => model.on(date)))
    if (names.has(what)) means.set(what, (means.get(what) ?? 0) + mean);
  return [...means].map(([drink, share]) => ({ drink, share }));
}

/** The guests stay as many as they were: what a new drink is planned to take, the others do without. */
function withMenu(
  book: Book,
  { from, off, on }: Extract<Change, { kind: "menu" }>,
  { model, dates }: Usual,
): Book {
  const usual = dates.map((date) => ({ date, serves: serves(model.on(date)) }));
  const sold = new Set(dates.flatMap((date) => model.on(date)).map(({ what }) => what));
  const fresh = on.filter(({ drink }) => !sold.has(drink));
  const felt = usual.filter(({ date, serves }) => date >= from && serves > 0);
  const plans = fresh.flatMap(({ drink, share }) =>
    felt.map((day) => ({ date: day.date, drink, serves: share * day.serves })),
  );
  const left = 1 - fresh.reduce((sum, { share }) => sum + share, 0);
  const events =
    fresh.length === 0 ? [] : felt.map(({ date }) => ({ date, event: "New menu", factor: left }));
  return {
    ...book,
    plans: [...book.plans, ...plans],
    events: [...book.events, ...events],
    drinks: book.drinks.map((drink) => {
      if (off.includes(drink.name)) return { ...drink, onMenuUntil: addDays(from, -1) };
      if (on.some((one) => one.drink === drink.name))
        return { ...drink, onMenuFrom: drink.onMenuFrom ?? from, onMenuUntil: null };
      return drink;
    }),
  };
}

function serves(drinks: readonly { mean: number }[]): number {
  return drinks.reduce((sum, { mean }) => sum + mean, 0);
}
