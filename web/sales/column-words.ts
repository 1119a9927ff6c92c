import type { ColumnFinding } from "#engine/sales/read/columns.ts";

const ROLE_WORDS: Record<ColumnFinding["role"], string> = {
  when: "date and time",
  date: "date",
  time: "time of day",
  businessDate: "business date",
  item: "what was sold",
  modifiers: "modifiers",
  parent: "row it belongs to",
  quantity: "how many",
  gross: "money before discounts",
  discount: "discount",
  net: "money after discounts",
  unitPrice: "price of one",
  check: "check number",
  lineNo: "line of the check",
  till: "till",
  kind: "sale, void or refund",
  staff: "person (not read)",
  other: "not used",
  unknown: "not used",
};

/** What a column was taken for. */
export function roleWords(role: ColumnFinding["role"]): string {
  return ROLE_WORDS[role] ?? role;
}

/** How sure that is, as a word. */
export function sureWords({ role, confidence }: Pick<ColumnFinding, "role" | "confidence">): string {
  if (role === "unknown" || role === "other") return "";
  if (confidence >= 0.9) return "sure";
  return confidence >= 0.6 ? "fairly sure" : "a guess: check it";
}
