import { gtin14 } from "#engine/measure/gtin.ts";
import type { Sheet, SheetItem } from "./sheet.ts";

/** An item where it stands. */
export type FoundPlace = { area: string; item: SheetItem };

/** Whether what was typed is a barcode's number, right in its check digit; "wrong" when it looks like one and is not. */
export function asBarcode(typed: string): string | "wrong" | undefined {
  const digits = typed.replace(/[\s-]/g, "");
  if (!/^\d{8,14}$/.test(digits)) return undefined;
  return gtin14(digits) ?? "wrong";
}

/** Where what was typed stands, by part of its name or the whole of its barcode; the area one is in comes first. */
export function placesOf(sheet: Sheet, typed: string, here?: string): FoundPlace[] {
  const barcode = asBarcode(typed);
  const part = typed.trim().toLocaleLowerCase();
  const isIt = ({ item, packs }: SheetItem) =>
    barcode === undefined
      ? item.toLocaleLowerCase().includes(part)
      : packs.some(({ gtin = "" }) => gtin !== "" && gtin14(gtin) === barcode);
  const areas = [...sheet.areas].sort((a, b) => Number(b.area === here) - Number(a.area === here));
  return areas.flatMap(({ area, items }) => items.filter(isIt).map((item) => ({ area, item })));
}
