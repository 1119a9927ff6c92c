/** Digits after the point in a currency's minor unit by ISO 4217: EUR 2, JPY 0, KWD 3. */
export function currencyDigits(currency: string): number {
  const format = new Intl.NumberFormat("en", { style: "currency", currency });
  return format.resolvedOptions().maximumFractionDigits ?? 2;
}
