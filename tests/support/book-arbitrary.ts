import fc from "fast-check";
import type { Book } from "#engine/book.ts";
import { DEFAULT_UNCERTAINTY } from "#engine/measure/uncertainty.ts";
import { DEFAULT_HOUSE_ML, type Unit } from "#engine/measure/units.ts";
import { foldName } from "#engine/name.ts";
import type { SaleLine } from "#engine/sales/read/line.ts";
import { numbered } from "#engine/stock/batch-inputs.ts";
import type { Item, Pack } from "#engine/stock/item.ts";
import type { UsedInput } from "#engine/stock/movement.ts";
import { addDays, toInstant, WEEKDAYS } from "#engine/time.ts";
import { DEFAULT_THRESHOLDS } from "#engine/variance/verdict.ts";
import type { Venue } from "#engine/venue.ts";

/** Books of all kinds that a book's sheets can hold: odd names, fractions, every kind of row. */

const ODD_NAMES = [
  '=SUM(A1) "gin"',
  "+Rye, aged",
  "-Amaro\nof the house",
  "@vermouth",
  "Café Noir",
  "Crème de  pêche",
  "ラム",
  "Ромашка 🍋",
  "1",
  "1,5",
  "yes",
  "'quoted'",
  "a\tb",
  "Piña | ½",
  "Rye; aged",
];
const word = fc.string({ unit: fc.constantFrom(..."abcdeé, \"'=+-@1½ü漢"), minLength: 1, maxLength: 12 });
const RESERVED = new Set(["", "all", "ignore"]);
const name = fc
  .oneof({ weight: 1, arbitrary: fc.constantFrom(...ODD_NAMES) }, { weight: 3, arbitrary: word })
  .map((text) => text.trim())
  .filter((text) => !RESERVED.has(foldName(text)));
const listWord = name.map((text) => text.replace(/[;+]/g, "").trim()).filter((text) => text !== "");
const shortText = fc.oneof(fc.constant(""), name);
const longText = fc.oneof(
  fc.constant(""),
  fc
    .array(fc.constantFrom("Stir", " ", "\n", "\r\n", ",", '"', "=1+1", "½ oz", ";", "ice"), { maxLength: 8 })
    .map((parts) => parts.join(""))
    .filter((text) => text.trim() !== ""),
);

/** Distinct in the way in which names are compared. */
function names(counts: { minLength: number; maxLength: number }, of = name) {
  return fc.uniqueArray(of, { ...counts, selector: foldName });
}

const size = fc.oneof(
  fc.integer({ min: 1, max: 2000 }),
  fc.double({ min: 1e-7, max: 1e6, noNaN: true }),
  fc.constantFrom(0.1, 1 / 3, 0.75, 1e-9, 123456.789),
);
const share = fc.oneof(
  fc.constantFrom(0, 1, 0.5),
  fc.double({ min: 0, max: 1, noNaN: true }).map((value) => value + 0),
);
const level = fc.double({ min: 0.01, max: 0.999, noNaN: true });
const minor = fc.integer({ min: 0, max: 1e9 });
const maybe = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { nil: null });
const date = fc.integer({ min: 0, max: 1500 }).map((days) => addDays("2024-01-01", days));
// Hours around the turn of clocks come up often enough.
const moment = fc
  .oneof(
    fc.integer({ min: Date.UTC(2024, 0, 1) / 1000, max: Date.UTC(2027, 0, 1) / 1000 }),
    fc.integer({ min: Date.UTC(2026, 9, 24, 22) / 1000, max: Date.UTC(2026, 9, 25, 4) / 1000 }),
  )
  .map((seconds) => toInstant(seconds * 1000));
const clock = fc
  .tuple(fc.integer({ min: 0, max: 23 }), fc.integer({ min: 0, max: 59 }))
  .map(([hour, minute]) => `${String(hour).padStart(2, "0")}:${String(minute).padStart(2, "0")}`);
const of = fc.constantFrom("container" as const, "case" as const);

const paid = fc.record({ priceTotalMinor: maybe(minor), depositMinor: maybe(minor), empties: maybe(size) });

const venuePlain = fc.record({
  name,
  currency: fc.constantFrom("EUR", "JPY", "KWD"),
  timeZone: fc.constantFrom(
    "Europe/Lisbon",
    "America/New_York",
    "Asia/Kolkata",
    "Australia/Lord_Howe",
    "UTC",
  ),
  dayEnds: clock,
  oz: fc.constantFrom("us" as const, "imperial" as const),
  show: fc.constantFrom("oz" as const, "ml" as const, "cl" as const),
  houseMl: fc
    .record({ dash: size, barspoon: size, drop: size, splash: size })
    .map((own) => ({ ...DEFAULT_HOUSE_ML, ...own })),
  serviceLevel: maybe(level),
  uncertainty: share.map((reading) => ({ ...DEFAULT_UNCERTAINTY, reading })),
});

