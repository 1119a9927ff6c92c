import type { QueryClient } from "@tanstack/react-query";
import { answerOf, server } from "../api.ts";
import { keepSheet, type Sheet, type SheetItem, sheetQuery } from "./sheet.ts";

/** A list with one of its things in another place. (["a", "b", "c"], 0, 2) → ["b", "c", "a"]. */
export function moved<Thing>(list: readonly Thing[], from: number, to: number): Thing[] {
  const thing = list[from];
  if (thing === undefined || to < 0 || to >= list.length) return [...list];
  const others = list.toSpliced(from, 1);
  return others.toSpliced(to, 0, thing);
}

/**
 * Writes an area's shelf order into the book. What the book has there and this device does not know of yet stays, at
 * the end. Throws ProblemError when refused or out of reach.
 */
export async function saveShelf(area: string, items: readonly string[]): Promise<void> {
  const { areas } = await answerOf(server.catalogue.$get());
  const others = areas.filter((shelf) => shelf.area === area && !items.includes(shelf.item));
  await answerOf(
    server.areas.$post({ json: { area, items: [...items, ...others.map(({ item }) => item)] } }),
  );
}

/** The sheet with an area's items as given; an area it does not have comes last. */
export function withArea(sheet: Sheet, area: string, items: SheetItem[]): Sheet {
  const isKnown = sheet.areas.some((one) => one.area === area);
  const areas = sheet.areas.map((one) => (one.area === area ? { ...one, items } : one));
  return { ...sheet, areas: isKnown ? areas : [...areas, { area, items }] };
}

/** Puts a changed sheet in place of the count's, here and for a reload; expected figures stay those of its beginning. */
export function replaceSheet(queryClient: QueryClient, count: string, sheet: Sheet): void {
  keepSheet(count, sheet);
  queryClient.setQueryData(sheetQuery(count).queryKey, sheet);
}
