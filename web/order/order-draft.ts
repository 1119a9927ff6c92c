import { currencyDigits } from "#engine/currency.ts";
import type { Supplier } from "#engine/orders/supplier.ts";
import type { OrderReportLine } from "../answers.ts";
import { listWords } from "../format.ts";
import { say } from "../texts/say.ts";

/** Quantities as a person has changed them, by lineKey. */
export type Edits = ReadonlyMap<string, number>;

export type DraftLine = OrderReportLine & { suggested: number };

export function lineKey({ item, pack, of }: Pick<OrderReportLine, "item" | "pack" | "of">): string {
  return JSON.stringify([item, pack, of]);
}

/** The suggested lines with the quantities changed by hand; cost follows the quantity. */
export function draftLines(lines: readonly OrderReportLine[], edits: Edits): DraftLine[] {
  return lines.map((line) => {
    const quantity = edits.get(lineKey(line)) ?? line.quantity;
    const costEach = line.cost === null || line.quantity === 0 ? null : line.cost / line.quantity;
    return {
      ...line,
      suggested: line.quantity,
      quantity,
      cost: costEach === null ? line.cost : costEach * quantity,
      deposit: line.quantity === 0 ? line.deposit : (line.deposit / line.quantity) * quantity,
    };
  });
}

export type Minimum = { isMet: boolean; words: string };

type MinimumQuestion = {
  supplier: Pick<Supplier, "minimumValueMinor" | "minimumCases"> | undefined;
  lines: readonly DraftLine[];
  /** Cases in one of what a line orders. */
  casesOf: (line: DraftLine) => number;
  currency: string;
  formatMoney: (major: number) => string;
};

/** Whether a draft meets its supplier's minimum, and what is short. Value 240 against 300 → short by 60. */
export function minimumOf({ supplier, lines, casesOf, currency, formatMoney }: MinimumQuestion): Minimum {
  if (supplier === undefined) return { isMet: true, words: say("order.minimumUnknown") };
  const value = (supplier.minimumValueMinor ?? 0) / 10 ** currencyDigits(currency);
  const cases = supplier.minimumCases ?? 0;
  if (value === 0 && cases === 0) return { isMet: true, words: say("order.noMinimum") };
  const shortValue = value - lines.reduce((sum, { cost }) => sum + (cost ?? 0), 0);
  const shortCases = cases - lines.reduce((sum, line) => sum + casesOf(line) * line.quantity, 0);
  const short = [
    ...(shortValue > 1e-9 ? [formatMoney(shortValue)] : []),
    ...(shortCases > 1e-9 ? [say("order.minimumCases", { count: Math.ceil(shortCases * 10) / 10 })] : []),
  ];
  if (short.length === 0) return { isMet: true, words: say("order.minimumMet") };
  return { isMet: false, words: say("order.minimumShort", { short: listWords(short) }) };
}

/** Total of a draft, in major units; lines without a price are not in it. */
export function totalOf(lines: readonly DraftLine[]): number {
  return lines.reduce((sum, { cost }) => sum + (cost ?? 0), 0);
}

/** Deposits on a draft's containers, in major units: paid on top, and given back for the empties. */
export function depositsOf(lines: readonly DraftLine[]): number {
  return lines.reduce((sum, { deposit }) => sum + deposit, 0);
}

/** "3 cases of 700 ml", "4 × 1 L": what is asked of the supplier. */
export function quantityWords({ quantity, of, pack }: Pick<DraftLine, "quantity" | "of" | "pack">): string {
  return say("stock.packs", { quantity, of, pack });
}

/** The order as the text of an e-mail. */
export function emailText(
  lines: readonly DraftLine[],
  { venue, supplier, arrives }: { venue: string; supplier: string; arrives: string | null },
): string {
  return [
    say("order.emailDear", { supplier }),
    "",
    arrives === null
      ? say("order.emailDeliver", { venue })
      : say("order.emailDeliverOn", { venue, day: arrives }),
    "",
    ...lines.filter(({ quantity }) => quantity > 0).map((line) => `${quantityWords(line)}  ${line.item}`),
    "",
    say("order.emailConfirm"),
    "",
    say("order.emailThanks"),
    venue,
  ].join("\n");
}
