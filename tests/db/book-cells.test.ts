import { describe, expect, it } from "vitest";
import { type Cell, majorText, money, NOT_NEGATIVE, number, yesNo } from "#db/book/cell.ts";
import { decimalMarkOf } from "#db/book/decimal.ts";
import { readBook } from "#db/book/read-book.ts";
import { clockTime, date, moment, momentOrDate, weekday } from "#db/book/time-cell.ts";
import { smallBookAnd, smallBookWith } from "#tests/support/small-book.ts";

const CONTEXT = { decimalComma: false, timeZone: "Europe/Lisbon", moneyDigits: 2 };
const amount = number(NOT_NEGATIVE);

describe("a cell", () => {
  it.each([
    { written: "0.75", amount: 0.75 },
    { written: "3/4", amount: 0.75 },
    { written: "¾", amount: 0.75 },
    { written: "1 1/2", amount: 1.5 },
    { written: "1½", amount: 1.5 },
    { written: " 2 ", amount: 2 },
    { written: "1e3", amount: 1000 },
    { written: "-0", amount: 0 },
  ])("reads the amount $written as $amount", ({ written, amount: wanted }) => {
    expect(amount.read(written, CONTEXT)).toBe(wanted);
  });

  it.each([
    { written: "0,75", amount: 0.75 },
    { written: "3/4", amount: 0.75 },
    { written: "12", amount: 12 },
  ])("reads $written as $amount among decimal commas", ({ written, amount: wanted }) => {
    expect(amount.read(written, { ...CONTEXT, decimalComma: true })).toBe(wanted);
  });

  it.each([
    { written: "12.50", digits: 2, minor: 1250 },
    // 12.35 × 100 is 1234.9999999999998 in binary.
    { written: "12.35", digits: 2, minor: 1235 },
    { written: "1.005", digits: 3, minor: 1005 },
    { written: "950", digits: 0, minor: 950 },
    { written: "123456789012.34", digits: 2, minor: 12_345_678_901_234 },
  ])(
    "reads the money $written with $digits decimals as $minor minor units, and writes it so that it reads the same",
    ({ written, digits, minor }) => {
      const context = { ...CONTEXT, moneyDigits: digits };
      expect(money.read(written, context)).toBe(minor);
      expect(money.read(majorText(minor, digits), context)).toBe(minor);
    },
  );

  it.each(["12.345", "0.001"])("does not round the money %s", (written) => {
    expect(() => money.read(written, CONTEXT)).toThrow("has more than the 2 decimals of the venue's money");
  });

  it.each([
    // Lisbon keeps UTC in winter and is an hour ahead in summer, from 29 March to 25 October 2026.
    { written: "2026-03-02 15:00", instant: "2026-03-02T15:00:00Z" },
    { written: "2026-03-02T15:00:30", instant: "2026-03-02T15:00:30Z" },
    { written: "2026-07-02 9:05", instant: "2026-07-02T08:05:00Z" },
    { written: "2026-10-25 01:30", instant: "2026-10-25T00:30:00Z" },
    { written: "2026-10-25T01:30:00Z", instant: "2026-10-25T01:30:00Z" },
    { written: "2026-07-02T09:05:00+02:00", instant: "2026-07-02T07:05:00Z" },
  ])("reads the time $written in Lisbon as $instant", ({ written, instant }) => {
    expect(moment.read(written, CONTEXT)).toBe(instant);
    expect(moment.read(moment.write(instant, CONTEXT), CONTEXT)).toBe(instant);
  });

  it("writes the second of two equal hours so that it is told from the first", () => {
    expect(moment.write("2026-10-25T00:30:00Z", CONTEXT)).toBe("2026-10-25 01:30");
    expect(moment.write("2026-10-25T01:30:00Z", CONTEXT)).toBe("2026-10-25T01:30:00Z");
    expect(moment.write("2026-07-02T07:05:09Z", CONTEXT)).toBe("2026-07-02 08:05:09");
  });

  it.each<[string, Cell<unknown>, string, unknown]>([
    ["an order placed on a bare date as its midnight", momentOrDate, "2026-07-02", "2026-07-01T23:00:00Z"],
    ["a short hour", clockTime, "7:15", "07:15"],
    ["a spreadsheet's seconds", clockTime, "07:15:00", "07:15"],
    ["a long weekday", weekday, " thursday ", "Thu"],
    ["a short weekday", weekday, "SUN", "Sun"],
    ["a date", date, " 2028-02-29 ", "2028-02-29"],
    ["a spreadsheet's yes", yesNo, "TRUE", true],
    ["a no", yesNo, "No", false],
  ])("reads %s", (_, cell, written, wanted) => {
    expect(cell.read(written, CONTEXT)).toBe(wanted);
  });
});

