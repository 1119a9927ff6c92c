import { baseAmount, type Catalogue, itemNamed } from "#engine/catalogue.ts";
import { glassKind, isUkMeasure, nearestUkMeasures } from "#engine/measure/glass-measures.ts";
import { serveLines } from "#engine/specs/serve.ts";
import { containerSize, packsInForce } from "#engine/stock/pack.ts";
import type { BusinessDate } from "#engine/time.ts";

/** A pour that the law of the venue's country knows no measure of. */
export type OddPour = { item: string; ml: number; kind: string; lawfulMl: number[] };

/** From this liquids on, a drink is a mixture without set measures. */
const MIXTURE_FROM = 3;
/** What is drawn from a container of this size or more is on draught. */
const KEG_ML = 5000;

/**
 * Pours of a drink, as its spec has it on a date, that are no lawful measure by the glass; empty outside the United
 * Kingdom, and for mixtures of three liquids or more.
 *
 * A gin and tonic of 30 ml of gin in GB → [{ item: "Gin", ml: 30, lawfulMl: [25, 35] }]; of 25 or 50 ml → [].
 */
export function oddPours(catalogue: Catalogue, drink: string, date: BusinessDate): OddPour[] {
  if (catalogue.venue.country !== "GB") return [];
  const lines = serveLines(catalogue, drink, date) ?? [];
  const liquids = new Set(lines.map(({ item }) => item).filter((item) => isLiquid(catalogue, item)));
  if (liquids.size >= MIXTURE_FROM) return [];
  return [...liquids].flatMap((item) => {
    const { name, category } = itemNamed(catalogue, item);
    const kind = glassKind({ name, category, isDraught: isDraught(catalogue, item, date) });
    const poured = lines.filter((line) => line.item === item);
    if (kind === undefined) return [];
    let ml = 0;
    for (const { amount, unit } of poured) {
      if (amount === null || unit === "top") return [];
      ml += baseAmount(catalogue, { item, amount, unit });
    }
    if (ml <= 0 || isUkMeasure(kind, ml)) return [];
    return [{ item: name, ml, kind, lawfulMl: nearestUkMeasures(kind, ml) }];
  });
}

function isLiquid(catalogue: Catalogue, item: string): boolean {
  return itemNamed(catalogue, item).base === "ml";
}

function isDraught(catalogue: Catalogue, item: string, date: BusinessDate): boolean {
  return packsInForce(catalogue, item, date).some((pack) => containerSize(catalogue, pack) >= KEG_ML);
}
