import { smallBook, smallBookAnd, smallBookWith } from "#tests/support/small-book.ts";

/** One fault in the small bar's book, and every line that reading it must give. */
export type BookProblem = { wrong: string; files: Map<string, string>; problems: string[] };

const and = (wrong: string, file: string, row: string, ...problems: string[]): BookProblem => ({
  wrong,
  files: smallBookAnd(file, row),
  problems,
});
const as = (
  wrong: string,
  [file, text, instead]: [string, string, string],
  ...problems: string[]
): BookProblem => ({ wrong, files: smallBookWith(file, text, instead), problems });
const only = (wrong: string, file: string, text: string | null, ...problems: string[]): BookProblem => ({
  wrong,
  files: smallBook({ [file]: text }),
  problems,
});

export const BOOK_PROBLEMS: BookProblem[] = [
  // Files and columns
  only("a book without items", "items.csv", null, "items.csv: the file is missing"),
  only(
    "a venue that is no JSON",
    "venue.json",
    '{\n"name" "Heron"}',
    "venue.json: this is no JSON at line 2; check its commas, brackets and quotation marks",
  ),
  as(
    "a venue without its zone",
    ["venue.json", '"timeZone": "Europe/Lisbon", ', ""],
    'venue.json, timeZone: it is missing; add "timeZone"',
  ),
  as(
    "a zone that is none",
    ["venue.json", "Europe/Lisbon", "Europe/Nowhere"],
    "venue.json, timeZone: no such time zone",
  ),
  as(
    "a currency that is none",
    ["venue.json", "EUR", "EUX"],
    'venue.json, currency: "EUX" is no currency of ISO 4217',
  ),
  only(
    "a sheet without a column it must have",
    "events.csv",
    "date,event,facter\n2026-03-07,Fair,1.4",
    'events.csv, factor: the column is missing; did you mean "facter"?',
  ),
  only(
    "two columns of one name",
    "events.csv",
    "date,event,factor,Factor \n2026-03-07,Fair,1.4,1",
    "events.csv, Factor: there are two columns of this name; keep one",
  ),
  and(
    "a comma that was not put in quotes",
    "plans.csv",
    "2026-03-08,Gimlet,60,5",
    'plans.csv row 3: the row has more cells than there are headings ("5"); a text or number with a comma needs quotation marks',
  ),
  only(
    "a quotation mark that never closes",
    "events.csv",
    'date,event,factor\n2026-03-07,"Fair,1.4',
    'events.csv row 2: a quotation mark is not closed; close it, and write "" for one inside a text',
  ),

  // Cells
  and("an empty cell", "items.csv", "Vodka,,ml", "items.csv row 12, category: the cell is empty; fill it in"),
  and(
    "a base that is none",
    "items.csv",
    "Vodka,spirit,bottle",
    'items.csv row 12, base: "bottle" is none of ml, g, each',
  ),
  and(
    "a strength beyond pure",
    "items.csv",
    "Vodka,spirit,ml,140",
    'items.csv row 12, abv: "140" must lie between 0 and 100',
  ),
  and(
    "a yes that is none",
    "items.csv",
    "Vodka,spirit,ml,,,,,,,maybe",
    'items.csv row 12, in_house: "maybe" is neither yes nor no',
  ),
  and(
    "a pack of a negative size",
    "packs.csv",
    "Soda,can,-330,ml",
    'packs.csv row 9, amount: "-330" must be more than 0',
  ),
  and(
    "a number too large for any machine",
    "packs.csv",
    "Soda,can,1e309,ml",
    'packs.csv row 9, amount: "1e309" is too large to be meant',
  ),
  and(
    "a number too large for any bar",
    "packs.csv",
    "Soda,can,3e12,ml",
    'packs.csv row 9, amount: "3e12" is too large to be meant',
  ),
  and(
    "half a container in a case",
    "packs.csv",
    "Soda,can,330,ml,,1.5",
    'packs.csv row 9, per_case: "1.5" must be a whole number, 1 or more',
  ),
  and(
    "a unit that is none",
    "packs.csv",
    "Soda,can,1,pint",
    'packs.csv row 9, unit: "pint" is none of oz, ml, cl, dl, l, tsp, tbsp, cup, dash, barspoon, drop, splash, g, kg, lb, oz-wt, each, piece',
  ),
  and(
    "more decimals than the money has",
    "drinks.csv",
    "Daisy,12.505",
    'drinks.csv row 5, price: "12.505" has more than the 2 decimals of the venue\'s money',
  ),
  and(
    "a decimal comma among decimal points",
    "events.csv",
    '2026-03-08,Rain,"0,8"',
    'events.csv row 3, factor: "0,8" has a comma, where the sheet\'s other numbers have a decimal point',
  ),
  only(
    "a comma that may part thousands",
    "events.csv",
    'date,event,factor\n2026-03-07,Fair,"1,000"',
    'events.csv row 2, factor: "1,000" can be read two ways; write it without a mark between thousands',
  ),
  only(
    "a decimal point among decimal commas",
    "events.csv",
    "date;event;factor\n2026-03-07;Fair;1,4\n2026-03-08;Rain;1.000",
    'events.csv row 3, factor: "1.000" has a point, where the sheet\'s other numbers have a decimal comma',
  ),
  and(
    "a day that is not in the calendar",
    "events.csv",
    "2026-02-30,Leap,1",
    "events.csv row 3, date: there is no date 2026-02-30",
  ),
  and(
    "a date the other way round",
    "events.csv",
    "07/03/2026,Fair,1",
    'events.csv row 3, date: "07/03/2026" is no date; write it like 2026-03-02',
  ),
  and(
    "an hour that no clock shows",
    "transfers.csv",
    "2026-03-04 25:00,out,Lower bar,Dry gin,1,l",
    'transfers.csv row 3, at: "2026-03-04 25:00" is no time of day; write it like 2026-03-02 15:00',
  ),
  and(
    "a movement without an hour",
    "transfers.csv",
    "2026-03-04,out,Lower bar,Dry gin,1,l",
    'transfers.csv row 3, at: "2026-03-04" is no time; write it like 2026-03-02 15:00',
  ),
  and(
    "an order time that is none",
    "supplier-days.csv",
    "Green Barrow,Wed,noon,Thu,08:00",
    'supplier-days.csv row 4, order_by: "noon" is no time of day; write it like 17:30',
  ),
  and(
    "a weekday that is none",
    "supplier-days.csv",
    "Green Barrow,Market day,12:00,Thu,08:00",
    'supplier-days.csv row 4, order_day: "Market day" is no weekday; write Mon, Tue, Wed, Thu, Fri, Sat, Sun',
  ),

  // Names
  and(
    "an item listed twice",
    "items.csv",
    "dry  GIN,spirit,ml",
    'items.csv row 12, item: "dry GIN" is already in row 2; give each item one row',
  ),
  and(
    "a drink listed twice",
    "drinks.csv",
    "gimlet,12",
    'drinks.csv row 5, drink: "gimlet" is already in row 2; give each drink one row',
  ),
  and(
    "a supplier called all",
    "suppliers.csv",
    "All,,,",
    'suppliers.csv row 4, supplier: "All" has a meaning of its own in other sheets; choose another name',
  ),
  and(
    "an item misspelled",
    "transfers.csv",
    "2026-03-04 12:00,out,Lower bar,Dri gin,1,l",
    'transfers.csv row 3, item: no item "Dri gin"; did you mean "Dry gin"?',
  ),
  and(
    "a drink misspelled",
    "plans.csv",
    "2026-03-08,Gimlett,60",
    'plans.csv row 3, drink: no drink "Gimlett"; did you mean "Gimlet"?',
  ),
  and(
    "a supplier misspelled",
    "closures.csv",
    "Quay side Drinks,2026-03-01,2026-03-02",
    'closures.csv row 4, supplier: no supplier "Quay side Drinks"; did you mean "Quayside Drinks"?',
  ),
  and(
    "an alternative that is no item",
    "specs.csv",
    "Gimlet,2026-02-01,1,2,oz,Dry gin,Old Quay rum; Navy rum,",
    'specs.csv row 12, or_items: no item "Navy rum"',
  ),
  and(
    "a pack the item does not have",
    "deliveries.csv",
    "2026-03-06 10:40,Quayside Drinks,Q-119,Dry gin,700 ml,1,case,,",
    'deliveries.csv row 4, pack: no pack "700 ml" of "Dry gin"; it has "1 L"',
  ),
  and(
    "an ordered pack the item does not have",
    "orders.csv",
    "PO 13,2026-03-03,Quayside Drinks,Old Quay rum,50 cl,1,case,2026-03-05",
    'orders.csv row 3, pack: no pack "50 cl" of "Old Quay rum"; it has "700 ml" and "1 L"',
  ),

  // Packs, areas, suppliers
  and(
    "one pack twice",
    "packs.csv",
    "Soda,Bottle,250,ml,,24,Quayside Drinks,13,case,no,,",
    "packs.csv row 9, pack: this pack, from this supplier and day, is already in row 8; keep one",
  ),
  and(
    "a full bottle lighter than an empty one",
    "packs.csv",
    "Soda,can,330,ml,,,,,,,400,390",
    "packs.csv row 9, full_g: a full container cannot weigh 390 g and an empty one 400 g; weigh both again",
  ),
  and(
    "a volume of what is kept by weight",
    "packs.csv",
    "Sugar,jar,1,l",
    'packs.csv row 9, unit: "Sugar" is kept in g, which "l" does not lead to; write another unit or add density_g_per_ml (or brix, or the weights of an empty and a full container) in items.csv',
  ),
  and(
    "an item twice in one area",
    "areas.csv",
    "back bar,Dry gin,9",
    "areas.csv row 5, item: this item in this area is already in row 2; keep one",
  ),
  and(
    "a closure that ends before it begins",
    "closures.csv",
    "all,2026-05-02,2026-05-01",
    "closures.csv row 4, to: it ends on 2026-05-01, before it begins on 2026-05-02",
  ),

  // Specs, preps, cuts
  and(
    "a prep that is no item",
    "preps.csv",
    "Grenadine,2026-01-01,1,l",
    'preps.csv row 4, prep: no item "Grenadine"',
  ),
  and(
    "one version of a prep twice",
    "preps.csv",
    "Orgeat,2026-01-01,2,l",
    "preps.csv row 4, from: this prep from this day is already in row 3; keep one",
  ),
  and(
    "a spec of what is neither drink nor prep",
    "specs.csv",
    "Gimlit,2026-02-01,1,2,oz,Dry gin,,",
    'specs.csv row 12, makes: no drink or prep "Gimlit"; did you mean "Gimlet"?',
  ),
  and(
    "spec lines of an item that has no yield",
    "specs.csv",
    "Soda,2026-02-01,1,1,l,Sugar syrup,,",
    'specs.csv row 12, makes: "Soda" has spec lines but no row in preps.csv; add one with what they yield',
  ),
  and(
    "a line number given twice",
    "specs.csv",
    "Gimlet,2026-01-01,2,1,dash,Herb liqueur,,",
    "specs.csv row 12, line: this line of this version is already in row 3; keep one",
  ),
  and(
    "a line without an amount",
    "specs.csv",
    "Gimlet,2026-02-01,1,,oz,Dry gin,,",
    "specs.csv row 12, amount: the cell is empty; only a line with the unit top has no amount",
  ),
  and(
    "a line topped up by an amount",
    "specs.csv",
    "Gimlet,2026-02-01,1,30,top,Soda,,",
    "specs.csv row 12, amount: a line with the unit top has no amount; empty the cell or write another unit",
  ),
  and(
    "a prep that is topped up",
    "specs.csv",
    "Orgeat,2026-02-01,1,,top,Soda,,",
    "specs.csv row 12, unit: a prep's line needs an amount and a unit; only a drink can be topped up",
  ),
  and(
    "a weight of what has no known density",
    "specs.csv",
    "Gimlet,2026-02-01,1,20,g,Herb liqueur,,",
    'specs.csv row 12, unit: "Herb liqueur" is kept in ml, which "g" does not lead to; write another unit or add density_g_per_ml (or brix, or the weights of an empty and a full container) in items.csv',
  ),
  and(
    "a weight of pieces of no known weight",
    "specs.csv",
    "Gimlet,2026-02-01,1,20,g,Lime wheel,,",
    'specs.csv row 12, unit: "Lime wheel" is kept in each, which "g" does not lead to; write another unit or add piece_g in items.csv',
  ),
  and(
    "a prep made of itself",
    "specs.csv",
    "Orgeat,2026-02-01,1,1,l,Orgeat,,",
    'specs.csv row 12, item: a prep cannot be made of itself, but from 2026-02-01 "Orgeat" needs "Orgeat"',
  ),
  and(
    "a prep made of itself through another, from some day on",
    "specs.csv",
    "Sugar syrup,2026-04-01,1,100,ml,Orgeat,,",
    'specs.csv row 11, item: a prep cannot be made of itself, but from 2026-04-01 "Sugar syrup" needs "Orgeat", which needs "Sugar syrup"',
  ),
  and(
    "a fruit that is kept by volume",
    "cuts.csv",
    "Soda,,Herb liqueur,10,ml,flesh",
    'cuts.csv row 4, source: "Soda" is kept in ml; a fruit is cut by the piece, so keep it in each',
  ),
  and(
    "two fruits that give one thing",
    "cuts.csv",
    "Lime wheel,2026-02-01,Lime juice,10,ml,flesh",
    'cuts.csv row 4, source: "Lime juice" is already given by "Lime" (row 2); what a cut gives has one source',
  ),
  and(
    "spec lines of a juice that no row says the yield of",
    "specs.csv",
    "Lime juice,2026-01-01,1,20,ml,Sugar syrup,,",
    'specs.csv row 12, makes: "Lime juice" has spec lines but no row in preps.csv; add one with what they yield',
  ),
  and(
    "a cut without a part",
    "cuts.csv",
    "Lime,2026-02-01,Lime juice,10,ml,+",
    "cuts.csv row 4, parts: no part is named; write it like skin+flesh",
  ),

  // Sales
  and(
    "a ring name of nothing known",
    "ring-names.csv",
    "Gmlt,Gimlot,,,",
    'ring-names.csv row 5, sold_as: no item or drink "Gimlot"; did you mean "Gimlet"? (or write ignore)',
  ),
  and(
    "a ring name twice",
    "ring-names.csv",
    "gimlet xl,Gimlet,2,,",
    "ring-names.csv row 5, ring_name: this ring name is already in row 2; keep one",
  ),
  and(
    "an amount poured without its unit",
    "ring-names.csv",
    "Shot gin,Dry gin,,4,",
    "ring-names.csv row 5, unit: the cell is empty, though there is an amount; fill in both or neither",
  ),
  and(
    "a swap that does not say for what",
    "modifiers.csv",
    "with gin,swap,Old Quay rum,,,,",
    "modifiers.csv row 7, with: the cell is empty; the effect swap needs it",
  ),
  and(
    "an addition without an amount",
    "modifiers.csv",
    "sweet,add,Sugar syrup,,,,",
    "modifiers.csv row 7, amount: the cell is empty; the effect add needs it",
    "modifiers.csv row 7, unit: the cell is empty; the effect add needs it",
  ),
  and(
    "a factor that is missing",
    "modifiers.csv",
    "Treble,times,,,,,",
    "modifiers.csv row 7, factor: the cell is empty; the effect times needs it",
  ),
  and(
    "a swap for what cannot be measured so",
    "modifiers.csv",
    "with sugar,swap,Sugar syrup,Sugar,,,",
    'modifiers.csv row 7, with: "Sugar" is kept in g, which "oz" does not lead to; write another unit or add density_g_per_ml (or brix, or the weights of an empty and a full container) in items.csv',
  ),

  // Counts and movements
  and(
    "a count row with nothing in it",
    "counts.csv",
    "Week 9,2026-03-02 10:40,Cellar,Lime,box,,,,,,Ana",
    "counts.csv row 7, full: the row counts nothing; write how many are full (0 if there is none there), or an amount",
  ),
  and(
    "one shelf counted twice",
    "counts.csv",
    "week 9,2026-03-02 11:00,back bar,Dry gin,1 L,3,,,,,Ana",
    "counts.csv row 7, item: this item, in this area and pack of this count, is already in row 2; keep one",
  ),
  and(
    "one shelf counted twice, once without the name of its only pack",
    "counts.csv",
    "Week 9,2026-03-02 11:00,Cellar,Dry gin,1 L,3,,,,,Ana",
    "counts.csv row 7, item: this item, in this area and pack of this count, is already in row 3; keep one",
  ),
  and(
    "a bottle fuller than full",
    "counts.csv",
    "Week 9,2026-03-02 11:00,Well,Dry gin,1 L,3,1.2,,,,Ana",
    'counts.csv row 7, part: "1.2" must lie between 0 (empty) and 1 (full)',
  ),
  and(
    "a pack that is not said where there are two",
    "counts.csv",
    "Week 9,2026-03-02 11:00,Cellar,Old Quay rum,,3,,,,,Ana",
    'counts.csv row 7, pack: the cell is empty, but "Old Quay rum" comes as "700 ml" and "1 L"; write which was counted',
  ),
  and(
    "containers of what has no pack",
    "counts.csv",
    "Week 9,2026-03-02 11:00,Cellar,Orgeat,,3,,,,,Ana",
    'counts.csv row 7, pack: "Orgeat" has no pack that says what a container holds; add one, or write amount and unit',
  ),
  and(
    "an amount without its unit",
    "counts.csv",
    "Week 9,2026-03-02 11:00,Cellar,Orgeat,,,,,3,,Ana",
    "counts.csv row 7, unit: the cell is empty; an amount needs its unit",
  ),
  and(
    "a weighed bottle of no known density",
    "counts.csv",
    "Week 9,2026-03-02 11:00,Cellar,Herb liqueur,,,,900,,,Ana",
    'counts.csv row 7, gross_g: to weigh "Herb liqueur", its density must be known; add density_g_per_ml or brix in items.csv, or empty_g and full_g in packs.csv',
  ),
  and(
    "a batch of what is bought",
    "batches.csv",
    "2026-03-04 15:00,Soda,1,l,,",
    'batches.csv row 4, prep: "Soda" is no prep; add it to preps.csv, or to cuts.csv if it is cut or pressed',
  ),
  only(
    "inputs of batches that cannot be",
    "batch-inputs.csv",
    [
      "at,prep,batch,item,amount,unit",
      "2026-03-04 15:00,Sugar syrup,,Sugar syrup,1,l",
      "2026-03-04 15:01,Sugar syrup,,Soda,1,l",
      "2026-03-04 15:00,Sugar syrup,2,Soda,1,l",
      "2026-03-04 15:20,Lime juice,,Soda,1,l",
      "2026-03-04 15:20,Lime juice,1,soda,2,l",
      "2026-03-04 15:20,Lime juice,,Lime wheel,2,each",
      "2026-03-04 15:20,Lime juice,,Lime,1,l",
    ].join("\n"),
    "batch-inputs.csv row 2, item: a batch does not use what it makes",
    'batch-inputs.csv row 3, prep: no batch of "Sugar syrup" at that time; batches.csv must have it',
    'batch-inputs.csv row 4, prep: no batch of "Sugar syrup" at that time numbered 2; batches.csv must have it',
    "batch-inputs.csv row 6, item: what this batch used of this item is already in row 5; keep one",
    'batch-inputs.csv row 7, item: "Lime wheel" is made to order; write what was used to make it',
    'batch-inputs.csv row 8, unit: "Lime" is kept in each, which "l" does not lead to; write another unit or add density_g_per_ml (or brix, or the weights of an empty and a full container) in items.csv',
  ),
  and(
    "a lost drink that is not counted in serves",
    "losses.csv",
    "2026-03-04 23:10,spill,Gimlet,100,ml,,",
    'losses.csv row 4, unit: "Gimlet" is a drink; its unit is serve',
  ),
  and(
    "a lost item that is counted in serves",
    "losses.csv",
    "2026-03-04 23:10,spill,Soda,1,serve,,",
    'losses.csv row 4, unit: "Soda" is an item, not a drink; write its amount in another unit',
  ),
  and(
    "the loss of nothing known",
    "losses.csv",
    "2026-03-04 23:10,spill,Vase,1,each,,",
    'losses.csv row 4, what: no item "Vase", and no drink of that name',
  ),
  and(
    "a loss of a kind that is none",
    "losses.csv",
    "2026-03-04 23:10,theft,Soda,1,l,,",
    'losses.csv row 4, kind: "theft" is none of waste, spill, breakage, staff, tasting, comp, expired',
  ),
];
