import type { Unit } from "#engine/measure/units.ts";
import type { CountRow } from "#engine/stock/movement.ts";
import { type Draft, draftFor, foundOf } from "./entry.ts";
import type { Sheet, SheetItem } from "./sheet.ts";

/** One line of a printed count sheet: an item in an area, by pack; null where it is counted as an amount. */
export type PaperLine = { number: number; area: string; item: SheetItem; pack: string | null; unit: Unit };

/** The lines of a sheet in shelf order, numbered through, so that paper and keyboard walk the same way. */
export function paperLines(sheet: Sheet, show: Unit): PaperLine[] {
  const lines = sheet.areas.flatMap(({ area, items }) =>
    items.flatMap((item) => {
      const { way, unit } = draftFor(item, show, undefined);
      const packs = way === "amount" ? [null] : item.packs.map(({ pack }) => pack);
      return packs.map((pack) => ({ area, item, pack, unit }));
    }),
  );
  return lines.map((line, index) => ({ number: index + 1, ...line }));
}

/** The line's draft with what was typed for it. */
function draftOf({ item, pack, unit }: PaperLine, typed: string): Draft {
  const draft = draftFor(item, unit, undefined);
  if (pack === null) return { ...draft, way: "amount", pack, unit, amount: typed };
  return { ...draft, way: "eye", pack, containers: typed };
}

/** What a line of paper says was found: "3.7.5" by containers, "1200" as an amount; or what is wrong with it. */
export function paperFound(line: PaperLine, typed: string): ReturnType<typeof foundOf> {
  return foundOf(draftOf(line, typed));
}

/** What stands in a line already, as it would be typed; empty when it was not counted. */
export function paperTyped(line: PaperLine, rows: readonly CountRow[]): string {
  const row = rows.find(
    ({ area, item, pack }) => area === line.area && item === line.item.item && pack === line.pack,
  );
  if (row === undefined) return "";
  const draft = draftFor(line.item, line.unit, row);
  return line.pack === null ? draft.amount : draft.containers;
}
