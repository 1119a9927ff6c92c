import { gtin14 } from "#engine/measure/gtin.ts";
import { foldHeading } from "#engine/sales/read/headings.ts";
import { readPackWords } from "#engine/stock/price-list/pack-words.ts";

export const PRICE_ROLES = [
  "product",
  "size",
  "perCase",
  "price",
  "casePrice",
  "containerPrice",
  "code",
  "gtin",
  "category",
  "abv",
] as const;
export type PriceRole = (typeof PRICE_ROLES)[number];

/** Which column holds what; a role without a column is left out. */
export type PriceColumns = Partial<Record<PriceRole, number>>;

/** Headings of price lists by role, in English, German, French, Spanish, Italian and Portuguese; folded (common practice). */
const WORDS: Record<PriceRole, RegExp> = {
  gtin: /\b(?:gtin|ean|upc|barcode|bar code|strichcode|code barres?|codigo de barras|codice a barre)\b/,
  casePrice:
    /\b(?:case|carton|box|outer|karton|kiste|caisse|caja|cassa|caixa)\b.*\b(?:price|cost|preis|prix|precio|prezzo|preco)\b|\b(?:price|cost|preis|prix|precio|prezzo|preco)\b.*\b(?:case|carton|box|outer|karton|kiste|caisse|caja|cassa|caixa)\b/,
  containerPrice:
    /\b(?:bottle|unit|each|single|item|btl|flasche|einzel|stuck|bouteille|unitaire|botella|unitario|bottiglia|garrafa)\b.*\b(?:price|cost|preis|prix|precio|prezzo|preco)\b|\b(?:price|cost|preis|prix|precio|prezzo|preco)\b.*\b(?:bottle|unit|each|single|btl|flasche|stuck|bouteille|unitaire|botella|unitario|bottiglia|garrafa)\b|^einzelpreis$|^stuckpreis$/,
  perCase:
    /\b(?:per case|case qty|case quantity|case size|units per|pack qty|qty per|inner|in case|per carton|ve|inhalt karton|colisage|par carton|por caja|per cassa|por caixa|pack of)\b/,
  price: /\b(?:price|cost|net|preis|prix|tarif|precio|prezzo|preco|listino)\b/,
  size: /\b(?:size|volume|vol|pack|format|content|contents|capacity|gebinde|inhalt|grosse|contenance|conditionnement|tamano|formato|envase|contenuto|capacita|tamanho)\b/,
  code: /\b(?:code|sku|item no|item number|article no|art no|art nr|artikelnr|artikelnummer|ref|reference|product id|codigo|codice|referencia)\b/,
  abv: /\b(?:abv|alc|alcohol|strength|alkohol|degre|grados|grado|teor)\b/,
  category:
    /\b(?:category|type|group|family|class|section|warengruppe|kategorie|famille|categorie|categoria|famiglia)\b/,
  product:
    /\b(?:product|item|description|name|article|wine|spirit|brand|artikel|bezeichnung|produkt|designation|libelle|produit|producto|descripcion|articulo|prodotto|descrizione|articolo|produto|descricao)\b/,
};

/** The role of each column by its heading, what is most particular first; each role once, each column once. */
export function columnsByHeading(headings: readonly string[]): PriceColumns {
  const folded = headings.map(foldHeading);
  const taken = new Set<number>();
  const found: PriceColumns = {};
  for (const role of Object.keys(WORDS) as PriceRole[]) {
    const column = folded.findIndex((heading, at) => !taken.has(at) && WORDS[role].test(heading));
    if (column < 0) continue;
    found[role] = column;
    taken.add(column);
  }
  return found;
}

/** As by headings, and where those say nothing, by what stands in the columns: barcodes, sizes. */
export function findPriceColumns(
  headings: readonly string[],
  rows: readonly (readonly string[])[],
): PriceColumns {
  const found = columnsByHeading(headings);
  const free = () => headings.map((_, at) => at).filter((at) => !Object.values(found).includes(at));
  const share = (column: number, isOne: (cell: string) => boolean) => {
    const cells = rows.map((row) => row[column]?.trim() ?? "").filter((cell) => cell !== "");
    return cells.length === 0 ? 0 : cells.filter(isOne).length / cells.length;
  };
  const byContent = (role: PriceRole, isOne: (cell: string) => boolean) => {
    if (found[role] !== undefined) return;
    const column = free().find((at) => share(at, isOne) > 0.8);
    if (column !== undefined) found[role] = column;
  };
  byContent("gtin", (cell) => cell.length >= 12 && gtin14(cell) !== undefined);
  byContent("size", (cell) => readPackWords(cell)?.rest === "");
  return found;
}
