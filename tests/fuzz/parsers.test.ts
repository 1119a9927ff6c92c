import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { BookError } from "#db/book/problem.ts";
import { readBook } from "#db/book/read-book.ts";
import { writeBook } from "#db/book/write-book.ts";
import { readAmount } from "#engine/measure/amount.ts";
import { ClockError, localToInstant } from "#engine/sales/read/clock.ts";
import { SalesFileError } from "#engine/sales/read/error.ts";
import { readSales } from "#engine/sales/read/read-sales.ts";
import { readSpecText } from "#engine/specs/text/read.ts";
import { readPriceList } from "#engine/stock/price-list/read.ts";
import { InputError } from "#server/input-error.ts";
import { readMoment, readMoneyMinor } from "#server/reading.ts";
import { smallBook } from "#tests/support/small-book.ts";

// What people, tills and spreadsheets hand in, and what nobody should: an answer or an error with a name, soon. ULLAGE_FUZZ=2000 looks further.
const RUNS = Number(process.env.ULLAGE_FUZZ ?? 60);
const LONGEST_MS = 2_000;

/** Words that mean something to JavaScript's objects, and signs that mean something to no reader. */
const ODD = [
  ...[
    "constructor",
    "__proto__",
    "toString",
    "valueOf",
    "hasOwnProperty",
    "prototype",
    "length",
    "null",
    "undefined",
  ],
  ...["NaN", "Infinity", "-Infinity", "1e400", "0x1F", "1e-400", "-0", "9".repeat(400), "١٢", "½", "⅞", "²"],
  ...[
    "\u0000",
    "\ufeff",
    "\u202e",
    "\ud800",
    "\u00a0",
    "\u2212",
    "\r",
    "\n",
    "\t",
    '"',
    "'",
    ",",
    ";",
    "=",
    "`",
  ],
  ...[
    "$&",
    "$1",
    "(((((",
    "[a-z]+",
    "(a+)+$",
    "\\",
    "../..",
    "<b>",
    "&#x41;",
    "&constructor;",
    "x".repeat(3_000),
  ],
];
const odd = fc.constantFrom(...ODD);

function mixed(...words: string[]): fc.Arbitrary<string> {
  const piece = fc.oneof(
    { weight: 5, arbitrary: fc.constantFrom(...words) },
    { weight: 2, arbitrary: odd },
    { weight: 1, arbitrary: fc.string({ unit: "binary", maxLength: 12 }) },
  );
  return fc.array(piece, { maxLength: 14 }).map((pieces) => pieces.join(""));
}

/** What a reader gives, or the error with a name that it throws; any other error fails, and so does one that takes too long. */
function readOr<T>(named: readonly (new (...args: never[]) => Error)[], read: () => T): T | undefined {
  const startedMs = performance.now();
  try {
    return read();
  } catch (error) {
    if (!named.some((kind) => error instanceof kind)) throw error;
    expect((error as Error).message).toMatch(/\S/);
    expect((error as Error).message.length).toBeLessThan(50_000);
    return undefined;
  } finally {
    expect(performance.now() - startedMs).toBeLessThan(LONGEST_MS);
  }
}

const SMALL = [...smallBook()];

describe("a book", () => {
  it("with any cell put in place of any other is read, or refused with all that is wrong", () => {
    const change = fc.tuple(
      fc.nat(SMALL.length - 1),
      fc.nat(400),
      fc.oneof(odd, mixed("1", "oz", "ml", "2026-03-01", " ", "10:00", "Gimlet", "yes", "3/4")),
    );
    fc.assert(
      fc.property(fc.array(change, { minLength: 1, maxLength: 4 }), (changes) => {
        const files = new Map(SMALL);
        for (const [at, place, text] of changes) {
          const [name = "", held = ""] = SMALL[at] ?? [];
          const cells = held.split(/(,|\n)/);
          cells[place % cells.length] = text;
          files.set(name, cells.join(""));
        }
        const read = readOr([BookError], () => readBook(files));
        // What is taken in can be written, and read again as the same.
        if (read !== undefined) expect(readBook(writeBook(read.book)).book).toEqual(read.book);
      }),
      { numRuns: RUNS },
    );
  });

  it("with any text as one of its sheets is read or refused", () => {
    const text = mixed("item", "drink", ",", "\n", '"', "Dry gin", "ml", "2026-03-01", "1");
    fc.assert(
      fc.property(fc.constantFrom(...SMALL.map(([name]) => name)), text, (name, sheet) => {
        readOr([BookError], () => readBook(new Map([...SMALL, [name, sheet]])));
      }),
      { numRuns: RUNS },
    );
  });

  it.each(["venue.json", "sales-shapes.json"])("with any JSON as %s is read or refused", (name) => {
    const held = smallBook().get(name) ?? "{}";
    const value = fc.oneof(
      fc.jsonValue({ maxDepth: 4 }),
      odd,
      fc.constantFrom("EUR", "Europe/Lisbon", "04:00", "us", 0, -1, 1e308, true),
    );
    const key = fc.constantFrom(
      "name",
      "currency",
      "timeZone",
      "dayEnds",
      "oz",
      "houseMl",
      "uncertainty",
      "serviceLevel",
      "files",
      "columns",
      "decimal",
      "delimiter",
      "encoding",
      "dateOrder",
      "constructor",
      "toString",
    );
    const changed = fc.array(fc.tuple(key, value), { minLength: 1, maxLength: 3 }).map((pairs) => {
      const json: unknown = JSON.parse(held);
      const change = (one: object) => ({ ...one, ...Object.fromEntries(pairs) });
      return JSON.stringify(Array.isArray(json) ? json.map(change) : change(json as object));
    });
    const cutOff = fc.nat(held.length).map((length) => held.slice(0, length));
    const deep = fc.constantFrom(
      "[".repeat(100_000),
      `${"[".repeat(50_000)}${"]".repeat(50_000)}`,
      '{"a":'.repeat(20_000),
    );
    const any = fc.oneof(
      { weight: 6, arbitrary: changed },
      cutOff,
      fc.json(),
      mixed("{", "}", '"', ":", "["),
      deep,
    );
    fc.assert(
      fc.property(any, (text) => {
        readOr([BookError], () => readBook(new Map([...SMALL, [name, text]])));
      }),
      { numRuns: RUNS * 2 },
    );
  });
});

