import type { ColumnFinding } from "#engine/sales/read/columns.ts";
import { say } from "../texts/say.ts";

const ROLE_WORDS = {
  when: "sales.roleWhen",
  date: "sales.roleDate",
  time: "sales.roleTime",
  businessDate: "sales.roleBusinessDate",
  item: "sales.roleItem",
  modifiers: "sales.roleModifiers",
  parent: "sales.roleParent",
  quantity: "sales.roleQuantity",
  gross: "sales.roleGross",
  discount: "sales.roleDiscount",
  net: "sales.roleNet",
  unitPrice: "sales.roleUnitPrice",
  check: "sales.roleCheck",
  lineNo: "sales.roleLineNo",
  till: "sales.roleTill",
  kind: "sales.roleKind",
  staff: "sales.roleStaff",
  other: "sales.roleUnused",
  unknown: "sales.roleUnused",
} as const;

/** What a column was taken for. */
export function roleWords(role: ColumnFinding["role"]): string {
  return say(ROLE_WORDS[role]);
}

/** How sure that is, as a word. */
export function sureWords({ role, confidence }: Pick<ColumnFinding, "role" | "confidence">): string {
  if (role === "unknown" || role === "other") return "";
  if (confidence >= 0.9) return say("sales.sure");
  return say(confidence >= 0.6 ? "sales.fairlySure" : "sales.aGuess");
}
