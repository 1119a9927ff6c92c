/**
 * What a spreadsheet may take for a formula: a text that begins with = + - @, a tab, a line's end or a nought byte (OWASP ASVS
 * 5.0, 1.2.10; CWE-1236), or with one of the full-width signs that some programs read alike (OWASP, CSV Injection; from
 * memory). Apostrophes that already lead it are part of the pattern, so that what is written can be read back.
 */
const FORMULA = /^'*[=+\-@\t\r\n\0＝＋－＠]/;
const LED_FORMULA = /^'+[=+\-@\t\r\n\0＝＋－＠]/;

/**
 * A text as it goes into a cell of a sheet: what a spreadsheet would run is led by an apostrophe. For texts only: a number
 * below zero is no formula and stays as it is.
 *
 * "=1+1" → "'=1+1"; "'=1+1" → "''=1+1"; "Dry gin" → "Dry gin"
 */
export function harmlessText(text: string): string {
  return FORMULA.test(text) ? `'${text}` : text;
}

/** The text that `harmlessText` wrote. "'=1+1" → "=1+1"; "'twas" → "'twas" */
export function textOfCell(cell: string): string {
  return LED_FORMULA.test(cell) ? cell.slice(1) : cell;
}