/** Where a venue stands is known of some: the country alone, or with its region. */
const venue = fc
  .tuple(
    venuePlain,
    fc.constantFrom(
      {},
      { country: "PT" },
      { country: "DE", region: "BY", keepStaff: false },
      { keepStaff: true },
    ),
    fc.constantFrom({}, { thresholds: { ...DEFAULT_THRESHOLDS, chaseMoney: 0, watchRatio: 1.5 } }),
  )
  .map(([plain, place, limits]): Venue => ({ ...plain, ...place, ...limits }));

/** How cold some of the areas are; no colder than a syrup may be, whose level may be read there. */
function withTemperatures(own: Venue, areas: readonly string[]): fc.Arbitrary<Venue> {
  return fc
    .subarray([...areas])
    .chain((cold) =>
      fc
        .tuple(
          ...cold.map(() =>
            fc.double({ min: 0, max: 40, noNaN: true }).map((temperature) => temperature + 0),
          ),
        )
        .map((temperatures) => cold.map((area, at) => [area, temperatures[at] ?? 0] as const)),
    )
    .map((stated) => (stated.length === 0 ? own : { ...own, areaTemperatureC: Object.fromEntries(stated) }));
}

const UNITS_OF: Record<Item["base"], readonly Unit[]> = {
  ml: ["ml", "cl", "l", "oz", "dash", "tsp"],
  g: ["g", "kg", "lb", "oz-wt"],
  each: ["each", "piece"],
};
const unitOf = (item: Item) =>
  fc.constantFrom<Unit>(...UNITS_OF[item.base], ...(isWeighable(item) ? (["g", "oz-wt"] as const) : []));

/** Whether a weight of it can be turned into what it is kept in. */
function isWeighable({ base, densityGPerMl, pieceG }: Item): boolean {
  return (base === "ml" && densityGPerMl !== null) || (base === "each" && pieceG !== null);
}

function itemNamed(itemName: string): fc.Arbitrary<Item> {
  return fc.record({
    name: fc.constant(itemName),
    category: name,
    base: fc.constantFrom("ml" as const, "g" as const, "each" as const),
    abv: maybe(fc.double({ min: 0, max: 100, noNaN: true })),
    brix: maybe(fc.double({ min: 0, max: 80, noNaN: true })),
    densityGPerMl: maybe(fc.double({ min: 0.7, max: 1.6, noNaN: true })),
    pieceG: maybe(size),
    shelfLifeDays: maybe(size),
    allergens: fc.array(listWord, { maxLength: 3 }),
    inHouse: fc.boolean(),
    stocked: fc.boolean(),
    pour: fc.constantFrom("jigger" as const, "free" as const, "measured" as const),
    serviceLevel: maybe(level),
    par: maybe(size),
    parReason: longText,
    note: longText,
  });
}

/** Sets of rows in which no two have the same key. */
function rowsBy<T>(arbitrary: fc.Arbitrary<T>, keyOf: (row: T) => unknown, maxLength = 6): fc.Arbitrary<T[]> {
  return fc.uniqueArray(arbitrary, { maxLength, selector: (row) => JSON.stringify(keyOf(row)) });
}

/** A book whose references all hold. */
export const bookArbitrary: fc.Arbitrary<Book> = fc
  .record({
    venue,
    itemNames: names({ minLength: 4, maxLength: 8 }),
    drinkNames: names({ minLength: 1, maxLength: 4 }),
    supplierNames: names({ minLength: 1, maxLength: 3 }),
    areaNames: names({ minLength: 1, maxLength: 3 }),
  })
  .chain(({ venue, itemNames, drinkNames, supplierNames, areaNames }) => {
    const taken = new Set(itemNames.map(foldName));
    const drinks = drinkNames.filter((drink) => !taken.has(foldName(drink)));
    return fc
      .tuple(...itemNames.map(itemNamed))
      .map((items) => items.map((item) => ({ ...item, abv: plain(item.abv), brix: plain(item.brix) })))
      .chain((items) => fc.constant(items))
      .chain((items) =>
        withTemperatures(venue, areaNames).chain((own) =>
          bookOf(own, items, drinks, supplierNames, areaNames),
        ),
      );
  });

