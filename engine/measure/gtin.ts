/**
 * The check digit that ends a GTIN whose other digits are `body` (GTIN-8, 12, 13, 14: 7, 11, 12, 13 digits).
 *
 * GS1 General Specifications, modulo 10: from the right of the body, weights 3, 1, 3, 1 …; undefined if `body` is not
 * such a run of digits. "629104150021" → 3; "501234567890" → 0.
 */
export function gtinCheckDigit(body: string): number | undefined {
  if (!/^(?:\d{7}|\d{11,13})$/.test(body)) return undefined;
  const fromRight = [...body].reverse().map(Number);
  const sum = fromRight.reduce((total, digit, at) => total + digit * (at % 2 === 0 ? 3 : 1), 0);
  return (10 - (sum % 10)) % 10;
}

/**
 * A GTIN in the form in which two are compared: 14 digits, zeros in front (GS1). Spaces and hyphens are left out.
 *
 * Undefined if it is not 8, 12, 13 or 14 digits or its check digit is wrong, as when a spreadsheet has made it a
 * number or dropped its leading zero. "6291041500213" → "06291041500213"; "6.29E+12" → undefined.
 */
export function gtin14(text: string): string | undefined {
  const digits = text.replace(/[\s-]/g, "");
  const check = gtinCheckDigit(digits.slice(0, -1));
  return check !== undefined && digits.endsWith(String(check)) ? digits.padStart(14, "0") : undefined;
}
