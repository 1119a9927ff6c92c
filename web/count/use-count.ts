import { useQuery, useQueryClient } from "@tanstack/react-query";
import { useEffect, useMemo } from "react";
import type { CountRow } from "#engine/stock/movement.ts";
import { rowsQuery, type Sheet, type SheetArea, saveRows, sheetQuery } from "./sheet.ts";
import { placeOf, send, useWaiting, type WaitingEntry, whenSent } from "./waiting.ts";

export type CountState = {
  name: string;
  sheet: Sheet | undefined;
  error: unknown;
  /** What was found so far, here or on any other device. */
  rows: readonly CountRow[];
  waiting: readonly WaitingEntry[];
  renewSheet: () => void;
};

/** One count as this device sees it: the server's rows with those still waiting here laid over them. */
export function useCount(name: string): CountState {
  const queryClient = useQueryClient();
  const sheet = useQuery(sheetQuery(name));
  const { data: served } = useQuery(rowsQuery(name));
  const allWaiting = useWaiting();
  const waiting = useMemo(() => allWaiting.filter(({ row }) => row.count === name), [allWaiting, name]);
  useEffect(() => {
    whenSent((row) => {
      queryClient.setQueryData(rowsQuery(row.count).queryKey, (rows: CountRow[] = []) =>
        laidOver(rows, [row]),
      );
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
  return {
    name,
    sheet: sheet.data,
    error: sheet.error,
    rows,
    waiting,
    renewSheet: () => void sheet.refetch(),
  };
}

function laidOver(rows: readonly CountRow[], newer: readonly CountRow[]): CountRow[] {
  const replaced = new Set(newer.map(placeOf));
  return [...rows.filter((row) => !replaced.has(placeOf(row))), ...newer];
}

/** The rows of one item in one area. */
export function rowsOf(rows: readonly CountRow[], place: { area: string; item: string }): CountRow[] {
  return rows.filter(({ area, item }) => area === place.area && item === place.item);
}

/** The items of an area that this count has no row of, in shelf order. */
export function missingIn({ area, items }: SheetArea, rows: readonly CountRow[]): string[] {
  const found = new Set(rows.filter((row) => row.area === area).map(({ item }) => item));
  return items.map(({ item }) => item).filter((item) => !found.has(item));
}
