import type { SaleLine } from "#engine/sales/read/line.ts";

/** Marks that tills put before what belongs to the drink above: sure ones, and ones that a name may start with too. */
const SURE_PREFIX = /^\s*(?:\+|↳|→|>+|»)\s*(?=\S)/u;
const LIKELY_PREFIX = /^\s*(?:[•·*]\s*|[-–]\s+|[-–](?=\p{L}))(?=\S)/u;
const MINUS = /^\s*[-–]/;
const INDENT = /^(?:\s{2,}|\t|\u00a0+|\u3000)(?=\S)/u;

export type ChildStyle = {
  /** The file marks additions with "+", so "-" takes something away and stays. */
  isMinusRemoval: boolean;
  /** Some names of the file are indented and others not, so an indent says something. */
  isIndentMeant: boolean;
};

/**
 * The modifier in an item cell that is marked as one: "+ Extra lime" → "Extra lime", "  No ice" → "No ice".
 *
 * A bullet or a minus counts only where the row has no quantity of its own. Undefined where nothing marks it.
 */
export function childText(cell: string, hasQuantity: boolean, style: ChildStyle): string | undefined {
  const prefix = SURE_PREFIX.exec(cell) ?? (hasQuantity ? null : LIKELY_PREFIX.exec(cell));
  if (prefix !== null)
    return style.isMinusRemoval && MINUS.test(cell) ? cell.trim() : cell.slice(prefix[0].length).trim();
  return style.isIndentMeant && INDENT.test(cell) ? cell.trim() : undefined;
}

/** How the item cells of a file mark child rows. */
export function childStyleOf(items: Iterable<string>): ChildStyle {
  const witness = new ChildStyleWitness();
  for (const cell of items) witness.add(cell);
  return witness.style;
}

/** Sees the item cells of a file in their order, to say how they mark child rows. */
export class ChildStyleWitness {
  readonly style: ChildStyle = { isMinusRemoval: false, isIndentMeant: false };
  #isFirst = true;
  #isPadded = false;

  add(cell: string): void {
    if (this.#isPadded) return;
    if (/^\s*\+/.test(cell)) this.style.isMinusRemoval = true;
    if (cell.trim() === "") return;
    // The first name of a list is nobody's child: where it is indented, all names are padded.
    if (INDENT.test(cell)) {
      if (this.#isFirst) this.#isPadded = true;
      else this.style.isIndentMeant = true;
    }
    this.#isFirst = false;
  }
}

/** Adds a child row to its line: its words to the modifiers, its money to the line's money. */
export function attach(
  parent: SaleLine,
  text: string,
  grossMinor: number | null,
  netMinor: number | null,
): void {
  const words = text.normalize("NFC");
  parent.modifiers = parent.modifiers === "" ? words : `${parent.modifiers}; ${words}`;
  if (grossMinor !== null) parent.grossMinor = (parent.grossMinor ?? 0) + grossMinor;
  if (netMinor !== null) parent.netMinor = (parent.netMinor ?? 0) + netMinor;
}
