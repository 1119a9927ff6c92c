import type { Catalogue } from "#engine/catalogue.ts";
import { containerPrice } from "#engine/costing/pack-price.ts";
import { gtin14 } from "#engine/measure/gtin.ts";
import { unitFactor } from "#engine/measure/unit-factor.ts";
import type { BaseUnit } from "#engine/measure/units.ts";
import { foldName } from "#engine/name.ts";
import { likelyMeanings } from "#engine/sales/likely-meaning.ts";
import { knownCategory } from "#engine/stock/category.ts";
import type { Pack } from "#engine/stock/item.ts";
import { containerSize, packsInForce } from "#engine/stock/pack.ts";
import type { PriceLine } from "#engine/stock/price-list/read.ts";
import type { BusinessDate } from "#engine/time.ts";

/**
 * What a line of a price list would change: nothing, the price of a pack the supplier has, a pack that is new of an item in the
 * book, or an item that is new.
 */
export type PriceKind = "same" | "price" | "pack" | "item";

export type PriceChange = {
  row: number;
  kind: PriceKind;
  product: string;
  /** The item of the book; for a new item the name that the list gives. */
  item: string;
  base: BaseUnit;
  category: string;
  abv: number | null;
  /** The row of packs.csv that would be written. */
  pack: Pack;
  /** Price of one container before and after, in major units; before is null where the supplier had none. */
  before: number | null;
  after: number;
  /** For a new item: items of the book with a name alike, best first. Taken only with a person's yes. */
  alike: string[];
};

type Offer = { supplier: string; from: BusinessDate };

/** How near two sizes are the same pack: 700 ml and 23.7 oz are. */
const SAME_SIZE = 0.005;
const SAME_PRICE = 0.00005;

/**
 * Compares the lines of a supplier's list with the book: by barcode, else by the supplier's own code, else by name.
 * Lines whose price is of a container or case unknown are of the container where a case holds one.
 */
export function comparePriceList(
  catalogue: Catalogue,
  lines: readonly PriceLine[],
  offer: Offer,
): PriceChange[] {
  return lines.map((line) => changeOf(catalogue, line, { ...offer, item: itemOf(catalogue, line, offer) }));
}

/** One line as of an item the person chose for it, or as a new one. */
export function changeOf(
  catalogue: Catalogue,
  line: PriceLine,
  { item, supplier, from }: Offer & { item: string | undefined },
): PriceChange {
  const { base, factor } = unitFactor(line.unit, catalogue.measures);
  const known = item === undefined ? undefined : catalogue.items.get(item);
  const size = line.amount * factor;
  const sameSize = (pack: Pack) => Math.abs(containerSize(catalogue, pack) / size - 1) < SAME_SIZE;
  const packs =
    known === undefined || known.base !== base
      ? []
      : packsInForce(catalogue, known.name, from).filter(sameSize);
  const own = packs.find((pack) => pack.supplier !== null && foldName(pack.supplier) === foldName(supplier));
  const model = own ?? packs[0];
  const pack: Pack = {
    ...(model ?? BARE),
    item: known?.name ?? line.product,
    pack: model?.pack ?? packName(line),
    amount: model?.amount ?? line.amount,
    unit: model?.unit ?? line.unit,
    from,
    perCase: line.perCase ?? model?.perCase ?? 1,
    supplier,
    code: line.code || (own?.code ?? ""),
    gtin: line.gtin || (model?.gtin ?? ""),
    price: line.price,
    pricePer: line.pricePer ?? "container",
  };
  const before = own === undefined ? null : containerPrice(own);
  const after = containerPrice(pack) ?? 0;
  const isSame = before !== null && Math.abs(before - after) < SAME_PRICE && own?.perCase === pack.perCase;
  const kind = known === undefined ? "item" : own === undefined ? "pack" : isSame ? "same" : "price";
  return {
    row: line.row,
    kind,
    product: line.product,
    item: pack.item,
    base,
    category: known?.category ?? knownCategory(line.category, categoriesOf(catalogue)),
    abv: line.abv,
    pack,
    before,
    after,
    alike: known === undefined ? alikeTo(catalogue, line.product) : [],
  };
}

const BARE = { split: true, emptyG: null, fullG: null, depositMinor: null } satisfies Partial<Pack>;

function itemOf(catalogue: Catalogue, line: PriceLine, { supplier }: Offer): string | undefined {
  const all = [...catalogue.packs.values()].flat();
  const barcode = line.gtin === "" ? undefined : gtin14(line.gtin);
  const byBarcode =
    barcode === undefined ? undefined : all.find(({ gtin }) => gtin !== "" && gtin14(gtin) === barcode);
  const byCode = all.find(
    (pack) =>
      line.code !== "" &&
      pack.code === line.code &&
      pack.supplier !== null &&
      foldName(pack.supplier) === foldName(supplier),
  );
  const named = (byBarcode ?? byCode)?.item;
  if (named !== undefined) return named;
  const name = foldName(line.product);
  return [...catalogue.items.keys()].find((item) => foldName(item) === name);
}

function categoriesOf(catalogue: Catalogue): Set<string> {
  return new Set([...catalogue.items.values()].map(({ category }) => category));
}

function alikeTo(catalogue: Catalogue, product: string): string[] {
  return likelyMeanings(catalogue, product)
    .filter(({ kind }) => kind === "item")
    .map(({ name }) => name);
}

/** "700 ml", "1 L", "54 each": how a pack is called by its size. */
function packName({ amount, unit }: PriceLine): string {
  return `${amount} ${unit === "l" ? "L" : unit}`;
}