/** Without the negative zero, which no sheet tells from zero. */
function plain(value: number | null): number | null {
  return value === null ? null : value + 0;
}

const NO_PACK = { item: "", pack: "" };

function packsOf(items: readonly Item[], supplierNames: readonly string[]): fc.Arbitrary<Pack[]> {
  const of = (item: Item) =>
    rowsBy(
      fc.record({
        item: fc.constant(item.name),
        pack: fc.constantFrom("1 L", "700 ml", "=case", "⅓"),
        amount: size,
        unit: unitOf(item),
        from: maybe(date),
        perCase: fc.integer({ min: 1, max: 24 }),
        supplier: maybe(fc.constantFrom(...supplierNames)),
        code: shortText,
        gtin: shortText,
        price: maybe(size),
        pricePer: fc.constantFrom("container" as const, "case" as const),
        split: fc.boolean(),
        emptyG: maybe(fc.integer({ min: 0, max: 500 })),
        fullG: maybe(fc.integer({ min: 501, max: 2000 })),
        depositMinor: maybe(minor),
      }),
      ({ pack, supplier, from }) => [pack, supplier, from],
      3,
    );
  return fc.tuple(...items.map(of)).map((lists) => lists.flat());
}

function bookOf(
  venue: Book["venue"],
  items: Item[],
  drinks: string[],
  supplierNames: string[],
  areaNames: string[],
): fc.Arbitrary<Book> {
  // Preps are made only of items before them, so that none is made of itself; the first item is never made.
  const [, second, third, ...rest] = items;
  const preps = [second, third].filter((item) => item !== undefined);
  const made = preps.map(({ name }) => name);
  const item = fc.constantFrom(...items);
  const supplier = fc.constantFrom(...supplierNames);
  const area = fc.constantFrom(...areaNames);
  const measured = item.chain((chosen) =>
    fc.record({ item: fc.constant(chosen.name), amount: size, unit: unitOf(chosen) }),
  );
  const drinkArbitrary = (drink: string) =>
    fc.record({
      name: fc.constant(drink),
      priceMinor: maybe(minor),
      glass: shortText,
      glassMl: maybe(size),
      ice: maybe(fc.constantFrom("none" as const, "cubed" as const, "crushed" as const, "large" as const)),
      technique: maybe(fc.constantFrom("built" as const, "shaken" as const, "thrown" as const)),
      garnishNote: longText,
      method: longText,
      allergens: fc.array(listWord, { maxLength: 2 }),
      onMenuFrom: maybe(date),
      onMenuUntil: maybe(date),
    });
  const lineOf = (makes: string, inputs: readonly Item[]) =>
    fc.constantFrom(...inputs).chain((chosen) =>
      fc.record({
        makes: fc.constant(makes),
        from: date,
        line: fc.oneof(fc.integer({ min: 1, max: 20 }), fc.constant(1.5)),
        amount: maybe(size),
        unit: unitOf(chosen),
        item: fc.constant(chosen.name),
        orItems: fc.subarray(
          inputs
            .filter((other) => other.base === chosen.base && isWeighable(other) === isWeighable(chosen))
            .map(({ name }) => name),
        ),
        note: longText,
      }),
    );
  const specs = fc
    .tuple(
      ...drinks.map((drink) => rowsBy(lineOf(drink, items), ({ from, line }) => [from, line])),
      ...preps.map((prep) =>
        rowsBy(lineOf(prep.name, items.slice(0, items.indexOf(prep))), ({ from, line }) => [from, line], 3),
      ),
    )
    .map((lists) =>
      lists.flat().map((line) => {
        const isTop = line.amount === null && !made.includes(line.makes) && baseOf(items, line.item) === "ml";
        return isTop ? { ...line, unit: "top" as const } : { ...line, amount: line.amount ?? 1 };
      }),
    );
  const pieces = rest.filter(({ base }) => base === "each");
  const cuts =
    pieces.length < 2
      ? fc.constant([])
      : rowsBy(
          fc.record({
            source: fc.constant(pieces[0]?.name ?? ""),
            from: maybe(date),
            gives: fc.constant(pieces[1]?.name ?? ""),
            perPiece: size,
            unit: fc.constant("each" as const),
            parts: fc.array(listWord, { minLength: 1, maxLength: 3 }),
          }),
          ({ from }) => from,
          2,
        );
  return packsOf(items, supplierNames)
    .chain((packs) => {
      // Without a pack nothing of this is generated, but the generator must have something to choose from.
      const pack = fc.constantFrom(...packs, ...(packs.length === 0 ? [NO_PACK] : []));
      const ifPacks = <T>(list: fc.Arbitrary<T[]>) => (packs.length === 0 ? fc.constant<T[]>([]) : list);
      return fc.record({
        venue: fc.constant(venue),
        items: fc.constant(items),
        packs: fc.constant(packs),
        suppliers: fc.tuple(
          ...supplierNames.map((name) =>
            fc.record({
              name: fc.constant(name),
              email: shortText,
              minimumValueMinor: maybe(minor),
              minimumCases: maybe(size),
            }),
          ),
        ),
        supplierDays: fc.array(
          fc.record({
            supplier,
            orderDay: fc.constantFrom(...WEEKDAYS),
            orderBy: clock,
            deliveryDay: fc.constantFrom(...WEEKDAYS),
            deliveryAt: clock,
          }),
          { maxLength: 3 },
        ),
        closures: fc.array(
          fc
            .tuple(maybe(supplier), date, fc.integer({ min: 0, max: 9 }))
            .map(([supplier, from, days]) => ({ supplier, from, to: addDays(from, days) })),
          { maxLength: 3 },
        ),
        areas: rowsBy(
          fc.record({
            area,
            item: item.map(({ name }) => name),
            shelf: fc.oneof(fc.integer({ min: -5, max: 90 }), size),
          }),
          ({ area, item }) => [foldName(area), item],
        ),
        drinks: fc.tuple(...drinks.map(drinkArbitrary)),
        preps: fc.tuple(
          ...preps.map((prep) =>
            fc.record({
              prep: fc.constant(prep.name),
              from: date,
              yield: size,
              unit: unitOf(prep),
              batchStep: maybe(size),
              vesselMax: maybe(size),
              activeMinutes: maybe(size),
              standingHours: maybe(size),
              shelfLifeDays: maybe(size),
              method: longText,
            }),
          ),
        ),
        specs,
        cuts,
        ringNames: rowsBy(
          fc.record({
            ringName: name,
            soldAs: fc.oneof(
              fc.constant({ kind: "ignore" as const }),
              ...drinks.map((drink) => fc.constant({ kind: "drink" as const, drink })),
              item.map(({ name }) => ({ kind: "item" as const, item: name })),
            ),
            serves: size,
            amount: fc.constant(null),
            unit: fc.constant(null),
          }),
          ({ ringName }) => foldName(ringName),
        ),
        modifiers: fc.array(
          fc.oneof(
            fc.tuple(name, measured).map(([modifier, added]) => ({
              modifier,
              effect: "add" as const,
              ...added,
              with: null,
              factor: null,
            })),
            fc.tuple(name, maybe(item), share).map(([modifier, only, factor]) => ({
              modifier,
              effect: "times" as const,
              item: only?.name ?? null,
              with: null,
              amount: null,
              unit: null,
              factor,
            })),
          ),
          { maxLength: 4 },
        ),
        counts: rowsBy(
          fc.tuple(measured, name, moment, area, shortText).map(([found, count, at, area, by]) => ({
            count,
            at,
            area,
            ...found,
            pack: null,
            full: null,
            parts: [],
            grossG: [],
            by,
          })),
          ({ count, area, item }) => [foldName(count), foldName(area), item],
        ).chain((plainRows) =>
          ifPacks(
            rowsBy(
              fc.record({
                count: fc.constant("Packs by the shelf"),
                at: moment,
                area,
                pack,
                full: maybe(fc.oneof(fc.integer({ min: 0, max: 50 }), share)),
                parts: fc.array(share, { minLength: 1, maxLength: 3 }),
                by: shortText,
              }),
              ({ area, pack }) => [foldName(area), pack.item, pack.pack],
            ).map((rows) =>
              rows.map(({ pack, ...row }) => ({
                ...row,
                item: pack.item,
                pack: pack.pack,
                grossG: [],
                amount: null,
                unit: null,
              })),
            ),
          ).map((packRows) => [...plainRows, ...packRows]),
        ),
        deliveries: ifPacks(
          fc.array(
            fc
              .tuple(pack, moment, supplier, shortText, size, of, paid, shortText)
              .map(([pack, at, supplier, invoice, quantity, of, paid, by]) => ({
                at,
                supplier,
                invoice,
                item: pack.item,
                pack: pack.pack,
                quantity,
                of,
                ...paid,
                by,
              })),
            { maxLength: 5 },
          ),
        ),
        batches:
          preps.length === 0
            ? fc.constant([])
            : fc.array(
                fc.constantFrom(...preps).chain((prep) =>
                  fc.record({
                    at: moment,
                    prep: fc.constant(prep.name),
                    made: size,
                    unit: unitOf(prep),
                    by: shortText,
                    note: longText,
                  }),
                ),
                { maxLength: 4 },
              ),
        batchInputs: fc.array(measured, { maxLength: 4 }),
        losses: fc.array(
          fc
            .tuple(
              moment,
              fc.constantFrom("waste" as const, "comp" as const, "expired" as const),
              fc.oneof(
                measured.map(({ item, amount, unit }) => ({ what: item, amount, unit })),
                ...drinks.map((what) => size.map((amount) => ({ what, amount, unit: "serve" as const }))),
              ),
              shortText,
              longText,
            )
            .map(([at, kind, lost, by, note]) => ({ at, kind, ...lost, by, note })),
          { maxLength: 4 },
        ),
        transfers: fc.array(
          fc
            .tuple(moment, fc.constantFrom("in" as const, "out" as const), name, measured)
            .map(([at, direction, place, moved]) => ({ at, direction, place, ...moved })),
          { maxLength: 3 },
        ),
        events: fc.array(fc.record({ date, event: name, factor: share }), { maxLength: 3 }),
        plans:
          drinks.length === 0
            ? fc.constant([])
            : fc.array(fc.record({ date, drink: fc.constantFrom(...drinks), serves: size }), {
                maxLength: 3,
              }),
        orders: ifPacks(
          fc.array(
            fc
              .tuple(name, moment, supplier, pack, size, of, date)
              .map(([order, placed, supplier, pack, quantity, of, expected]) => ({
                order,
                placed,
                supplier,
                item: pack.item,
                pack: pack.pack,
                quantity,
                of,
                expected,
              })),
            { maxLength: 3 },
          ),
        ),
        salesShapes: fc.constantFrom<Book["salesShapes"]>(
          [],
          [{ files: "till-*.csv", encoding: "windows-1252", dateOrder: "dmy", columns: { item: "Artikel" } }],
        ),
      }) as fc.Arbitrary<Unsorted>;
    })
    .map((book) => spelledAlike({ ...book, batchInputs: spreadOver(book, book.batchInputs) }));
}

