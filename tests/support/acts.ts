import type { NewSettlement } from "#db/settlements-repository.ts";
import type { SaleLine } from "#engine/sales/read/line.ts";
import type { CountRow, Delivery } from "#engine/stock/movement.ts";

/** Acts in the small bar on the Monday after its first week. */
export const DOING = { now: "2026-03-09T12:00:00Z", by: "Ana" };

export const ROW: CountRow = {
  count: "Week 10",
  at: "2026-03-09T10:00:00Z",
  area: "Back bar",
  item: "Dry gin",
  pack: "1 L",
  full: 3,
  parts: [0.5],
  grossG: [],
  amount: null,
  unit: null,
  by: "Ana",
};

export const DELIVERY: Delivery = {
  at: "2026-03-09T10:30:00Z",
  supplier: "Quayside Drinks",
  invoice: "Q-130",
  item: "Dry gin",
  pack: "1 L",
  quantity: 6,
  of: "container",
  priceTotalMinor: 12_600,
  depositMinor: null,
  empties: null,
  by: "Rui",
};

export const LINE: SaleLine = {
  businessDate: "2026-03-06",
  at: null,
  ringName: "Gimlet",
  modifiers: "",
  quantity: 3,
  grossMinor: null,
  netMinor: 3450,
  check: null,
  lineNo: null,
};

export const SETTLEMENT: NewSettlement = {
  answer: "refuted",
  opening: "Week 9",
  closing: "Week 10",
  cause: { kind: "over-pour", what: "Dry gin", size: 120, unit: "ml", count: null },
  correction: null,
};
