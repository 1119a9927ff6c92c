import { newItem } from "#engine/stock/new-item.ts";
import { type Answer, answerOf, server } from "../api.ts";

export type PriceListAnswer = Answer<(typeof server)["price-lists"]["read"]["$post"]>;
export type PriceChange = PriceListAnswer["changes"][number];

/** What a person says about a list before and while it is compared. */
export type Asked = {
  file: File;
  supplier: string;
  from: string;
  pricePer: "case" | "container" | undefined;
  decimal: "." | "," | undefined;
  /** Items of the book chosen for lines, by row. */
  chosen: Record<string, string>;
};

/** Compares a list with the book; nothing is written. Throws ProblemError. */
export function readList({
  file,
  supplier,
  from,
  pricePer,
  decimal,
  chosen,
}: Asked): Promise<PriceListAnswer> {
  const answers = { ...(pricePer && { pricePer }), ...(decimal && { decimal }) };
  return answerOf(
    server["price-lists"].read.$post({
      form: { file, supplier: supplier.trim(), from, chosen: JSON.stringify(chosen), ...answers },
    }),
  );
}

/** Lines of one new item that a list has in several sizes stand together. */
export function takenOver(changes: readonly PriceChange[], categories: Record<string, string>) {
  const fresh = new Map<string, PriceChange>();
  for (const change of changes)
    if (change.kind === "item" && !fresh.has(change.item)) fresh.set(change.item, change);
  const items = [...fresh.values()].map(({ item, row, category, base, abv }) =>
    newItem({ name: item, category: (categories[row] ?? category).trim(), base, abv }),
  );
  return { items, packs: changes.map(({ pack }) => pack) };
}

/** Whether a line can be taken over as it stands: a new item needs its category. */
export function isReady({ kind, row, category }: PriceChange, categories: Record<string, string>): boolean {
  return kind !== "item" || (categories[row] ?? category).trim() !== "";
}

/** "+4 %", "−2 %"; nothing for what is new. */
export function changeShare({ before, after }: Pick<PriceChange, "before" | "after">): number | null {
  return before === null || before === 0 ? null : after / before - 1;
}
