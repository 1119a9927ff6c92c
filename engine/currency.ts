const known = new Map<string, number>();

/** Digits after the point in a currency's minor unit by ISO 4217: EUR 2, JPY 0, KWD 3. */
export function currencyDigits(currency: string): number {
  const held = known.get(currency);
  if (held !== undefined) return held;
  const format = new Intl.NumberFormat("en", { style: "currency", currency });
  const digits = format.resolvedOptions().maximumFractionDigits ?? 2;
  // A venue has one currency; whoever reads many books must not fill the memory with what they name.
  if (known.size < 200) known.set(currency, digits);
  return digits;
}
