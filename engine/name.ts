/**
 * The form in which names are compared: without regard to case, outer or repeated spaces, or Unicode form.
 *
 * foldName("  Café  NOIR ") → "café noir"
 */
export function foldName(name: string): string {
  return name.normalize("NFC").trim().replace(/\s+/gu, " ").toLowerCase().normalize("NFC");
}