it.each([
  { numbers: ["0,75", "12"], mark: "comma" },
  { numbers: ["0.5", "12"], mark: "point" },
  { numbers: ["0.5", "0,75"], mark: "point" },
  { numbers: ["1,000", "1.000"], mark: "unclear" },
  { numbers: ["1,0005"], mark: "comma" },
  { numbers: ["3/4", "", "two"], mark: "unclear" },
])("tells from $numbers that the sheet's decimal mark is: $mark", ({ numbers, mark }) => {
  expect(decimalMarkOf(numbers)).toBe(mark);
});

describe("what is read but worth a word", () => {
  it.each([
    {
      what: "one item twice on one invoice",
      files: smallBookAnd("deliveries.csv", "2026-03-06 09:00,quayside drinks,q-118,Soda,bottle,1,case,,"),
      notice: 'deliveries.csv row 4, invoice: "Soda" is on invoice "q-118" in row 3 too; both were taken',
    },
    {
      what: "a batch of what is made to order",
      files: smallBookAnd("batches.csv", "2026-03-06 09:00,Lime wheel,20,each,,"),
      notice:
        'batches.csv row 4, prep: "Lime wheel" is made to order, so drinks already use what it is made of; a batch of it counts twice',
    },
    {
      what: "a weighed bottle of no known empty weight",
      files: smallBookAnd("counts.csv", "Week 9,2026-03-02 11:00,Cellar,Soda,,,,900,,,Ana"),
      notice:
        'counts.csv row 7, gross_g: nothing says what an empty container of "Soda" weighs, so the usual weight for its size is taken; add empty_g in packs.csv',
    },
    {
      what: "an area that is not in the shelf order",
      files: smallBookAnd("counts.csv", "Week 9,2026-03-02 10:40,Bakc bar,Soda,,3,,,,,"),
      notice: 'counts.csv row 7, area: "Bakc bar" is not in areas.csv; it was taken as an area of its own',
    },
    {
      what: "something made in house that nothing says how to make",
      files: smallBookAnd("items.csv", "Ginger beer,mixer,ml,,,,,,,yes"),
      notice:
        'items.csv row 12, in_house: "Ginger beer" is made in house, but neither preps.csv nor cuts.csv says how',
    },
    {
      what: "a prep of nothing",
      files: smallBookAnd("preps.csv", "Soda,2026-01-01,1,l"),
      notice:
        'preps.csv row 4, prep: "Soda" has no lines in specs.csv and no cut, so its batches use nothing',
    },
    {
      what: "a price that does not say of what",
      files: smallBookAnd("packs.csv", "Soda,can,330,ml,,24,,0.40"),
      notice:
        "packs.csv row 9, price_per: the cell is empty; the price was taken as that of one container, not of the case",
    },
    {
      what: "a sale of an item that has no pack",
      files: smallBookAnd("ring-names.csv", "Orgeat bottle,Orgeat,,,"),
      notice:
        'ring-names.csv row 5, amount: "Orgeat" has no pack, so a sale of it needs an amount and a unit; until then it counts as unmapped',
    },
  ])("is $what", ({ files, notice }) => {
    expect(readBook(files).notices).toEqual([notice]);
  });
});

describe("names", () => {
  it("are spelled as the sheet that defines them spells them, whatever the others write", () => {
    const files = smallBookWith(
      "specs.csv",
      "Rum Sour,2026-01-01,1,2,oz,Old Quay rum",
      " rum  sour ,2026-01-01,1,2,oz,OLD QUAY RUM",
    );
    expect(readBook(files).book.specs[3]).toMatchObject({ makes: "Rum Sour", item: "Old Quay rum" });
  });

  it("are the same in either form of Unicode", () => {
    const files = smallBookAnd("items.csv", "Cr\u00e8me de mûre,liqueur,ml");
    files.set(
      "transfers.csv",
      `at,direction,place,item,amount,unit\n2026-03-04 12:00,in,Lower bar,CRE\u0300ME de mu\u0302re,1,l`,
    );
    expect(readBook(files).book.transfers[0]?.item).toBe("Cr\u00e8me de mûre");
  });

  it("mean a drink before an item where a till sells both", () => {
    const files = smallBookAnd("drinks.csv", "soda,3");
    files.set("ring-names.csv", "ring_name,sold_as\nSoda glass,SODA");
    expect(readBook(files).book.ringNames[0]?.soldAs).toEqual({ kind: "drink", drink: "soda" });
  });

  it("of suppliers may stand in other sheets alone where no sheet of suppliers is kept", () => {
    const files = smallBookAnd("events.csv");
    files.delete("suppliers.csv");
    const { book, notices } = readBook(files);
    expect(book.suppliers.map(({ name }) => name)).toEqual(["Quayside Drinks", "Green Barrow"]);
    expect(notices[0]).toBe(
      'suppliers.csv: "Quayside Drinks" is not listed there; it was taken from packs.csv',
    );
  });
});
