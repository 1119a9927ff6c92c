import { useSyncExternalStore } from "react";
import type { CountRow } from "#engine/stock/movement.ts";
import { answerOf, ProblemError, server } from "../api.ts";

/** An entry that the server has not acknowledged yet; `refused` says why when it will not take it. */
export type WaitingEntry = { row: CountRow; refused: string | null };

// One key of the device's storage an entry: two open tabs cannot overwrite each other's, and a reload loses none.
const PREFIX = "ullage-count-entry ";
const FIRST_RETRY_MS = 2_000;
const LONGEST_RETRY_MS = 30_000;

/** Entries by key that a full or forbidden storage would not take: they live as long as the page does. */
const unkept = new Map<string, string>();

const listeners = new Set<() => void>();
let entries: readonly WaitingEntry[] = readAll();
let retryMs = FIRST_RETRY_MS;
let timer: ReturnType<typeof setTimeout> | undefined;
let isSending = false;
let onSent: (row: CountRow) => void = () => {};

/** Which entry of a count a row is; a later one of the same place replaces the earlier. */
export function placeOf({
  count,
  area,
  item,
  pack,
}: Pick<CountRow, "count" | "area" | "item" | "pack">): string {
  return JSON.stringify([count, area, item, pack]);
}

/** Keeps an entry on this device until the server has it, and sends it at once. */
export function enter(row: CountRow): void {
  write(PREFIX + placeOf(row), { row, refused: null });
  announce();
  retryMs = FIRST_RETRY_MS;
  void send();
}

/** Takes back an entry the server refused. */
export function drop(row: CountRow): void {
  erase(PREFIX + placeOf(row));
  announce();
}

/** Says what to do with each entry the server has taken. */
export function whenSent(act: (row: CountRow) => void): void {
  onSent = act;
}

/** The entries on this device that the server does not have yet. */
export function useWaiting(): readonly WaitingEntry[] {
  return useSyncExternalStore(subscribe, () => entries);
}

/** Tries to send all that waits, one after the other, in the order they were made. */
export async function send(): Promise<void> {
  if (isSending) return;
  isSending = true;
  clearTimeout(timer);
  try {
    for (let next = nextToSend(); next !== undefined; next = nextToSend()) await sendOne(next);
    retryMs = FIRST_RETRY_MS;
  } catch {
    timer = setTimeout(() => void send(), retryMs);
    retryMs = Math.min(LONGEST_RETRY_MS, retryMs * 2);
  } finally {
    isSending = false;
  }
}

function nextToSend(): WaitingEntry | undefined {
  return entries.find(({ refused }) => refused === null);
}

async function sendOne({ row }: WaitingEntry): Promise<void> {
  const key = PREFIX + placeOf(row);
  const sent = read(key);
  try {
    await answerOf(server.counts.entries.$post({ json: row }));
  } catch (error) {
    const isRefusal = error instanceof ProblemError && error.status >= 400 && error.status < 500;
    if (!isRefusal) throw error;
    if (read(key) === sent) write(key, { row, refused: error.message });
    announce();
    return;
  }
  onSent(row);
  // Counted again while it was on its way: the newer entry still waits.
  if (read(key) === sent) erase(key);
  announce();
}

function subscribe(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

function announce(): void {
  entries = readAll();
  for (const listener of listeners) listener();
}

function readAll(): WaitingEntry[] {
  const keys = [...Object.keys(localStorage).filter((key) => key.startsWith(PREFIX)), ...unkept.keys()];
  return [...new Set(keys)]
    .flatMap((key) => {
      const text = read(key);
      return text === null ? [] : [JSON.parse(text) as WaitingEntry];
    })
    .sort((a, b) => a.row.at.localeCompare(b.row.at));
}

function read(key: string): string | null {
  return unkept.get(key) ?? localStorage.getItem(key);
}

function write(key: string, entry: WaitingEntry): void {
  const text = JSON.stringify(entry);
  try {
    localStorage.setItem(key, text);
    unkept.delete(key);
  } catch {
    unkept.set(key, text);
  }
}

function erase(key: string): void {
  unkept.delete(key);
  localStorage.removeItem(key);
}

window.addEventListener("online", () => void send());
document.addEventListener("visibilitychange", () => {
  if (document.visibilityState === "visible") void send();
});
window.addEventListener("storage", announce);
