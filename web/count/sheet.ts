import { queryOptions } from "@tanstack/react-query";
import type { BaseUnit, Unit } from "#engine/measure/units.ts";
import type { CountRow } from "#engine/stock/movement.ts";
import { answerOf, server } from "../api.ts";
import { keep, kept } from "../kept.ts";

export type SheetPack = {
  pack: string;
  size: number;
  emptyG: number | null;
  fullG: number | null;
  /** Empty when none is known; a sheet kept from before this was asked has none. */
  gtin?: string;
};

export type SheetItem = {
  item: string;
  base: BaseUnit;
  category: string;
  packs: SheetPack[];
  /** By cold area: how much of it at 20 °C one ml is that is seen there. A sheet kept from before this was asked has none. */
  atCold?: Record<string, number>;
  densityGPerMl: number | null;
  pieceG: number | null;
  /** In how many areas it stands. */
  areas: number;
  /**
   * The most of it that was ever counted in each of its areas, in base units; null where it was counted too seldom to say.
   * A sheet kept from before this was asked has none.
   */
  mostSeen?: Record<string, number | null>;
  lastCount: (Pick<CountRow, "full" | "parts" | "grossG" | "amount" | "at"> & { unit: Unit | null }) | null;
  /** In base units, of all its areas together. */
  expectedQty: number | null;
  expectedSd: number | null;
};

export type SheetArea = { area: string; items: SheetItem[] };

/** What stands where, in shelf order; the expected figures are of the moment `at`. */
export type Sheet = { at: string | null; areas: SheetArea[] };

const KEY = "ullage-count-sheet";

type Saved = { count: string; sheet: Sheet };

/**
 * The sheet as it was when this count began. It stays as it is for as long as the count lasts: figures reckoned anew
 * would hold what has just been counted. It is kept on the device for places without signal.
 */
export function sheetQuery(count: string) {
  return queryOptions({
    queryKey: ["count-sheet", count],
    queryFn: async (): Promise<Sheet> => {
      const sheet = await answerOf(server.counts.sheet.$get());
      keepSheet(count, sheet);
      return sheet;
    },
    initialData: () => savedSheet(count),
    networkMode: "always",
    staleTime: Number.POSITIVE_INFINITY,
  });
}

/** Keeps a changed sheet, as when an item was found where the book has none. */
export function keepSheet(count: string, sheet: Sheet): void {
  keep(KEY, { count, sheet } satisfies Saved);
}

function savedSheet(count: string): Sheet | undefined {
  const saved = kept<Saved>(KEY);
  return saved?.count === count ? saved.sheet : undefined;
}

const ROWS_KEY = "ullage-count-rows";

/** A row as the server holds it; `apart` are other findings there that nobody has chosen between yet. */
export type ServedRow = CountRow & { id?: number; apart?: CountRow[] };

/** Keeps on the device what the server was last known to hold of a count, for a reload without signal. */
export function saveRows(count: string, rows: readonly ServedRow[]): void {
  keep(ROWS_KEY, { count, rows });
}

function savedRows(count: string): ServedRow[] | undefined {
  const saved = kept<{ count: string; rows: ServedRow[] }>(ROWS_KEY);
  return saved?.count === count ? saved.rows : undefined;
}

/** What the server holds of a count. */
export function rowsQuery(count: string) {
  return queryOptions({
    queryKey: ["count-rows", count],
    queryFn: async (): Promise<ServedRow[]> =>
      answerOf(server.counts.rows[":name"].$get({ param: { name: count } })),
    initialData: () => savedRows(count),
    initialDataUpdatedAt: 0,
    networkMode: "always",
    // Someone else may be counting another area.
    refetchInterval: 20_000,
  });
}
