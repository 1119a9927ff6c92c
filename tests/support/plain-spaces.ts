/** A text as it reads, with plain spaces where a screen breaks no line. */
export function plainSpaces(text: string): string {
  return text.replace(/[\u00a0\u202f]/g, " ");
}
