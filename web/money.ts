import { currencyDigits } from "#engine/currency.ts";
import { numbers } from "./format.ts";

// Money as people read it. The count shows none, so its first load does not carry this.

/** Money in major units. `whole` leaves the minor unit out where only size matters. */
export function formatMoney(major: number, currency: string, { whole = false } = {}): string {
  const digits = whole ? 0 : currencyDigits(currency);
  const text = numbers({
    style: "currency",
    currency,
    currencyDisplay: "narrowSymbol",
    minimumFractionDigits: digits,
    maximumFractionDigits: digits,
  }).format(major);
  return (/[1-9]/.test(text) ? text : text.replace("-", "")).replace("-", "−");
}

/** Integer minor units as money. 1250 (EUR) → "€12.50". */
export function formatMinor(minor: number, currency: string): string {
  return formatMoney(minor / 10 ** currencyDigits(currency), currency);
}
