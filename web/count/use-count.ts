import { useQuery, useQueryClient } from "@tanstack/react-query";
import { useEffect, useMemo, useState } from "react";
import type { CountRow } from "#engine/stock/movement.ts";
import { choose, chosenFor, onlyChosen } from "./chosen.ts";
import { type Difference, differencesIn } from "./differences.ts";
import { rowsQuery, type ServedRow, type Sheet, type SheetArea, saveRows, sheetQuery } from "./sheet.ts";
import { placeOf, send, useWaiting, type WaitingEntry, whenSent } from "./waiting.ts";

export type CountState = {
  name: string;
  sheet: Sheet | undefined;
  error: unknown;
  /** What was found so far, here or on any other device. */
  rows: readonly ServedRow[];
  /** Where two people found different things. */
  differences: readonly Difference[];
  /** Whether only chosen items are counted. */
  isSpot: boolean;
  countAll: () => void;
  /** What stands where, whatever is counted. */
  wholeSheet: Sheet | undefined;
  waiting: readonly WaitingEntry[];
  renewSheet: () => void;
};

/** One count as this device sees it: the server's rows with those still waiting here laid over them. */
export function useCount(name: string, items: string | undefined): CountState {
  const queryClient = useQueryClient();
  const sheet = useQuery(sheetQuery(name));
  const { data: served } = useQuery(rowsQuery(name));
  const allWaiting = useWaiting();
  const waiting = useMemo(() => allWaiting.filter(({ row }) => row.count === name), [allWaiting, name]);
  useEffect(() => {
    whenSent((row, id) => {
      queryClient.setQueryData(rowsQuery(row.count).queryKey, (rows: ServedRow[] = []) =>
        laidOver(rows, [{ ...row, id }]),
      );
      // Whether someone else had counted there meanwhile, only the server knows.
      void queryClient.invalidateQueries({ queryKey: ["count-rows", row.count] });
      for (const key of ["week", "counts", "variance", "stock", "order"]) {
        void queryClient.invalidateQueries({ queryKey: [key], refetchType: "none" });
      }
    });
    void send();
  }, [queryClient]);
  useEffect(() => {
    if (served !== undefined) saveRows(name, served);
  }, [name, served]);
  const rows = useMemo(
    () =>
      laidOver(
        served ?? [],
        waiting.map(({ row }) => row),
      ),
    [served, waiting],
  );
  const [chosen, setChosen] = useState(() => {
    // The device remembers what a spot count is of, so that the links within it need not.
    if (items !== undefined) choose(name, items);
    return chosenFor(name);
  });
  const shown = useMemo(
    () => (sheet.data === undefined || chosen === null ? sheet.data : onlyChosen(sheet.data, chosen)),
    [sheet.data, chosen],
  );
  return {
    name,
    sheet: shown,
    differences: useMemo(() => differencesIn(rows), [rows]),
    isSpot: chosen !== null,
    countAll: () => {
      choose(name, null);
      setChosen(null);
    },
    wholeSheet: sheet.data,
    error: sheet.error,
    rows,
    waiting,
    renewSheet: () => void sheet.refetch(),
  };
}

function laidOver(rows: readonly ServedRow[], newer: readonly ServedRow[]): ServedRow[] {
  const replaced = new Set(newer.map(placeOf));
  return [...rows.filter((row) => !replaced.has(placeOf(row))), ...newer];
}

/** The rows of one item in one area. */
export function rowsOf(rows: readonly ServedRow[], place: { area: string; item: string }): ServedRow[] {
  return rows.filter(({ area, item }) => area === place.area && item === place.item);
}

/** The items of an area that this count has no row of, in shelf order. */
export function missingIn({ area, items }: SheetArea, rows: readonly CountRow[]): string[] {
  const found = new Set(rows.filter((row) => row.area === area).map(({ item }) => item));
  return items.map(({ item }) => item).filter((item) => !found.has(item));
}