/** A book before its batches have been dealt what they used. */
type Unsorted = Omit<Book, "batchInputs"> & { batchInputs: UsedInput[] };

/** Deals what was used out to the batches, each item once a batch; what is made to order or of itself is left out. */
function spreadOver({ items, batches }: Unsorted, used: readonly UsedInput[]): Book["batchInputs"] {
  const stocked = new Set(items.filter(({ stocked }) => stocked).map(({ name }) => name));
  return numbered(batches).flatMap(({ batch: { at, prep }, batchNo }, place) => {
    const own = used.filter(
      ({ item }, index) => index % batches.length === place && stocked.has(item) && item !== prep,
    );
    const once = own.filter(({ item }, index) => own.findIndex((other) => other.item === item) === index);
    return once.map((input) => ({ at, prep, batchNo, ...input }));
  });
}

function baseOf(items: readonly Item[], itemName: string): Item["base"] | undefined {
  return items.find(({ name }) => name === itemName)?.base;
}

/** Counts and orders of one name are spelled one way, as reading spells them. */
function spelledAlike(book: Book): Book {
  const first = new Map<string, string>();
  const spelled = (kind: string, text: string) => {
    const key = `${kind} ${foldName(text)}`;
    first.set(key, first.get(key) ?? text);
    return first.get(key) ?? text;
  };
  return {
    ...book,
    counts: book.counts.map((row) => ({ ...row, count: spelled("count", row.count) })),
    orders: book.orders.map((row) => ({ ...row, order: spelled("order", row.order) })),
  };
}

const ringName = fc.constantFrom("House Sour", "Dry Martini", "=Rickey", "Café, hot");
/** Lines as tills give them; few kinds, so that equal ones come up. */
export const saleLineArbitrary: fc.Arbitrary<SaleLine> = fc.record({
  businessDate: fc.constantFrom("2026-03-02", "2026-03-03", "2026-03-04"),
  at: fc.constantFrom(null, "2026-03-02T20:00:00Z", "2026-03-03T01:30:05Z"),
  ringName,
  modifiers: fc.constantFrom("", "no ice; double"),
  quantity: fc.constantFrom(1, 2, -1, 0.5),
  grossMinor: fc.constantFrom(null, 1200),
  netMinor: fc.constantFrom(null, 1000, -1000),
  check: fc.constantFrom(null, "17"),
  lineNo: fc.constantFrom(null, "1", "2"),
});
