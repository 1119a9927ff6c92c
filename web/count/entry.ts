import { readAmount } from "#engine/measure/amount.ts";
import type { Unit } from "#engine/measure/units.ts";
import type { CountRow } from "#engine/stock/movement.ts";
import { say } from "../texts/say.ts";
import type { SheetItem } from "./sheet.ts";
import { BASE_UNITS_OF, type Way } from "./ways.ts";

/** What a thumb has typed so far for one item, of one pack, in one area. */
export type Draft = {
  way: Way;
  pack: string | null;
  /** Whole containers, and after each point the tenths of an open one: "3.7.5" is 3 full, open ones at 7 and at 5; "3.7½" one at 7½. */
  containers: string;
  /** Gross grams of open containers on the scale, with "+" between: "592+871". */
  grams: string;
  amount: string;
  unit: Unit;
};

export type Containers = { full: number; parts: number[] };

const CONTAINERS = /^(\d{0,4})((?:\.(?:10|\d[½hH]?))*)\.?$/;

/**
 * Reads "3.7.5" as 3 full and open ones at 0.7 and 0.5, "3.7½" (or "3.7h") as one at 7½ tenths, "3.10" as an open one still full;
 * undefined for what is none of these.
 */
export function readContainers(typed: string): Containers | undefined {
  const found = CONTAINERS.exec(typed.replaceAll(",", ".").trim());
  if (found === null) return undefined;
  const parts = (found[2] ?? "").split(".").filter(Boolean);
  return { full: Number(found[1] ?? 0), parts: parts.map(shareOf) };
}

/** "10" → 1, "7" → 0.7, "7½" → 0.75: what stands after a point, as a share of the container. */
function shareOf(tenths: string): number {
  const whole = Number.parseInt(tenths, 10);
  return (/[½h]$/i.test(tenths) ? whole + 0.5 : whole) / 10;
}

/** The text that reads as these containers, levels to the half tenth. */
export function writeContainers({ full, parts }: Containers): string {
  const digits = (part: number) => {
    const halves = Math.round(part * 20);
    return `${Math.floor(halves / 2)}${halves % 2 === 1 ? "½" : ""}`;
  };
  return [String(full), ...parts.map(digits)].join(".");
}

/** Sets the level of the last open container in tenths, halves included; the same level again takes it away. */
export function withLevel(typed: string, tenths: number): string {
  const { full, parts } = readContainers(typed) ?? { full: 0, parts: [] };
  const isWaiting = typed.endsWith(".");
  const others = isWaiting ? parts : parts.slice(0, -1);
  const isSame = !isWaiting && parts.at(-1) === tenths / 10;
  return writeContainers({ full, parts: isSame ? others : [...others, tenths / 10] });
}

/** One full container more or fewer, never below none; open ones stay. */
export function withStep(typed: string, step: 1 | -1): string {
  const { full, parts } = readContainers(typed) ?? { full: 0, parts: [] };
  return writeContainers({ full: Math.max(0, full + step), parts });
}

/** Reads "592+871" as two weights; undefined for what is no list of weights. */
export function readGrams(typed: string): number[] | undefined {
  const weights = typed.split("+").filter((text) => text.trim() !== "");
  const read = weights.map((text) => readAmount(text, { decimalComma: true }));
  return read.every((grams) => grams !== undefined && grams >= 0) ? (read as number[]) : undefined;
}

/** A draft for an item as it was counted last time, or filled in with what this count already holds of it. */
export function draftFor(item: SheetItem, show: Unit, row: CountRow | undefined): Draft {
  const last = row ?? item.lastCount;
  const isWeighed = (last?.grossG.length ?? 0) > 0;
  const isAmount = item.packs.length === 0 || (last !== null && last !== undefined && last.amount !== null);
  const unit = last?.unit ?? (item.base === "ml" ? show : BASE_UNITS_OF[item.base][0]);
  const empty: Draft = {
    way: isAmount ? "amount" : isWeighed ? "scale" : "eye",
    pack: item.packs[0]?.pack ?? null,
    containers: "",
    grams: "",
    amount: "",
    unit: unit ?? "each",
  };
  if (row === undefined) return empty;
  const counted = row.full !== null || row.parts.length > 0;
  return {
    ...empty,
    pack: row.pack ?? empty.pack,
    containers: counted ? writeContainers({ full: row.full ?? 0, parts: row.parts }) : "",
    grams: row.grossG.join("+"),
    amount: row.amount === null ? "" : String(row.amount),
  };
}

type Found = Pick<CountRow, "pack" | "full" | "parts" | "grossG" | "amount" | "unit">;

/** What a draft says was found, or in a sentence what is missing for that. Nothing typed is not none. */
export function foundOf(draft: Draft): Found | { problem: string } {
  const nothing = { pack: draft.pack, full: null, parts: [], grossG: [], amount: null, unit: null };
  if (draft.way === "amount") {
    const amount = readAmount(draft.amount, { decimalComma: true });
    if (draft.amount.trim() === "") return { problem: say("count.enterOrSkip") };
    if (amount === undefined || amount < 0)
      return { problem: say("count.noAmount", { typed: draft.amount }) };
    return { ...nothing, pack: null, amount, unit: draft.unit };
  }
  if (draft.containers === "" && (draft.way === "eye" || draft.grams === ""))
    return { problem: say("count.enterOrSkip") };
  const containers = readContainers(draft.containers);
  if (containers === undefined) {
    return { problem: say("count.twoFigures", { typed: draft.containers }) };
  }
  if (draft.way === "eye") return { ...nothing, ...containers };
  const grossG = readGrams(draft.grams);
  if (grossG === undefined) return { problem: say("count.noWeights", { typed: draft.grams }) };
  return { ...nothing, ...containers, grossG };
}

/** That there is none of it. */
export function noneFound({ way, pack, unit }: Draft): Found {
  const nothing = { parts: [], grossG: [] };
  if (way === "amount") return { ...nothing, pack: null, full: null, amount: 0, unit };
  return { ...nothing, pack, full: 0, amount: null, unit: null };
}
