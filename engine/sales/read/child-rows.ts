import { attach, childText } from "#engine/sales/read/child-marks.ts";
import {
  cellOf,
  type FlatLayout,
  modifiersIn,
  type Outcome,
  quantityIn,
  type RowParts,
  textOrNull,
} from "#engine/sales/read/flat-layout.ts";
import type { SaleLine } from "#engine/sales/read/line.ts";
import { readMoney, takenBack } from "#engine/sales/read/money.ts";
import { cut } from "#engine/sales/read/place-in-time.ts";
import { isReportNote } from "#engine/sales/read/words.ts";

/**
 * A row that belongs to a line above, where the file says so clearly: by its kind, a parent column, a mark or an indent
 * before its name, or because nothing but a name (and its price) stands in it below a dated line.
 */
export function readChild(
  row: readonly string[],
  layout: FlatLayout,
  parts: RowParts,
  checks: Checks,
): Outcome | undefined {
  const { map, headings } = layout;
  const name = parts.itemCell.trim();
  const parentCell = parentOf(row, layout, checks);
  const marked = layout.isRowOneSale
    ? undefined
    : childText(parts.itemCell, parts.quantityCell !== "", layout);
  const isChild = parts.kind === "modifier" || parentCell !== "" || (marked !== undefined && name !== "");
  if (!isChild && !isBareName(row, layout, parts, checks.last(null))) return undefined;
  const text = marked ?? (name === "" ? modifiersIn(row, map.modifiers) : name);
  if (text === "") return "skip";
  const check = textOrNull(cellOf(row, map.check));
  const parent = parentCell === "" ? checks.last(check) : checks.find(parentCell, check);
  if (parent === undefined)
    return parentCell === ""
      ? `${headings[map.item ?? 0]}: "${cut(text)}" looks like a modifier, but no line of its check stands above it; mend the row or leave it out`
      : `${headings[map.parent ?? 0]}: no line "${cut(parentCell)}" above; mend the row or leave it out`;
  const wrong = quantityMismatch(parts.quantityCell, parent, layout);
  if (wrong !== undefined && marked !== undefined && parts.kind !== "modifier" && parentCell === "")
    return wrong;
  const money = readMoney(row, 1, layout);
  if (typeof money === "string") return money;
  const signed = parent.quantity < 0 ? takenBack(money) : money;
  attach(parent, text, signed.grossMinor, signed.netMinor);
  return "child";
}

/** What the parent column names; "" for a row that is its own parent or names none ("0", "-"). */
function parentOf(row: readonly string[], { map }: FlatLayout, checks: Checks): string {
  const parent = cellOf(row, map.parent).trim();
  if (parent === "" || parent === cellOf(row, map.lineNo).trim()) return "";
  const isNone = /^(?:0+|-+|–|none|null|n\/?a)$/i.test(parent);
  return isNone && checks.find(parent, textOrNull(cellOf(row, map.check))) === undefined ? "" : parent;
}

/** Only a name, no more cells than headings and no fewer, below a line: what a till prints under a drink. */
function isBareName(
  row: readonly string[],
  layout: FlatLayout,
  { itemCell, quantityCell, placed }: RowParts,
  above: SaleLine | undefined,
): boolean {
  // Without a time or a check a lone name may as well head a group of drinks.
  if (above === undefined || (above.at === null && above.check === null)) return false;
  const { map, headings } = layout;
  if (layout.day !== undefined || layout.isRowOneSale || placed !== "none") return false;
  if (quantityCell !== "" || itemCell.trim() === "" || row.length !== headings.length) return false;
  return (
    cellOf(row, map.check).trim() === "" && cellOf(row, map.lineNo).trim() === "" && !isReportNote(itemCell)
  );
}

function quantityMismatch(cell: string, parent: SaleLine, layout: FlatLayout): string | undefined {
  if (cell === "") return undefined;
  const quantity = quantityIn(cell, layout);
  if (typeof quantity === "string") return quantity;
  if (Math.abs(quantity) === Math.abs(parent.quantity) || quantity === 1 || quantity === 0) return undefined;
  return `the row looks like a modifier of "${cut(parent.ringName)}" but has another quantity (${quantity}); name a parent or kind column, or mend the row`;
}

const KEYS_MOST = 10_000;

/** The lines of the checks so far, to find the one that a child row belongs to. */
export class Checks {
  #last: SaleLine | undefined;
  readonly #byKey = new Map<string, SaleLine>();
  readonly #hasParents: boolean;

  constructor(hasParents: boolean) {
    this.#hasParents = hasParents;
  }

  add(line: SaleLine): void {
    this.#last = line;
    if (!this.#hasParents) {
      this.forgotten();
      return;
    }
    // Only the checks around the current row are asked for; older ones may go.
    if (this.#byKey.size > KEYS_MOST) {
      this.#byKey.clear();
      this.forgotten();
    }
    this.#byKey.set(`${line.check ?? ""}\u0000name\u0000${line.ringName}`, line);
    if (line.lineNo !== null) this.#byKey.set(`${line.check ?? ""}\u0000line\u0000${line.lineNo}`, line);
  }

  /** No line but the one that is being added is found any more: for those who hold lines back until then. */
  protected forgotten(): void {}

  /** Past a row that is no child: if it is refused, nobody knows what the next child belongs to. */
  forgetLast(): void {
    this.#last = undefined;
  }

  last(check: string | null): SaleLine | undefined {
    return check === null || this.#last?.check === check ? this.#last : undefined;
  }

  find(parent: string, check: string | null): SaleLine | undefined {
    const checkKey = check ?? this.#last?.check ?? "";
    const name = parent.normalize("NFC");
    return (
      this.#byKey.get(`${checkKey}\u0000line\u0000${name}`) ??
      this.#byKey.get(`${checkKey}\u0000name\u0000${name}`)
    );
  }
}
