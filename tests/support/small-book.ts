/** The book of a small invented bar, sheet by sheet, as its people would write it. */
const SHEETS: Record<string, string> = {
  "venue.json": `{
  "name": "The Copper Heron", "currency": "EUR", "timeZone": "Europe/Lisbon", "dayEnds": "04:00", "oz": "us"
}`,
  "items.csv": `item,category,base,abv,brix,density_g_per_ml,piece_g,shelf_life_days,allergens,in_house,stocked,pour
Dry gin,spirit,ml,40,,,,,,,,
Old Quay rum,spirit,ml,42.5,,,,,,,,
Herb liqueur,liqueur,ml,30,,,,,,,,
Lime,fruit,each,,,,80,14,,,,
Lime juice,juice,ml,,,1.03,,1,,yes,,
Lime wheel,garnish,each,,,,,,,yes,no,
Sugar,dry,g,,,,,,,,,
Sugar syrup,prep,ml,,50,,,21,,yes,,
Orgeat,prep,ml,,60,,,21,almond;sulphites,yes,,
Soda,mixer,ml,,,1,,,,,,`,
  "packs.csv": `item,pack,amount,unit,from,per_case,supplier,price,price_per,split,empty_g,full_g
Dry gin,1 L,1,l,,6,Quayside Drinks,21.00,container,yes,520,1468
Old Quay rum,700 ml,70,cl,,6,Quayside Drinks,112.80,case,no,,
Old Quay rum,1 L,1,l,,6,Quayside Drinks,25.10,container,no,,
Herb liqueur,500 ml,50,cl,,6,Quayside Drinks,19.00,container,yes,410,
Lime,box,54,each,,1,Green Barrow,11.90,,,,
Sugar,bag,1,kg,,10,Green Barrow,1.10,container,yes,,
Soda,bottle,200,ml,,24,Quayside Drinks,12.00,case,no,,`,
  "suppliers.csv": `supplier,email,minimum_value,minimum_cases
Quayside Drinks,orders@quayside.example,150,
Green Barrow,,,`,
  "supplier-days.csv": `supplier,order_day,order_by,delivery_day,delivery_at
Quayside Drinks,Tue,16:00,Thu,10:30
Green Barrow,Mon,22:00,Tue,7:15`,
  "closures.csv": `supplier,from,to
all,2026-12-25,2026-12-26
Green Barrow,2026-08-10,2026-08-16`,
  "areas.csv": `area,item,shelf
Back bar,Dry gin,1
Back bar,Old Quay rum,2
Cellar,Dry gin,1`,
  "drinks.csv": `drink,price,glass,glass_ml,ice,technique
Gimlet,11.50,coupe,160,none,shaken
Rum Sour,12,rocks,300,cubed,shaken
Gin Rickey,10.5,highball,330,cubed,built`,
  "preps.csv": `prep,from,yield,unit,batch_step,active_minutes
Sugar syrup,2026-01-01,800,ml,800,10
Orgeat,2026-01-01,1,l,1,40`,
  "specs.csv": `makes,from,line,amount,unit,item,or_items,note
Gimlet,2026-01-01,1,2,oz,Dry gin,,
Gimlet,2026-01-01,2,3/4,oz,Lime juice,,
Gimlet,2026-01-01,3,¾,oz,Sugar syrup,,
Rum Sour,2026-01-01,1,2,oz,Old Quay rum,Dry gin;Herb liqueur,
Rum Sour,2026-01-01,2,1 1/2,cl,Orgeat,,
Gin Rickey,2026-01-01,1,50,ml,Dry gin,,
Gin Rickey,2026-01-01,2,1,each,Lime wheel,,
Gin Rickey,2026-01-01,3,,top,Soda,,
Sugar syrup,2026-01-01,1,500,g,Sugar,,
Orgeat,2026-01-01,1,500,ml,Sugar syrup,,`,
  "cuts.csv": `source,from,gives,per_piece,unit,parts
Lime,,Lime juice,28,ml,flesh
Lime,,Lime wheel,7,each,skin+flesh`,
  "ring-names.csv": `ring_name,sold_as,serves,amount,unit
GIMLET XL,Gimlet,1.5,,
Shot rum,Old Quay rum,,4,cl
Cloakroom,ignore,,,`,
  "modifiers.csv": `modifier,effect,item,with,amount,unit,factor
with rum,swap,Dry gin,Old Quay rum,,,
extra lime,add,Lime wheel,,1,each,
no syrup,remove,Sugar syrup,,,,
Double,times,,,,,2
straw,none,,,,,`,
  "counts.csv": `count,at,area,item,pack,full,part,gross_g,amount,unit,by
Week 9,2026-03-02 10:00,Back bar,Dry gin,1 L,2,0.4;0.9,,,,Ana
Week 9,2026-03-02 10:20,Cellar,Dry gin,,6,,,,,Ana
Week 9,2026-03-02 10:02,Back bar,Old Quay rum,700 ml,1,,,,,Ana
Week 9,2026-03-02 10:30,Cellar,Sugar syrup,,,,,1.4,l,Ana
Week 9,2026-03-02 10:31,Back bar,Soda,,0,,,,,Ana`,
  "deliveries.csv": `at,supplier,invoice,item,pack,quantity,of,price_total,by
2026-03-05 10:40,Quayside Drinks,Q-118,Dry gin,1 L,1,case,126.00,Rui
2026-03-05 10:40,Quayside Drinks,Q-118,Soda,bottle,2,case,24.00,Rui`,
  "batches.csv": `at,prep,made,unit,by,note
2026-03-04 15:00,Sugar syrup,1.6,l,Rui,
2026-03-04 15:20,Lime juice,700,ml,Rui,`,
  "losses.csv": `at,kind,what,amount,unit,by,note
2026-03-04 23:10,comp,Gimlet,2,serve,Ana,birthday
2026-03-05 01:10,breakage,Old Quay rum,700,ml,Ana,"slipped, at the ""well"""`,
  "transfers.csv": `at,direction,place,item,amount,unit
2026-03-04 12:00,out,Lower bar,Dry gin,1,l`,
  "events.csv": `date,event,factor
2026-03-07,Harbour fair,1.4`,
  "plans.csv": `date,drink,serves
2026-03-07,Gimlet,60`,
  "orders.csv": `order,placed,supplier,item,pack,quantity,of,expected
PO 12,2026-03-03,Quayside Drinks,Dry gin,1 L,1,case,2026-03-05`,
  "sales-shapes.json": `[{ "files": "till-*.csv", "dateOrder": "dmy", "columns": { "item": "Article" } }]`,
};

/** The files of the small bar, with some put in place of its own; null takes a file out. */
export function smallBook(instead: Record<string, string | null> = {}): Map<string, string> {
  const files = Object.entries({ ...SHEETS, ...instead });
  return new Map(files.flatMap(([file, text]) => (text === null ? [] : [[file, text] as const])));
}

/** The small bar with more rows at the end of one sheet. */
export function smallBookAnd(file: string, ...rows: string[]): Map<string, string> {
  return smallBook({ [file]: [SHEETS[file], ...rows].join("\n") });
}

/** The small bar with one text put in place of another in a sheet. Throws when the sheet does not hold it. */
export function smallBookWith(file: string, text: string, instead: string): Map<string, string> {
  const sheet = SHEETS[file] ?? "";
  if (!sheet.includes(text)) throw new Error(`${file} does not hold "${text}".`);
  return smallBook({ [file]: sheet.replace(text, instead) });
}
