import type { ClosedPast, Touch } from "#engine/stock/closed-past.ts";
import type { Instant } from "#engine/time.ts";

/** What can be done, in the words of the trade. */
export const ACTS = [
  "book loaded",
  "venue changed",
  "item changed",
  "drink changed",
  "supplier changed",
  "price changed",
  "shelf order changed",
  "supplier days changed",
  "closed days changed",
  "sales shapes changed",
  "spec changed",
  "prep changed",
  "cut changed",
  "ring name changed",
  "modifier changed",
  "order placed",
  "order taken out",
  "event changed",
  "plan changed",
  "count entry",
  "delivery entered",
  "batch entered",
  "loss entered",
  "transfer entered",
  "entry corrected",
  "entry taken back",
  "sales imported",
  "import undone",
  "staff names switched",
  "staff names erased",
  "cause settled",
  "settlement taken back",
  "week closed",
  "week reopened",
  "undone",
  "person changed",
  "permission changed",
  "password changed",
  "sign-in changed",
  "device changed",
  "token changed",
] as const;
export type ActName = (typeof ACTS)[number];

export const SUBJECT_KINDS = [
  "book",
  "venue",
  "item",
  "drink",
  "prep",
  "supplier",
  "area",
  "count",
  "import",
  "ring name",
  "modifier",
  "order",
  "event",
  "cause",
  "week",
  "person",
  "device",
  "token",
] as const;

/** What an act is about: one thing of the bar by its name. */
export type Subject = { kind: (typeof SUBJECT_KINDS)[number]; name: string };

/** One row of a table before and after: null before it was there, null after it was taken out. */
export type RowChange = { table: string; id: number; before: TableRow | null; after: TableRow | null };
export type TableRow = Record<string, string | number | null>;

/**
 * One entry that was added: by its number, and the one it replaced. One that undoing added says which entry's state it
 * brings back; null for none.
 */
export type EntryAdded = {
  kind: "count" | "delivery" | "batch" | "loss" | "transfer";
  id: number;
  replacesId: number | null;
  restores?: number | null;
};

/** What it takes to take an act back. */
export type Mend =
  | { rows: RowChange[] }
  | { entries: EntryAdded[] }
  | { importId: number; isUndone: boolean };

/** An act as the history tells it. The first subject is what it is about most. */
export type Told = {
  act: ActName;
  subjects: readonly [Subject, ...Subject[]];
  /** One sentence without who and when. */
  summary: string;
  /** Facts as people read them, before and after. */
  before?: unknown;
  after?: unknown;
  reason?: string;
  /** When, by the clock of whoever asked for it; without it, by the machine's. */
  at?: Instant;
  mend?: Mend | null;
  /** The act that this one takes back. */
  undoes?: number;
  /** What of this lies in the closed past; asked only when there is one. */
  touches: (closed: ClosedPast) => readonly Touch[];
};

/** For acts that change nothing of what a week was: an order, a plan, a permission. */
export const nothingPast: Told["touches"] = () => [];