it("recipe text is read line by line, whatever it holds, and every amount is a number", () => {
  const items = ["Dry gin", "Lime juice", "Sugar syrup", "Egg white", "Lime wheel"];
  const text = mixed(
    "3/4",
    " ",
    "oz",
    "1 1/2",
    "½",
    "dash",
    "Dry gin",
    "lime juice",
    "\n",
    "or",
    "(",
    ")",
    "top",
    "2-3",
    "bsp",
    ",",
    "juice of",
    "each",
    "half",
    "a",
    "two",
  );
  fc.assert(
    fc.property(text, (written) => {
      const lines = readOr([], () => readSpecText(written, { items })) ?? [];
      for (const { amount, error, item } of lines) {
        if (amount !== null && amount !== undefined) expect(Number.isFinite(amount)).toBe(true);
        expect(error === null || error === undefined || typeof error === "string").toBe(true);
        expect(item === null || item === undefined || typeof item === "string").toBe(true);
      }
    }),
    { numRuns: RUNS * 5 },
  );
});

it("an amount is a finite number or none", () => {
  fc.assert(
    fc.property(
      mixed("1", "2", "/", " ", ".", ",", "½", "-", "+", "e", "000"),
      fc.boolean(),
      (text, decimalComma) => {
        const amount = readOr([], () => readAmount(text, { decimalComma }));
        expect(amount === undefined || Number.isFinite(amount)).toBe(true);
      },
    ),
    { numRuns: RUNS * 20 },
  );
});

it("a moment or a sum of money typed on the command line is read or refused in words", () => {
  const venue = { timeZone: "Europe/Lisbon", dayEnds: "04:00" };
  fc.assert(
    fc.property(mixed("2026", "-", "03", "29", " ", "01:30", "T", "Z", ":", "12.50", "99"), (text) => {
      const moment = readOr([InputError, ClockError], () => readMoment(text, venue, "at"));
      if (moment !== undefined) expect(moment).toMatch(/^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\dZ$/);
      const minor = readOr([InputError], () => readMoneyMinor(text, 2, "budget"));
      if (minor !== undefined) expect(Number.isSafeInteger(minor)).toBe(true);
      readOr([ClockError], () => localToInstant(text, venue));
    }),
    { numRuns: RUNS * 10 },
  );
});

const list = mixed(
  "Item",
  "Price",
  "Qty",
  "Date",
  ",",
  ";",
  "\n",
  '"',
  "Dry gin",
  "1 L",
  "12,50",
  "2026-03-01",
  "6x70cl",
  "01 constructor 2026",
  "20:00 toString",
);

it("a till's file of such words is read, asked about or refused", () => {
  const options = {
    fileName: "till.csv",
    clock: { timeZone: "Europe/Lisbon", dayEnds: "04:00" },
    currencyDigits: 2,
  };
  fc.assert(
    fc.property(list, odd, (body, word) => {
      const text = `Date,Time,Item,Modifiers,Qty,Net\n2026-03-01,20:00,Gin,${word},1,2\n01 ${word} 2026,9 ${word},${word},,${word},${word}\n${body}`;
      const read = readOr([SalesFileError], () => readSales(new TextEncoder().encode(text), options));
      for (const line of read?.lines ?? []) {
        expect(line.businessDate).toMatch(/^\d{4}-\d\d-\d\d$/);
        expect(Number.isFinite(line.quantity)).toBe(true);
      }
    }),
    { numRuns: RUNS * 3 },
  );
});

it("a supplier's price list of such words is read or refused", () => {
  fc.assert(
    fc.property(list, odd, (body, word) => {
      const text = `Item,Pack,Price,Code\nDry gin,1 L,21.00,${word}\n${word},${word},${word},1\n${body}`;
      const read = readOr([SalesFileError, InputError], () =>
        readPriceList(new TextEncoder().encode(text), "list.csv", {}),
      );
      for (const { price } of read?.lines ?? [])
        if (price !== null) expect(Number.isFinite(price)).toBe(true);
    }),
    { numRuns: RUNS * 3 },
  );
});
