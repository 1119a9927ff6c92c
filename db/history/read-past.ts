import type { Db } from "#db/open.ts";
import { loadVenue } from "#db/stored/book.ts";
import { storedTexts } from "#db/stored/sale-blocks.ts";
import { foldName } from "#engine/name.ts";
import { unpackTally } from "#engine/sales/packed/tally.ts";
import { localToInstant } from "#engine/sales/read/clock.ts";
import type { ClosedPast } from "#engine/stock/closed-past.ts";
import { addDays } from "#engine/time.ts";

/** What the closed weeks have to do with: their items, their drinks, what the till sold. Each is read when first asked for. */
export function readPast(db: Db, closed: ClosedPast) {
  const items = once(() => itemsIn(db, closed));
  const drinks = once(() => drinksIn(db, closed));
  const sold = once(() => soldIn(db, closed));
  return {
    hasItem: (name: string) => items().has(foldName(name)),
    hasDrink: (name: string) => drinks().has(foldName(name)),
    isSold: (ringName: string) => sold().ringNames.has(foldName(ringName)),
    /** The till joins several modifiers in one text, so this says yes rather once too often. */
    isModifierSold: (modifier: string) => {
      const folded = foldName(modifier);
      return [...sold().modifiers].some((text) => text.includes(folded));
    },
  };
}

function once<T>(make: () => T): () => T {
  let made: { value: T } | undefined;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
}

/** When the closed past ends: with its last business day, or with the count that it ends on. */
function endOf(db: Db, { through, until }: ClosedPast): string {
  const venue = loadVenue(db);
  if (venue === undefined) return "9999";
  const dayEnd = localToInstant(`${addDays(through, 1)} ${venue.dayEnds}`, venue);
  return until !== null && until > dayEnd ? until : dayEnd;
}

/** Items that an entry or a spec of the closed weeks names, and what is cut to get them. */
function itemsIn(db: Db, closed: ClosedPast): Set<string> {
  const rows = db.sqlite
    .prepare(
      `with used (id) as (
         select item_id from count_entries where at <= @end
         union select packs.item_id from deliveries join packs on packs.id = deliveries.pack_id where at <= @end
         union select prep_id from batches where at <= @end
         union select item_id from losses where at <= @end and item_id is not null
         union select item_id from transfers where at <= @end
         union select item_id from spec_lines where from_date <= @through
         union select prep_id from spec_lines where from_date <= @through and prep_id is not null
         union select spec_alternatives.item_id from spec_alternatives
           join spec_lines on spec_lines.id = line_id where from_date <= @through
         union select item_id from ring_names where item_id is not null
         union select item_id from modifiers where item_id is not null
         union select with_id from modifiers where with_id is not null
         union select source_id from cuts join used on used.id = cuts.gives_id
       )
       select folded from items where id in (select id from used)`,
    )
    .pluck()
    .all({ end: endOf(db, closed), through: closed.through }) as string[];
  return new Set(rows);
}

function drinksIn(db: Db, closed: ClosedPast): Set<string> {
  const rows = db.sqlite
    .prepare(
      `select folded from drinks where id in (select drink_id from spec_lines where from_date <= ?)
       or id in (select drink_id from losses where at <= ?)`,
    )
    .pluck()
    .all(closed.through, endOf(db, closed)) as string[];
  return new Set(rows);
}

function soldIn(db: Db, { through }: ClosedPast): { ringNames: Set<string>; modifiers: Set<string> } {
  const packed = db.sqlite
    .prepare("select packed from tallies where business_date <= ?")
    .pluck()
    .all(through) as Uint8Array[];
  const numbers = { ringName: new Set<number>(), modifiers: new Set<number>() };
  for (const tally of packed.map((each) => unpackTally(each))) {
    for (let place = 0; place < tally.count; place += 1) {
      numbers.ringName.add(tally.ringName[place] ?? 0);
      numbers.modifiers.add(tally.modifiers[place] ?? 0);
    }
  }
  const texts = storedTexts(db);
  const textsOf = (set: Set<number>) => new Set([...set].map((number) => foldName(texts.textOf(number))));
  return { ringNames: textsOf(numbers.ringName), modifiers: textsOf(numbers.modifiers) };
}
