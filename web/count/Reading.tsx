import { temperatureOfC } from "#engine/measure/area-temperature.ts";
import type { CountRow } from "#engine/stock/movement.ts";
import type { Venue } from "#engine/venue.ts";
import { formatAmount, formatPlain } from "../format.ts";
import { say } from "../texts/say.ts";
import { type Draft, foundOf } from "./entry.ts";
import { foundWords } from "./found-words.ts";
import { quantityOf } from "./reckon.ts";
import type { SheetItem } from "./sheet.ts";

type Props = { draft: Draft; item: SheetItem; area: string; venue: Venue; own: readonly CountRow[] };

/** The entry read back, so that a slip is seen before it is made. */
export function Reading({ draft, item, area, venue, own }: Props) {
  const found = foundOf(draft);
  if ("problem" in found) {
    const others = own.filter(({ pack }) => pack !== draft.pack);
    return others.length === 0 ? " " : say("count.soFar", { found: others.map(foundWords).join("; ") });
  }
  const total = quantityOf([{ ...found, area }], item, venue);
  const words = foundWords(found);
  if (found.amount !== null || total === null) return words;
  const isCold = total.quantity !== quantityOf([found], item, venue)?.quantity;
  const amount = formatAmount(total.quantity, item.base, venue);
  const temperature = formatPlain(temperatureOfC(venue, area) ?? 20);
  return `${words}: ${isCold ? say("count.at20", { amount, temperature }) : amount}`;
}
