import type { Catalogue, Day, SimLine } from "./catalogue.ts";
import { ringsOf } from "./mean-use.ts";
import { type Cell, type Row, weekdayName } from "./state.ts";

const yesNo = (value: boolean | undefined) => (value === undefined ? "" : value ? "yes" : "no");

export function itemRows({ items }: Catalogue): Row[] {
  return items.map((item) => ({
    item: item.name,
    category: item.category,
    base: item.base,
    abv: item.abv ?? "",
    brix: item.brix ?? "",
    density_g_per_ml: item.densityGPerMl ?? "",
    piece_g: item.pieceG ?? "",
    shelf_life_days: item.shelfLifeDays ?? "",
    allergens: item.allergens ?? "",
    in_house: yesNo(item.inHouse),
    stocked: yesNo(item.stocked),
    pour: item.pour ?? "",
    service_level: item.serviceLevel ?? "",
    note: item.note ?? "",
  }));
}

export function packRows({ items }: Catalogue, date: (day: Day) => string): Row[] {
  return items.flatMap((item) =>
    item.packs.flatMap((pack) => {
      const row: Row = {
        item: item.name,
        pack: pack.pack,
        amount: pack.amount,
        unit: pack.unit,
        from: "",
        per_case: pack.perCase,
        supplier: pack.supplier,
        code: pack.code,
        price: pack.price.toFixed(2),
        price_per: pack.pricePer,
        split: yesNo(pack.split),
        empty_g: pack.emptyG ?? "",
        full_g: pack.fullG ?? "",
      };
      const later = pack.laterPrice;
      return later === undefined
        ? [row]
        : [row, { ...row, from: date(later.fromDay), price: later.price.toFixed(2) }];
    }),
  );
}

export function supplierDayRows({ suppliers }: Catalogue): Row[] {
  return suppliers.flatMap(({ supplier, days }) =>
    days.map(({ orderDay, orderBy, deliveryDay, deliveryAt }) => ({
      supplier,
      order_day: weekdayName(orderDay),
      order_by: orderBy,
      delivery_day: weekdayName(deliveryDay),
      delivery_at: deliveryAt,
    })),
  );
}

export function areaRows({ areas, items }: Catalogue): Row[] {
  return areas.flatMap((area) =>
    items
      .filter((item) => item.areas.includes(area))
      .map(({ name }, index) => ({ area, item: name, shelf: (index + 1) * 10 })),
  );
}

export function drinkRows({ drinks }: Catalogue, date: (day: Day | undefined) => string): Row[] {
  return drinks.map((drink) => ({
    drink: drink.name,
    price: drink.price.toFixed(2),
    glass: drink.glass,
    glass_ml: drink.glassMl,
    ice: drink.ice,
    technique: drink.technique,
    garnish_note: drink.garnishNote ?? "",
    method: drink.method ?? "",
    allergens: drink.allergens ?? "",
    on_menu_from: date(drink.onMenuFromDay),
    on_menu_until: date(drink.onMenuUntilDay),
  }));
}

export function prepRows({ preps }: Catalogue, date: (day: Day) => string): Row[] {
  return preps
    .filter(({ inSheet }) => inSheet)
    .map((prep) => ({
      prep: prep.name,
      from: date(prep.versions[0]?.fromDay ?? -90),
      yield: prep.yieldMl,
      unit: "ml",
      batch_step: prep.stepMl,
      vessel_max: prep.vesselMaxMl,
      active_minutes: prep.activeMinutes,
      standing_hours: prep.standingHours,
      shelf_life_days: prep.shelfLifeDays,
      method: prep.method,
    }));
}

export function specRows({ drinks, preps }: Catalogue, date: (day: Day) => string): Row[] {
  return [...drinks, ...preps].flatMap(({ name, versions }) =>
    versions.flatMap(({ fromDay, lines }) =>
      lines.map((line, index) => ({
        makes: name,
        from: date(fromDay),
        line: index + 1,
        amount: writtenAmount(line),
        unit: line.unit,
        item: line.item,
        or_items: line.orItems.join(";"),
        note: "",
      })),
    ),
  );
}

const FRACTIONS: Record<string, string> = { "0.25": "1/4", "0.5": "1/2", "0.75": "3/4" };

/** Ounces the way a bar writes them: 1.75 oz is "1 3/4". */
function writtenAmount({ amount, unit }: SimLine): string | number {
  if (amount === null) return "";
  const fraction = FRACTIONS[String(amount % 1)];
  if (unit !== "oz" || fraction === undefined) return amount;
  return amount < 1 ? fraction : `${Math.floor(amount)} ${fraction}`;
}

export function cutRows({ cuts }: Catalogue, date: (day: Day | undefined) => string): Row[] {
  return cuts.map(({ source, fromDay, gives, perPiece, unit, parts }) => ({
    source,
    from: date(fromDay),
    gives,
    per_piece: perPiece,
    unit,
    parts: parts.join("+"),
  }));
}

export function ringRows({ drinks, pours, ignored }: Catalogue): Row[] {
  const row = (ring_name: string, sold_as: string, serves: Cell, amount: Cell, unit: string): Row => ({
    ring_name,
    sold_as,
    serves,
    amount,
    unit,
  });
  return [
    ...drinks.flatMap((drink) =>
      ringsOf(drink)
        .filter(({ name }) => name !== drink.name)
        .map(({ name, serves }) => row(name, drink.name, serves === 1 ? "" : serves, "", "")),
    ),
    ...pours
      .filter(({ ring, item, amount }) => ring !== item || amount !== undefined)
      .map(({ ring, item, amount = "", unit = "" }) => row(ring, item, "", amount, unit)),
    ...(ignored === undefined ? [] : [row(ignored.ring, "ignore", "", "", "")]),
  ];
}
