import { useSyncExternalStore } from "react";
import type { CountRow } from "#engine/stock/movement.ts";
import { answerOf, ProblemError, server } from "../api.ts";
import { keep } from "../kept.ts";

/** An entry that the server has not acknowledged yet; `refused` says why when it will not take it. */
export type WaitingEntry = {
  row: CountRow;
  refused: string | null;
  /** The server's row that was on screen when this was counted; null when there was none. */
  seen?: number | null;
};

// One key of the device's storage an entry: two open tabs cannot overwrite each other's, and a reload loses none.
// localStorage rather than IndexedDB, as it writes before the key's handler returns: a phone that dies, or is swept
// away, in the same second has kept the entry. A count of 1,000 items takes half a megabyte of the five allowed.
const PREFIX = "ullage-count-entry ";
const FIRST_RETRY_MS = 2_000;
const LONGEST_RETRY_MS = 30_000;
/** A network may hold a request and never answer it; it is sent again then, and the server knows it for the same. */
const PATIENCE_MS = 15_000;

/** Entries by key that a full or forbidden storage would not take: they live as long as the page does. */
const unkept = new Map<string, string>();

const listeners = new Set<() => void>();
let entries: readonly WaitingEntry[] = readAll();
let retryMs = FIRST_RETRY_MS;
let timer: ReturnType<typeof setTimeout> | undefined;
let isSending = false;
let notSent: ProblemError | null = null;
let onSent: (row: CountRow, id: number) => void = () => {};

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
export function enter(row: CountRow, seen: number | null): void {
  const key = PREFIX + placeOf(row);
  const waits = entryAt(key);
  // Counted again before the first entry went out: what was seen is what the first one saw.
  write(key, { row, refused: null, seen: waits === undefined ? seen : (waits.seen ?? null) });
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
export function whenSent(act: (row: CountRow, id: number) => void): void {
  onSent = act;
}

/** Whether the device's storage takes entries; else they last only as long as the page. */
export function isKept(): boolean {
  return unkept.size === 0;
}

/** Why nothing can be sent, where that is for who is signed in: nobody (401), or somebody who may not count (403). */
export function whyNotSent(): ProblemError | null {
  return notSent;
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
    setNotSent(null);
  } catch (error) {
    setNotSent(error instanceof ProblemError && isForSignIn(error.status) ? error : null);
    timer = setTimeout(() => void send(), retryMs);
    retryMs = Math.min(LONGEST_RETRY_MS, retryMs * 2);
  } finally {
    isSending = false;
  }
}

function setNotSent(why: ProblemError | null): void {
  if (why?.status === notSent?.status) return;
  notSent = why;
  announce();
}

/** Not refused for what it says: it waits for somebody to sign in who may send it. */
function isForSignIn(status: number): boolean {
  return [401, 403, 429].includes(status);
}

function nextToSend(): WaitingEntry | undefined {
  return entries.find(({ refused }) => refused === null);
}

async function sendOne({ row, seen }: WaitingEntry): Promise<void> {
  const key = PREFIX + placeOf(row);
  const sent = read(key);
  const query = seen === undefined ? {} : { seen: seen === null ? "none" : String(seen) };
  let id: number;
  try {
    ({ id } = await answerOf(
      server.counts.entries.$post(
        { query, json: row },
        { init: { signal: AbortSignal.timeout(PATIENCE_MS) } },
      ),
    ));
  } catch (error) {
    const isRefusal = error instanceof ProblemError && error.status >= 400 && error.status < 500;
    if (!isRefusal || isForSignIn(error.status)) throw error;
    if (read(key) === sent) write(key, { row, seen: seen ?? null, refused: error.message });
    announce();
    return;
  }
  onSent(row, id);
  // Counted again while it was on its way: the newer entry still waits, and replaces this one knowingly.
  const newer = entryAt(key);
  if (read(key) === sent) erase(key);
  else if (newer !== undefined) write(key, { ...newer, seen: id });
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
    .flatMap((key) => entryAt(key) ?? [])
    .sort((a, b) => a.row.at.localeCompare(b.row.at));
}

function entryAt(key: string): WaitingEntry | undefined {
  const text = read(key);
  return text === null ? undefined : (JSON.parse(text) as WaitingEntry);
}

function read(key: string): string | null {
  return unkept.get(key) ?? localStorage.getItem(key);
}

function write(key: string, entry: WaitingEntry): void {
  if (keep(key, entry)) unkept.delete(key);
  else unkept.set(key, JSON.stringify(entry));
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
