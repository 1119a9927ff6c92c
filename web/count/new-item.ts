import type { BaseUnit } from "#engine/measure/units.ts";
import { newItem } from "#engine/stock/new-item.ts";
import { answerOf, server } from "../api.ts";
import { say } from "../texts/say.ts";
import type { SheetItem } from "./sheet.ts";

type New = { name: string; category: string; base: BaseUnit; size: number | null };

function packName({ size, base }: { size: number; base: BaseUnit }): string {
  return `${size} ${base === "each" ? say("count.pieces") : base}`;
}

/** A new item as the sheet lists it; with a null size it has no pack and is counted as an amount. */
export function blankItem({ name, category, base, size }: New): SheetItem {
  const packs =
    size === null
      ? []
      : [{ pack: packName({ size, base }), size, emptyG: null, fullG: null, depositMinor: null, gtin: "" }];
  return {
    item: name,
    base,
    category,
    packs,
    densityGPerMl: null,
    pieceG: null,
    areas: 0,
    lastCount: null,
    expectedQty: null,
    expectedSd: null,
  };
}

/** Adds an item and its one pack to the book, with a note of how it came; price, supplier and strength can follow. Throws ProblemError. */
export async function addNewItem(
  { name, category, base, size }: New & { size: number },
  note: string,
): Promise<void> {
  await answerOf(
    server.items.$post({
      json: newItem({ name, category, base, note }),
    }),
  );
  await answerOf(
    server.packs.$post({
      json: {
        item: name,
        pack: packName({ size, base }),
        amount: size,
        unit: base,
        from: null,
        perCase: 1,
        supplier: null,
        code: "",
        gtin: "",
        price: null,
        pricePer: "container",
        split: true,
        emptyG: null,
        fullG: null,
        depositMinor: null,
      },
    }),
  );
}
