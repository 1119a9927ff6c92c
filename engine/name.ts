/**
 * The form in which names are compared: without regard to case, outer or repeated spaces, or Unicode form.
 *
 * foldName("  Café  NOIR ") → "café noir"
 */
export function foldName(name: string): string {
  // Most names are plain already, and folding them is most of what a look-up costs.
  if (PLAIN.test(name)) return name.toLowerCase();
  return name.normalize("NFC").trim().replace(/\s+/gu, " ").toLowerCase().normalize("NFC");
}

/** ASCII words with one space between them. */
const PLAIN = /^[!-~]+(?: [!-~]+)*$/;
